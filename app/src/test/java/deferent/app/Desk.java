package deferent.app;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Command lines asked in this process, with a shelf of their own. */
record Desk(Path folder) {
    /** What one command line answered. */
    record Answer(int code, String out, String err) {
        /** What it said, however its lines are wrapped. */
        String text() {
            return out.replaceAll("\\s+", " ");
        }

        JsonNode json() {
            return new JsonMapper().readTree(out);
        }
    }

    Answer run(String... args) {
        List<String> all = new ArrayList<>(List.of(args));
        all.add("--shelf");
        all.add(folder.resolve("shelf").toString());
        return asked(all.toArray(String[]::new));
    }

    /** One that asks nothing of a shelf. */
    static Answer asked(String... args) {
        return given("", args);
    }

    /** One to which something is given on standard input. */
    static Answer given(String in, String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Deferent.execute(new ByteArrayInputStream(in.getBytes(UTF_8)), out, err, args);
        assertThat(err.toString(UTF_8)).doesNotContain("\tat ").doesNotContain("Exception in");
        return new Answer(code, out.toString(UTF_8), err.toString(UTF_8));
    }

    Answer good(String... args) {
        Answer answer = run(args);
        assertThat(answer.err()).isEmpty();
        assertThat(answer.code()).isZero();
        return answer;
    }

    /** Asked rightly, and there is none. */
    Answer none(String... args) {
        Answer answer = run(args);
        assertThat(answer.code()).as(answer.err()).isEqualTo(Exit.NOT_FOUND.code());
        return answer;
    }

    Answer bad(String... args) {
        Answer answer = run(args);
        assertThat(answer.code()).as(answer.err()).isEqualTo(2);
        assertThat(answer.err()).isNotBlank();
        return answer;
    }
}
