package deferent.app;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;

/** How a command ended, for scripts to tell apart: one row an exit code. */
enum Exit {
    FOUND(0, "found", "The answer is there, or the file is written."),
    FAILED(
            1,
            "failed",
            "It was asked rightly and could not be done: a full disk, a file that may not be read, video"
                    + " libraries that do not load, an error of the program."),
    WRONG_WORDS(
            2,
            "wrong words",
            "A phrase, an option, a number or a document that cannot be; the error says what would be"
                    + " right."),
    NOT_FOUND(
            3,
            "not found",
            "It was asked rightly, and there is none; or nothing is there under that name."),
    // What a shell makes of a program that the closed pipe's signal (13) ended.
    CLOSED(141, "closed", "Whoever read the answer has stopped reading: the pipe is closed.");

    private final int code;
    private final String words;
    private final String means;

    Exit(int code, String words, String means) {
        this.code = code;
        this.words = words;
        this.means = means;
    }

    int code() {
        return code;
    }

    /** In two words, as errors in JSON say it with an underscore. */
    String words() {
        return words;
    }

    String means() {
        return means;
    }

    /** The code as help lists it. */
    String listed() {
        return String.format("%3d", code);
    }

    /** As help lists them. */
    static Map<String, String> list() {
        return Arrays.stream(values())
                .collect(
                        Collectors.toMap(
                                Exit::listed,
                                exit -> exit.words + ": " + exit.means,
                                (one, other) -> one,
                                LinkedHashMap::new));
    }
}
