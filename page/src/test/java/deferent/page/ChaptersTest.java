package deferent.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.util.List;
import org.junit.jupiter.api.Test;

class ChaptersTest {
    private static final Scene RING = scene("static spin vs static spin");
    private static final Scene LEAVES = scene("triquetra vs triquetra");
    private static final Still STILL = Still.square(160);

    private static Scene scene(String phrase) {
        return Scene.of(Trace.of(Phrase.parse(phrase).pairing()));
    }

    private static Chapters two(String second) {
        return new Chapters(
                List.of(new Chapters.Part(0, RING, 0), new Chapters.Part(2, LEAVES, -2)),
                List.of(
                        new Chapters.Said(0, List.of("Ring", "1 of 4")),
                        new Chapters.Said(2, List.of(second, "1 of 8"))));
    }

    private static int[] painted(Frames frames, double time) {
        BufferedImage image = new BufferedImage(160, 160, BufferedImage.TYPE_INT_RGB);
        frames.paint(time, image);
        return ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
    }

    private static int[] painted(Chapters chapters, double time) {
        return painted(Frames.of(LEAVES, chapters, STILL), time);
    }

    @Test
    void aChapterIsSeenAtItsOwnTimeInTheFramingOfTheWhole() {
        Chapters alone =
                new Chapters(
                        List.of(new Chapters.Part(0, LEAVES, 0)),
                        List.of(new Chapters.Said(0, List.of("Leaves", "1 of 8"))));
        assertThat(painted(two("Leaves"), 2.3)).isEqualTo(painted(alone, 0.3));
        assertThat(painted(two("Leaves"), 2.3)).isNotEqualTo(painted(alone, 0.4));
    }

    @Test
    void whatIsSaidStandsBelowFromItsTimeOn() {
        assertThat(two("Leaves").lines(1.9)).containsExactly("Ring", "1 of 4");
        assertThat(two("Leaves").lines(2)).containsExactly("Leaves", "1 of 8");
        assertThat(painted(two("Leaves"), 2.3)).isNotEqualTo(painted(two("Petals"), 2.3));
        assertThat(painted(two("Leaves"), 1)).isEqualTo(painted(two("Petals"), 1));
    }

    @Test
    void goingBackOpensAChapterAnew() {
        Frames frames = Frames.of(LEAVES, two("Leaves"), STILL);
        int[] first = painted(frames, 0.5);
        painted(frames, 2.5);
        assertThat(painted(frames.fork(), 0.5)).isEqualTo(first);
    }

    @Test
    void noChaptersAreRefused() {
        assertThatThrownBy(() -> new Chapters(List.of(), List.of())).isInstanceOf(Refusal.class);
    }
}
