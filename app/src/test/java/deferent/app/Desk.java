package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
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
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code;
        try (PrintWriter toOut = new PrintWriter(out);
                PrintWriter toErr = new PrintWriter(err)) {
            code = Deferent.execute(toOut, toErr, args);
        }
        assertThat(err.toString()).doesNotContain("\tat ").doesNotContain("Exception in");
        return new Answer(code, out.toString(), err.toString());
    }

    Answer good(String... args) {
        Answer answer = run(args);
        assertThat(answer.err()).isEmpty();
        assertThat(answer.code()).isZero();
        return answer;
    }

    Answer bad(String... args) {
        Answer answer = run(args);
        assertThat(answer.code()).as(answer.err()).isEqualTo(2);
        assertThat(answer.err()).isNotBlank();
        return answer;
    }
}
