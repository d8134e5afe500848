package deferent.page.sheet;

import deferent.motion.tell.Told;
import deferent.page.View;
import deferent.record.PatternDocument;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** However long names and sentences are, nothing runs over anything else or off the page. */
class LayoutProperties {
    private static final List<Lesson> LESSONS =
            List.of(
                    Lesson.of(Patterns.demo("Ring under the eaves"), Edition.USUAL),
                    Lesson.of(Patterns.demo("Two against three"), Edition.USUAL),
                    Lesson.of(Patterns.demo("The paper globe"), Edition.USUAL));

    @Property(tries = 150)
    void nothingOverlapsAndNothingLeavesThePage(
            @ForAll("lessons") Lesson lesson, @ForAll PageSize size) {
        Edition edition = Edition.USUAL.with(size).with(View.Stand.PERFORMER);
        List<Leaf> leaves =
                SheetPage.leaves(
                        lesson,
                        edition,
                        Around.NOTHING,
                        leaf -> new Foot(lesson.pattern().name(), OptionalInt.of(1234 + leaf)));
        leaves.forEach(Laid::check);
    }

    @Property(tries = 40)
    void contentsOfAnyNamesKeepToTheirPages(
            @ForAll("books") List<Lesson> lessons, @ForAll PageSize size) {
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
    void cardsOfAnyNamesKeepToTheirEdges(@ForAll("books") List<Lesson> lessons) {
        new Cards("Cards", lessons.stream().map(Lesson::pattern).toList(), Edition.USUAL)
                .leaves(p -> {}, () -> false)
                .orElseThrow()
                .forEach(Laid::check);
    }

    @Provide
    Arbitrary<List<Lesson>> books() {
        return lessons().list().ofMinSize(1).ofMaxSize(22);
    }

    @Provide
    Arbitrary<Lesson> lessons() {
        return Combinators.combine(
                        Arbitraries.of(LESSONS),
                        text(120),
                        text(400),
                        text(3000),
                        text(300).list().ofMaxSize(12),
                        Arbitraries.of(true, false))
                .as(LayoutProperties::lesson);
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
        return new Lesson(
                pattern,
                mirrored,
                Optional.of(phrase),
                from.scene(),
                from.outlook(),
                from.moments(),
                from.does(),
                from.sizes(),
                from.performer(),
                from.ties(),
                watch,
                from.cautions(),
                from.reach());
    }

    /** Words of any length, of wide letters and narrow ones, of signs that have no glyph. */
    private static Arbitrary<String> text(int most) {
        Arbitrary<String> word =
                Arbitraries.oneOf(
                        Arbitraries.strings().withChars("WMQ@").ofMinLength(1).ofMaxLength(90),
                        Arbitraries.strings().withCharRange('a', 'z').ofMinLength(1).ofMaxLength(9),
                        Arbitraries.strings().withChars("火🔥½×≤ıж").ofMinLength(1).ofMaxLength(30),
                        Arbitraries.of("12", "cm", "–", "·"));
        return word.list()
                .ofMinSize(1)
                .ofMaxSize(Math.max(2, most / 6))
                .map(words -> cut(String.join(" ", words), most));
    }

    private static String cut(String text, int most) {
        String cut = text.length() <= most ? text : text.substring(0, most);
        return cut.isBlank() ? "x" : cut.strip();
    }
}
