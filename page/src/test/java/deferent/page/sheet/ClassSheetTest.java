package deferent.page.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.AnyPairing;
import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Lexicon;
import deferent.motion.shared.Side;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import deferent.motion.trial.TwelveClassics;
import deferent.page.View;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.reading.worked.Detail;
import deferent.record.PatternDocument;
import deferent.search.whole.Readings;
import deferent.tell.TellHand;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a class is taught from. */
class ClassSheetTest {
    /** Flesch's "fairly easy", which is read at about twelve; in the seventh grade at most. */
    private static final double EASE = 70;

    private static final double GRADE = 7;
    private static final Map<String, Readings> READ = new HashMap<>();

    private static List<PatternDocument> all() {
        List<PatternDocument> all = new ArrayList<>(Patterns.demo());
        TwelveClassics.ALL.forEach(phrase -> all.add(Patterns.of(phrase, phrase)));
        return all;
    }

    /** Worked out as fast as the stage does, which a student's sheet needs no more than. */
    private static Lesson lesson(PatternDocument pattern, View.Stand stand) {
        return Lesson.of(
                pattern,
                Edition.USUAL.with(stand),
                READ.computeIfAbsent(
                        pattern.name(),
                        name ->
                                Readings.of(
                                        pattern.pairing(),
                                        pattern.performer(),
                                        pattern.kit(),
                                        Detail.LIVE,
                                        Lexicon.EMPTY)));
    }

    @Test
    void aStudentOfTwelveReadsItAndFindsNoNumberThatIsTuned() {
        for (PatternDocument pattern : all()) {
            for (View.Stand stand : View.Stand.values()) {
                List<String> said = StudentWords.of(lesson(pattern, stand));
                ReadingEase ease = ReadingEase.of(said);
                String which = pattern.name() + ": " + said + ease.ease() + " " + ease.grade();
                assertThat(said).as(which).hasSizeLessThanOrEqualTo(6);
                assertThat(ease.ease()).as(which).isGreaterThanOrEqualTo(EASE);
                assertThat(ease.grade()).as(which).isLessThanOrEqualTo(GRADE);
                assertThat(String.join(" ", said).replace("pose 1", ""))
                        .as(which)
                        .doesNotContainPattern(
                                "\\d+(\\.\\d+)? ?(cm|m|s|N|°|%|a minute)\\b|\\d\\.\\d");
            }
        }
    }

    @Test
    void aStudentsSheetIsOnePageOfAFigureAndEightPosesNoneSmallerThan25Millimetres() {
        for (PatternDocument pattern : all()) {
            for (PageSize size : PageSize.values()) {
                Leaf leaf =
                        StudentPage.leaf(
                                lesson(pattern, View.Stand.MIRROR),
                                Edition.USUAL.with(size),
                                Foot.of("foot"));
                Laid.check(leaf);
                List<Mark> plates =
                        leaf.marks().stream().filter(Mark.Plate.class::isInstance).toList();
                // Two lie over one another: the figure, and the hands on it.
                assertThat(plates).hasSize(2 + StudentPage.POSES);
            }
        }
    }

    @Test
    void bothSheetsAreFoundRightByAnIndependentChecker() throws IOException {
        Lesson lesson = lesson(Patterns.demo("Ring under the eaves"), View.Stand.AUDIENCE);
        List<Leaf> leaves = new ArrayList<>();
        leaves.add(StudentPage.leaf(lesson, Edition.USUAL, Foot.of("foot")));
        leaves.addAll(TeacherPage.leaves(lesson, Edition.USUAL, Foot.of("foot")));
        leaves.forEach(Laid::check);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Press.print(leaves, "Ring", out, page -> {}, () -> false);
        Printed printed = Printed.of(out.toByteArray());
        assertThat(Accessible.faults(printed.bytes())).isEmpty();
        assertThat(printed.pages()).hasSize(2);
        assertThat(printed.pages().get(1).text())
                .containsSubsequence(
                        "Take care",
                        "Have ready",
                        "1.50 m",
                        "1.90 m",
                        "What most often goes wrong",
                        "no source",
                        "What to ask");
    }

    @Property(tries = 10)
    void theLeftHandedVersionSaysTheSameWithLeftAndRightExchanged(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        PatternDocument given = PatternDocument.of("Any", pairing, Performer.of(1.72));
        PatternDocument left;
        try {
            left = given.mirrored(Lexicon.EMPTY);
        } catch (deferent.motion.pairing.Refusal tooFast) {
            return;
        }
        assertThat(left.name()).isEqualTo(given.name());
        boolean together = pairing.timing().ahead() == 0;
        for (Side side : Side.values()) {
            String said = does(given, side);
            String mirrored = does(left, side.other());
            assertThat(exchanged(together ? said : withoutBeginning(said)))
                    .isEqualTo(
                            (together ? mirrored : withoutBeginning(mirrored))
                                    .replaceAll("-?[0-9.]+°", "°"));
        }
        Pairing twice = left.mirrored(Lexicon.EMPTY).pairing();
        assertThat(twice.left()).isEqualTo(pairing.left());
        assertThat(twice.right()).isEqualTo(pairing.right());
        assertThat(twice.direction()).isEqualTo(pairing.direction());
        if (pairing.left().cycles() == pairing.right().cycles()) {
            assertThat(twice.timing().ahead()).isCloseTo(pairing.timing().ahead(), within(1e-9));
        }
    }

    private static String does(PatternDocument pattern, Side side) {
        Readings readings =
                Readings.of(
                        pattern.pairing(),
                        pattern.performer(),
                        Kit.USUAL,
                        Detail.LIVE,
                        Lexicon.EMPTY);
        return TellHand.of(readings).get(side.ordinal()).text();
    }

    private static String withoutBeginning(String said) {
        return said.replaceFirst(" It begins .*", "");
    }

    private static final Map<String, String> EXCHANGED =
            Map.of(
                    "left", "right",
                    "right", "left",
                    "clockwise", "counter-clockwise",
                    "counter-clockwise", "clockwise");

    private static String exchanged(String said) {
        // A figure that is tilted one way is tilted the other way in a mirror.
        String untilted = said.replaceAll("-?[0-9.]+°", "°");
        return java.util.regex.Pattern.compile("\\b(left|right|counter-clockwise|clockwise)\\b")
                .matcher(untilted)
                .replaceAll(found -> EXCHANGED.get(found.group()));
    }

    @ParameterizedTest
    @CsvSource({
        "poi,1",
        "hand,1",
        "circle,2",
        "clockwise,2",
        "counter,2",
        "middle,2",
        "upper,2",
        "goes,1",
        "stays,1",
        "while,1",
        "times,1",
        "opposite,3",
        "people,2",
        "triquetra,3",
        "audience,3",
        "isolation,4",
        "yourself,2",
        "mirror,2",
        "teacher,2",
        "turns,1",
        "the,1",
        "pose,1",
        "care,1",
        "stop,1",
        "hurts,1",
        "body,2",
        "easy,2",
        "pendulum,3",
        "petal,2",
        "twice,1"
    })
    void syllablesAreCountedAsTheyAreHeard(String word, int heard) {
        assertThat(ReadingEase.syllables(word)).isEqualTo(heard);
    }

    @Test
    void hardWordsAreFoundHard() {
        ReadingEase hard =
                ReadingEase.of(
                        List.of(
                                "Simultaneous oscillation necessitates considerable coordination."));
        assertThat(hard.ease()).isLessThan(30);
        assertThat(hard.grade()).isGreaterThan(12);
    }
}
