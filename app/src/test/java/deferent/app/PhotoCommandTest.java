package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PhotoCommandTest {
    @TempDir Path folder;
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        List<String> all = new ArrayList<>(List.of("photo"));
        all.addAll(List.of(args));
        all.addAll(List.of("--shelf", folder.toString()));
        return Deferent.execute(
                new PrintWriter(out, true), new PrintWriter(err, true), all.toArray(new String[0]));
    }

    @Test
    void itTellsShutterFilmEyeAndBlinkingLight() {
        int code =
                run(
                        "static spin vs triquetra",
                        "--led-hz",
                        "400",
                        "--duty",
                        "50%",
                        "--shutter",
                        "1/2");
        assertThat(err.toString()).isEmpty();
        assertThat(code).isZero();
        assertThat(out.toString().replaceAll("\\s+", " "))
                .contains("Open the shutter for 1 s for exactly one whole figure of both lights.")
                .contains("In 0.5 s the left light draws only 50% of its figure.")
                .contains("frames a second")
                .contains("between 6% and 20%")
                .contains("leaves 400 dots a figure");
    }

    @Test
    void jsonHasLengthsInMetresAndTimesInSeconds() {
        assertThat(run("static spin vs triquetra", "--json", "--led-hz", "400")).isZero();
        assertThat(out.toString())
                .contains("\"light_diameter_m\": 0.07")
                .contains("\"a_figure\": 400")
                .contains("\"shortest_s\": 0.06")
                .contains("\"mark\": \"1 s\"")
                .contains("\"cautions\": []");
    }

    @ParameterizedTest
    @CsvSource({
        "--led-hz, 0, rate of a blinking light",
        "--shutter, 1/0, exposure",
        "--shutter, -1s, shutter time",
        "--light-size, 0cm, diameter of the light",
        "--duty, 50%, --led-hz",
        "--duty, half, share",
    })
    void whatCannotBeIsRefused(String option, String value, String told) {
        assertThat(run("static spin vs triquetra", option, value)).isEqualTo(Deferent.BAD_INPUT);
        assertThat(err.toString()).contains(told);
        assertThat(out.toString()).isEmpty();
    }
}
