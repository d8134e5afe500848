package deferent.film.practice;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.film.DemoFilms;
import deferent.motion.shared.Side;
import deferent.page.Palette;
import deferent.record.Practice;
import deferent.record.Practice.Size;
import deferent.record.PracticeLog;
import deferent.record.PracticeLog.Entry;
import deferent.record.PracticeLog.Listing;
import deferent.tell.Told;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** Weeks of practice held against each other, of the invented duo. */
class OverWeeksTest {
    private static final Optional<Side> RIGHT = Optional.of(Side.RIGHT);

    private static Listing listing(List<Practice> records) {
        List<Entry> entries = new ArrayList<>();
        for (Practice record : records) {
            entries.add(new PracticeLog.Entry(record.date().toString(), record));
        }
        return new Listing(entries, List.of());
    }

    private static OverWeeks progress(List<Practice> records) {
        return OverWeeks.of(records.get(0).pattern(), listing(records)).orElseThrow();
    }

    private static Practice sized(Practice practice, UnaryOperator<Size> other) {
        return new Practice(
                practice.name(),
                practice.note(),
                practice.author(),
                practice.date(),
                practice.dated(),
                practice.pattern(),
                practice.pairing(),
                practice.source(),
                practice.clip(),
                practice.period(),
                practice.periodError(),
                practice.seconds(),
                practice.scale(),
                practice.sizes().stream().map(other).toList(),
                practice.findings(),
                practice.heads(),
                practice.hands(),
                practice.extras());
    }

    @Test
    void overTheWeeksTheCircleGrows() {
        assertThat(progress(DemoPractice.records()).told())
                .extracting(Told::text)
                .anySatisfy(
                        text ->
                                assertThat(text)
                                        .matches(
                                                "(Over 4 weeks t|T)he right circle came from 1[123]"
                                                        + " cm too small to [234] cm\\."));
    }

    @Test
    void theSentenceSaysHowLongItTook() {
        assertThat(progress(DemoPractice.records()).told().get(0).text())
                .startsWith("Over 4 weeks");
        assertThat(progress(DemoPractice.records().subList(0, 2)).told().get(0).text())
                .startsWith("Over 7 days");
    }

    @Test
    void whatLiesWithinTheErrorsIsNoChange() {
        List<Practice> records = DemoPractice.records();
        List<Practice> unsure =
                records.stream()
                        .map(
                                r ->
                                        sized(
                                                r,
                                                s ->
                                                        new Size(
                                                                s.key(), s.side(), s.value(), 1,
                                                                s.unit())))
                        .toList();
        assertThat(progress(unsure).told())
                .extracting(Told::text)
                .containsExactly("Over 4 weeks there is no change that can be told.");
    }

    @Test
    void whatGotWorseIsSaidToo() {
        List<Practice> records = new ArrayList<>(DemoPractice.records());
        Practice first = records.get(0);
        Practice last = records.get(4);
        List<Practice> backward =
                List.of(
                        sized(first, s -> last.size(s.key(), s.side()).orElse(s)),
                        sized(last, s -> first.size(s.key(), s.side()).orElse(s)));
        assertThat(progress(backward).told())
                .filteredOn(told -> told.key().equals("practice.size"))
                .singleElement()
                .satisfies(told -> assertThat(told.text()).contains("went from", "too small to 1"))
                .satisfies(told -> assertThat(told.tone()).isEqualTo(Told.Tone.WARN));
    }

    @Test
    void oneTimeAloneHasNothingToBeHeldAgainst() {
        assertThat(progress(DemoPractice.records().subList(0, 1)).told())
                .singleElement()
                .satisfies(told -> assertThat(told.text()).startsWith("Kept once, on 2"));
    }

    @Test
    void practiceOfAnotherPatternIsNotComparedWithIt() {
        assertThat(OverWeeks.of("isolation vs isolation", listing(DemoPractice.records())))
                .isEmpty();
    }

    /** The demo's numbers are those that its films give when they are rendered and read anew. */
    @Test
    void theDemoIsReadFromFilmsAndNotWrittenByHand() {
        for (int week : new int[] {1, DemoFilms.weeks()}) {
            Practice kept = DemoPractice.records().get(week - 1);
            Practice anew = DemoFilms.week(week);
            assertThat(kept.author()).contains("invented demo data");
            assertThat(anew.clip()).isEqualTo(kept.clip());
            for (String key : List.of("size", "late")) {
                Optional<Side> side = key.equals("size") ? RIGHT : Optional.empty();
                Size one = kept.size(key, side).orElseThrow();
                Size other = anew.size(key, side).orElseThrow();
                assertThat(Math.abs(one.value() - other.value()))
                        .as(key)
                        .isLessThan(2 * one.error());
                double truth = DemoFilms.truth(week)[key.equals("size") ? 0 : 1];
                assertThat(Math.abs(one.value() - truth))
                        .as("%s of week %d", key, week)
                        .isLessThan(2.5 * one.error());
            }
        }
    }

    @Test
    void itsPictureTellsSidesByShapeAndDash() throws IOException {
        OverWeeks progress = progress(DemoPractice.records());
        String svg = WeeksPicture.svg(progress, 360, Palette.Theme.DARK);
        assertThat(svg)
                .startsWith("<svg")
                .contains("Right circle", "2026-10-25", "stroke-dasharray", "<circle", "<rect");
        assertThat(
                        ImageIO.read(
                                        new ByteArrayInputStream(
                                                WeeksPicture.png(
                                                        progress, 900, Palette.Theme.LIGHT)))
                                .getWidth())
                .isEqualTo(1800);
    }

    @Test
    void theTableHoldsEveryNumber() {
        OverWeeks progress = progress(DemoPractice.records());
        assertThat(progress.csv().lines().count())
                .isEqualTo(
                        1
                                + progress.entries().stream()
                                        .mapToLong(e -> e.practice().sizes().size())
                                        .sum());
    }
}
