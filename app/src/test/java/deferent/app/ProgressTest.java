package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.record.landing.Outlet;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

/** Work that takes a hundred seconds, watched by a clock that the test turns. */
class ProgressTest {
    private static final long SECOND = 1_000_000_000;

    private static String text(boolean json, boolean quiet, boolean asked, boolean terminal) {
        StringWriter err = new StringWriter();
        CommandLine line = Deferent.line();
        line.setErr(new PrintWriter(err, true));
        Manners manner =
                new Manners(
                        json,
                        quiet,
                        InputStream.nullInputStream(),
                        new Outlet(OutputStream.nullOutputStream()),
                        line.getCommandSpec());
        long[] now = {0};
        Progress progress = new Progress(manner, asked, terminal, () -> now[0]);
        for (int i = 0; i <= 100; i++) {
            now[0] = i * SECOND;
            progress.show(i / 100.0, "frame " + i + " of 100");
        }
        progress.clear();
        return err.toString();
    }

    private static List<String> told(boolean json, boolean quiet, boolean asked, boolean terminal) {
        return text(json, quiet, asked, terminal).lines().toList();
    }

    @Test
    void rarelyWhereNobodyWatchesMoreOftenWhereItIsAskedForAndNeverToTheQuiet() {
        assertThat(told(false, false, false, false))
                .containsExactly(
                        "frame 30 of 100: 30 %, about 70 s left",
                        "frame 60 of 100: 60 %, about 40 s left",
                        "frame 90 of 100: 90 %, about 10 s left");
        assertThat(told(false, false, true, false))
                .hasSize(51)
                .contains("frame 0 of 100: 0 %", "frame 100 of 100: 100 %");
        assertThat(told(false, true, true, false)).isEmpty();
        assertThat(told(false, true, true, true)).isEmpty();
    }

    @Test
    void onATerminalItIsOneLineThatGoesAway() {
        String all = text(false, false, false, true);
        assertThat(all).doesNotContain("\n").contains("\rframe 50 of 100: 50 %, about 50 s left");
        String last = "frame 100 of 100: 100 %";
        assertThat(all).contains(last).endsWith("\r" + " ".repeat(last.length()) + "\r");
    }

    @Test
    void besideJsonItIsAnObjectALine() {
        assertThat(told(true, false, false, false))
                .hasSize(3)
                .allMatch(line -> CommandAnswerTest.against(Schemas.ASIDE, line).isEmpty())
                .first()
                .isEqualTo("{\"progress\":\"frame 30 of 100\",\"share\":0.3,\"left_s\":70}");
    }
}
