package deferent.page.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import deferent.page.View;
import deferent.record.PatternDocument;
import deferent.tell.Told;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** However long names and sentences are, nothing runs over anything else or off the page. */
class LayoutProperties {
    private static final List<Lesson> LESSONS =
            List.of(
                    Lesson.of(Patterns.demo("Ring under the eaves"), Edition.USUAL),
                    Lesson.of(Patterns.demo("Two against three"), Edition.USUAL),
                    Lesson.of(Patterns.demo("The paper globe"), Edition.USUAL));

    @Property(tries = 150)
    void nothingOverlapsAndNothingLeavesThePage(Any any) {
        Lesson lesson = any.from(LayoutProperties::lesson);
        PageSize size = any.of(PageSize.class);
        List<Leaf> leaves = sheet(lesson, size);
        leaves.forEach(Laid::check);
        assertThat(blocks(leaves)).containsOnlyOnce("words", "figure", "key", "beats", "cautions");
    }

    /** Dangers and cautions are read first, so it is the pictures that give way to them. */
    @Test
    void belowALongHeadThePicturesGoOverleafAndTheCautionsStay() {
        for (PageSize size : PageSize.values()) {
            List<Leaf> beats = sheet(dangerous(460), size);
            beats.forEach(Laid::check);
            assertThat(blocks(beats.subList(0, 1)))
                    .contains("dangers", "figure", "words", "cautions")
                    .doesNotContain("beats");
            assertThat(blocks(beats.subList(1, 2))).contains("beats");

            List<Leaf> all = sheet(dangerous(700), size);
            all.forEach(Laid::check);
            assertThat(blocks(all.subList(0, 1)))
                    .contains("dangers", "cautions")
                    .doesNotContain("figure", "words", "beats");
            assertThat(blocks(all.subList(1, 2))).contains("figure", "words", "beats");
        }
    }

    private static Lesson dangerous(int words) {
        String said = "swing ".repeat(words).strip();
        return lesson(LESSONS.get(0), "Ring", "ring", "", List.of(said), false);
    }

    private static List<String> blocks(List<Leaf> leaves) {
        return leaves.stream().flatMap(leaf -> leaf.blocks().stream()).map(Block::name).toList();
    }

    private static List<Leaf> sheet(Lesson lesson, PageSize size) {
        return SheetPage.leaves(
                lesson,
                Edition.USUAL.with(size).with(View.Stand.PERFORMER),
                Around.NOTHING,
                leaf -> new Foot(lesson.pattern().name(), OptionalInt.of(1234 + leaf)));
    }

    @Property(tries = 40)
    void contentsOfAnyNamesKeepToTheirPages(Any any) {
        List<Lesson> lessons = any.from(LayoutProperties::book);
        PageSize size = any.of(PageSize.class);
        FrontPages front =
                new FrontPages(
                        lessons.get(0).pattern().name(),
                        lessons,
                        Edition.USUAL.with(size),
                        Booklet.Order.PLAIN);
        front.leaves(lessons.stream().map(l -> 4321).toList(), Foot.of(front.foot())::on)
                .forEach(Laid::check);
    }

    @Property(tries = 40)
    void cardsOfAnyNamesKeepToTheirEdges(Any any) {
        List<Lesson> lessons = any.from(LayoutProperties::book);
        new Cards("Cards", lessons.stream().map(Lesson::pattern).toList(), Edition.USUAL)
                .leaves(p -> {}, () -> false)
                .orElseThrow()
                .forEach(Laid::check);
    }

    private static List<Lesson> book(Any any) {
        return any.list(1, 22, () -> lesson(any));
    }

    private static Lesson lesson(Any any) {
        return lesson(
                any.of(LESSONS),
                text(any, 120),
                text(any, 400),
                text(any, 3000),
                any.list(0, 12, () -> text(any, 300)),
                any.of(false, true));
    }

    private static Lesson lesson(
            Lesson from,
            String name,
            String phrase,
            String note,
            List<String> sentences,
            boolean mirrored) {
        PatternDocument pattern = from.pattern().withName(name).withNote(note);
        List<Told> watch = new ArrayList<>();
        for (String sentence : sentences) {
            watch.add(new Told("any", Told.Tone.WARN, sentence, ""));
        }
        List<Told> dangers =
                sentences.stream()
                        .limit(sentences.size() % 4)
                        .map(said -> new Told("danger.any", Told.Tone.DANGER, said, ""))
                        .toList();
        return new Lesson(
                pattern,
                mirrored,
                Optional.of(phrase),
                from.scene(),
                from.outlook(),
                from.moments(),
                dangers,
                from.does(),
                from.sizes(),
                from.performer(),
                from.drawn(),
                from.links(),
                watch,
                from.cautions(),
                from.reach());
    }

    /** Words of any length, of wide letters and narrow ones, of signs that have no glyph. */
    private static String text(Any any, int most) {
        List<String> words = any.list(1, Math.max(2, most / 6), () -> word(any));
        return cut(String.join(" ", words), most);
    }

    private static String word(Any any) {
        return any.oneOf(
                () -> any.text("abcdefghijklmnopqrstuvwxyz", 1, 9),
                () -> any.text("WMQ@", 1, 90),
                () -> any.text("火🔥½×≤ıж", 1, 30),
                () -> any.of("12", "cm", "–", "·"));
    }

    private static String cut(String text, int most) {
        String cut = text.length() <= most ? text : text.substring(0, most);
        return cut.isBlank() ? "x" : cut.strip();
    }
}
