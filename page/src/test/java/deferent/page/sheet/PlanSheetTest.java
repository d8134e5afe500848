package deferent.page.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.record.PatternDocument;
import deferent.record.log.LogWeeks;
import deferent.search.path.Path;
import deferent.search.path.PathSearch;
import deferent.search.path.Plan;
import deferent.tell.TellPath;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What is pinned to a wall: an order to learn in, and the calendar of a log. */
class PlanSheetTest {
    private static final long FROM = LocalDate.of(2026, 11, 28).toEpochDay();

    private static PlanSheet sheet(String phrase, PageSize paper, int days) {
        PatternDocument pattern =
                PatternDocument.of("The ring", Phrase.parse(phrase).pairing(), Performer.USUAL);
        Path path =
                PathSearch.of(pattern.pairing(), pattern.performer(), pattern.kit(), Lexicon.EMPTY);
        Plan plan = Plan.of(path, List.of(), Lexicon.EMPTY, FROM, FROM + days, 20);
        TellPath words = new TellPath(path, pattern.performer(), pattern.kit(), Lexicon.EMPTY);
        return new PlanSheet(
                pattern,
                plan,
                words,
                TellPath.plan(plan, true, String::valueOf),
                Edition.USUAL.with(paper));
    }

    private static String text(Leaf leaf) {
        return leaf.marks().stream()
                .filter(Mark.Text.class::isInstance)
                .map(mark -> ((Mark.Text) mark).words())
                .collect(Collectors.joining(" "))
                .replace('\u00a0', ' ');
    }

    private static void standsWell(Leaf leaf) {
        for (Block block : leaf.blocks()) {
            assertThat(leaf.margins().holds(block.box(), 1)).as(block.name()).isTrue();
            for (Mark mark : block.marks()) {
                assertThat(block.box().holds(mark.box(), 2)).as(mark.toString()).isTrue();
            }
            leaf.blocks().stream()
                    .filter(other -> !other.equals(block))
                    .forEach(
                            other ->
                                    assertThat(other.box().overlaps(block.box(), 1))
                                            .as(other.name() + " over " + block.name())
                                            .isFalse());
        }
    }

    @Test
    void aPlanIsOnePageWithEveryDrillAndABoxForEveryTimeOfPractice() {
        for (PageSize paper : PageSize.values()) {
            PlanSheet sheet = sheet("static spin vs triquetra, tether 45 cm", paper, 20);
            assertThat(sheet.leaves(progress -> {}, () -> false).orElseThrow()).hasSize(1);
            Leaf leaf = sheet.page();
            standsWell(leaf);
            String text = text(leaf);
            Path path = sheet.plan().path();
            for (int i = 0; i < path.drills().size(); i++) {
                TellPath.Said said = sheet.words().said(i);
                assertThat(text)
                        .contains(i + 1 + " " + TellPath.name(path.drills().get(i)))
                        .contains(said.todo().substring(0, 12), said.often().substring(0, 12));
            }
            assertThat(text).contains("at 60 a minute", "Sat 28 Nov", "rest");
            long times = sheet.plan().days().stream().mapToLong(day -> day.sittings().size()).sum();
            assertThat(leaf.marks().stream().filter(Mark.Patch.class::isInstance))
                    .hasSize((int) times);
            List<Mark> figures =
                    leaf.marks().stream().filter(Mark.Plate.class::isInstance).toList();
            // The figure, and both hands over it.
            assertThat(figures).hasSize(2 * path.drills().size());
            double inch = 72;
            assertThat(figures).allMatch(mark -> mark.box().width() >= inch - 0.5);
            Printed printed =
                    Printed.of(
                            out ->
                                    Press.print(
                                            List.of(leaf),
                                            sheet.title(),
                                            out,
                                            page -> {},
                                            () -> false));
            assertThat(Accessible.faults(printed.bytes())).isEmpty();
        }
    }

    @Test
    void whatCanHurtStandsAboveTheFirstDrillAndALongPlanSaysThatItGoesOn() {
        PlanSheet sheet = sheet("static spin vs triquetra, tempo 180", PageSize.LETTER, 200);
        Leaf leaf = sheet.page();
        standsWell(leaf);
        String text = text(leaf);
        assertThat(text.indexOf("Danger:")).isBetween(0, text.indexOf("1 left hand alone"));
        assertThat(text).contains("and on: deferent learn --days");
        assertThat(LeafPicture.svg(leaf)).startsWith("<svg").contains("Learning: The ring");
        assertThat(LeafPicture.png(leaf)).startsWith(0x89, 'P', 'N', 'G');
    }

    @Test
    void aDayOfTheCalendarHasItsNumberAndASquareThatGrowsWithIt() {
        LocalDate monday = LocalDate.of(2026, 11, 23);
        LogWeeks weeks =
                new LogWeeks(
                        monday.plusDays(4),
                        List.of(
                                new LogWeeks.Week(
                                        monday, List.of(10.0, 0.0, 40.0, 0.0, 2.5, 0.0, 0.0))),
                        0);
        Leaf leaf =
                new CalendarSheet(weeks, Optional.empty(), List.of(), Edition.USUAL).pages().get(0);
        standsWell(leaf);
        assertThat(text(leaf))
                .isEqualTo(
                        "Practice Mon Tue Wed Thu Fri Sat Sun 23 Nov 2026 10 · 40 · 2.5 52.5 min");
        List<Double> edges =
                leaf.marks().stream()
                        .filter(Mark.Patch.class::isInstance)
                        .map(mark -> mark.box().width())
                        .toList();
        assertThat(edges).hasSize(3);
        // Four times the minutes are four times the area.
        assertThat(edges.get(1) / edges.get(0)).isCloseTo(2, within(1e-9));
        assertThat(edges.get(0) / edges.get(2)).isCloseTo(2, within(1e-9));
    }
}
