package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.reading.body.Performer;
import deferent.reading.link.LinkReading;
import deferent.reading.worked.Detail;
import deferent.search.whole.Advice;
import deferent.search.whole.Readings;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What no sentence says, whatever the pairing: numbers no body can use, and what no spinner says.
 */
class PlainWordsTest {
    /**
     * Lengths, counts and factors of nothing or one, stiff words, doubled words, a plural of one.
     */
    private static final List<Pattern> NEVER =
            List.of(
                    Pattern.compile("(?<![\\d.])0 (cm|mm|m|times|petals)\\b"),
                    Pattern.compile("(?<![\\d.])1 (times|turns|petals|a cycle|ways|pairs)\\b"),
                    Pattern.compile("\\bby 1 "),
                    Pattern.compile("\\b([A-Za-z]+) \\1\\b", Pattern.CASE_INSENSITIVE),
                    Pattern.compile("\\b[Aa] [aei]|\\b[Aa]n [bcdfgjklmnpqrstvwxyz]"),
                    Pattern.compile("neutral|falls into|answer it|\\boff its\\b|itself one of"),
                    Pattern.compile("(^|[.!?] )[a-z0-9]"));

    private static final Pattern NUMBER = Pattern.compile("\\d+(\\.\\d+)?");

    @ParameterizedTest
    @ValueSource(
            strings = {
                "static spin vs triquetra",
                "isolation vs horizontal cat-eye, split time",
                "CAP riding pendulum",
                "triquetra riding pendulum",
                "extension vs triquetra, split time, opposite direction",
                "extension vs extension, opposites",
                "isolation vs isolation, split time",
                "box four-petal antispin vs static spin, tempo 30",
                "four-petal antispin vs four-petal in-spin, quarter time",
                "pendulum vs one-petal in-spin riding",
                "horizontal cat-eye vs static spin",
                "CAP vs CAP, split time",
                "isolation vs four-petal antispin",
                "point isolation vs extension, tempo 45",
                "linear extension vs linear isolation",
                "figure eight vs pentagram",
                "cardioid vs vertical cat-eye, tempo 90",
                "half-and-half flower vs static spin",
                "cat-eye CAP vs triquetra CAP",
                "stall vs pendulum amplitude 120°",
                "stacked isolations",
                "triquetra plane turns 1 vs static spin",
                "static spin wheel plane vs static spin wheel plane, quarter time",
                "static spin floor plane vs extension floor plane, tempo 20",
                "extension hand radius 20 cm vs triquetra tip 20°, tether 40 cm",
                "isolation cycles 3 vs isolation cycles 2",
                "static spin at the shoulder vs triquetra, mirrored",
                "triquetra hand radius 1.2 m vs extension, tempo 180",
                "line vs square turns 1",
                "ellipse axes 50 cm by 20 cm turns -1 vs cat-eye tilt 45°, timing 1/3",
                "static spin vs static spin, tempo 10",
                "isolation wheel plane vs extension, opposite direction"
            })
    void aPairingIsToldInPlainWords(String phrase) {
        Readings readings =
                Readings.of(Phrase.parse(phrase).pairing(), Performer.USUAL, Detail.SETTLED);
        List<Told> told = Telling.of(readings);
        assertThat(told).extracting(Told::text).doesNotHaveDuplicates();
        first(readings, told.get(0).text());
        List<Told> all = new ArrayList<>(told);
        all.addAll(TellHand.of(readings));
        readings.advice().ifPresent(advice -> all.addAll(around(advice, readings.pairing())));
        for (Told one : all) {
            plain(one.text());
            plain(one.why());
        }
    }

    /** What the fit's own face tells besides. */
    private static List<Told> around(Advice advice, Pairing pairing) {
        List<Told> all = new ArrayList<>();
        advice.fit().reading().ifPresent(fit -> all.addAll(TellFit.of(fit, pairing)));
        advice.costs().reading().ifPresent(costs -> all.addAll(TellFit.costs(costs, pairing)));
        for (Side side : Side.values()) {
            advice.neighbours(side)
                    .reading()
                    .ifPresent(near -> all.addAll(TellFit.neighbours(near, side, pairing)));
        }
        return all;
    }

    private static void plain(String sentence) {
        // A phrase in quotes is a phrase, and stands as it is typed.
        String said = sentence.replaceAll("\"[^\"]*\"", "so");
        for (Pattern never : NEVER) {
            assertThat(never.matcher(said).find()).as("%s in: %s", never, sentence).isFalse();
        }
    }

    /** One number, and where it is how far apart they are, it is how far they are now at most. */
    private static void first(Readings readings, String text) {
        assertThat(NUMBER.matcher(text).results().count()).as(text).isLessThanOrEqualTo(1);
        Matcher apart = Pattern.compile("are up to (.*) apart now").matcher(text);
        if (apart.find()) {
            LinkReading link = readings.link(readings.carrier()).reading().orElseThrow();
            assertThat(apart.group(1)).isEqualTo(Say.length(link.inPlaneGap()));
        }
    }
}
