package deferent.search.seek;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.reading.danger.Level;
import deferent.reading.link.LinkReading;
import deferent.reading.shared.LinkKind;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Pull;
import deferent.reading.worked.Detail;
import deferent.search.whole.Readings;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What a person would try, of all that a plain seek finds. */
class IdeasTest {
    private static final SeekRequest REQUEST =
            SeekRequest.of(Space.of(Space.Grid.USUAL)).with(Order.TRY).with(Filter.NONE.reached());
    private static final Answers FOUND = new Seek(REQUEST.withLimit(24, 1)).found();
    private static final List<Answer> LIST = FOUND.list();
    private static final List<Answer> TWENTY = LIST.subList(0, 20);

    @Test
    void theFirstTwentyAreTwentyIdeasThatNothingSpeaksAgainst() {
        for (Answer answer : TWENTY) {
            assertThat(answer.against().orElseThrow()).as(answer.said()).isEmpty();
        }
        Set<String> families = new HashSet<>();
        Set<String> words = new HashSet<>();
        for (Answer answer : TWENTY) {
            assertThat(families.add(answer.family().name())).as(answer.family().name()).isTrue();
            assertThat(words.add(answer.idea().words())).as(answer.idea().words()).isTrue();
            assertThat(answer.idea().words().split("[ ]")).as(answer.said()).hasSizeLessThan(9);
        }
        assertThat(words)
                .contains(
                        "static spin vs triquetra",
                        "isolation vs horizontal cat-eye, split time",
                        "pendulum vs CAP riding");
    }

    /** Read afresh: what the search promised is what the readings say. */
    @Test
    void eachIsReachedTautNoDangerAndLinked() {
        for (Answer answer : TWENTY) {
            Trace trace = Trace.of(answer.pairing());
            Reach reach = Reach.of(trace, Performer.USUAL);
            assertThat(reach.worst()).as(answer.said()).isLessThan(1e-3);
            LinkReading link = LinkReading.quick(trace, Side.LEFT);
            assertThat(link.kind()).as(answer.said()).isEqualTo(LinkKind.TOUCHING);
            assertThat(link.inPlaneGap()).as(answer.said()).isLessThan(1e-4);
            for (Side side : Side.values()) {
                Pull pull = Pull.of(trace, side, Kit.USUAL);
                assertThat(pull.least()).as(answer.said()).isGreaterThan(-1e-6);
                assertThat(pull.jerks()).as(answer.said()).isEmpty();
            }
            assertThat(
                            Readings.of(answer.pairing(), Performer.USUAL, Detail.LIVE)
                                    .dangers()
                                    .reading()
                                    .orElseThrow()
                                    .level())
                    .as(answer.said())
                    .isNotEqualTo(Level.DANGER);
        }
    }

    @Test
    void sizesAreWholeCentimetresAndTimingsEighths() {
        for (Answer answer : LIST) {
            Pairing pairing = answer.pairing();
            for (Side side : Side.values()) {
                whole(pairing.part(side).tether().length(), 0.01);
                if (!pairing.part(side).motion().riding()) {
                    pairing.part(side).motion().path().asTerms().stream()
                            .flatMap(List::stream)
                            .forEach(
                                    term -> {
                                        whole(term.radius(), 0.01);
                                        whole(term.angle(), Math.toRadians(5));
                                    });
                }
            }
            whole(pairing.timing().ahead(), 0.125);
            if (answer.phrase()) {
                assertThat(Phrase.parse(answer.said()).with(Tether.USUAL)).isEqualTo(pairing);
            }
        }
    }

    private static void whole(double value, double step) {
        assertThat(value / step).isCloseTo(Math.rint(value / step), within(1e-6));
    }

    /** Every figure can be walked by a hand: that is one thing to tell, whatever the figure. */
    @Test
    void handsThatWalkTheHeadsFigureAreOneCard() {
        List<Answer> walked =
                LIST.stream()
                        .filter(a -> a.idea().rider().equals("hand walking its figure"))
                        .toList();
        assertThat(walked).hasSize(1);
        assertThat(walked.get(0).family().members())
                .extracting(member -> member.idea().carrier())
                .contains("triquetra", "one-petal in-spin");
    }

    @Test
    void theCountOfPetalsIsAFamilyAndItsMembersLinkToo() {
        Answer four =
                TWENTY.stream()
                        .filter(a -> a.idea().words().equals("static spin vs four-petal antispin"))
                        .findFirst()
                        .orElseThrow();
        assertThat(four.family().members())
                .extracting(member -> member.idea().rider())
                .containsExactly(
                        "five-petal antispin", "six-petal antispin", "seven-petal antispin");
        assertThat(four.family().members())
                .allSatisfy(
                        member ->
                                assertThat(
                                                LinkReading.quick(
                                                                Trace.of(member.pairing()),
                                                                Side.LEFT)
                                                        .inPlaneGap())
                                        .isLessThan(1e-4));
    }

    @Test
    void whatFailsComesAfterAllThatPassesWithWhatSpeaksAgainstIt() {
        boolean failed = false;
        for (Answer answer : LIST) {
            boolean passes = answer.against().orElseThrow().isEmpty();
            assertThat(failed && passes).as(answer.said()).isFalse();
            failed |= !passes;
        }
        assertThat(failed).isTrue();
    }

    @Test
    void whatIsOnTheShelfComesLaterWhicheverHandLeadsAndWhateverItsSizes() {
        Pairing known =
                Phrase.parse("triquetra hand radius 50 cm vs static spin").with(Tether.of(0.5));
        List<Answer> list =
                new Seek(REQUEST.withShelf(List.of(known)).withLimit(6, 1)).found().list();
        assertThat(list)
                .filteredOn(a -> a.against().orElseThrow().isEmpty())
                .extracting(a -> a.idea().words())
                .doesNotContain("static spin vs triquetra")
                .contains("isolation vs triquetra, split time");
    }

    @Test
    void aMotionIsOfOneKindWhateverItsSizeAndStart() {
        for (String phrase :
                List.of(
                        "isolation vs triquetra",
                        "isolation hand radius 12 cm vs triquetra tilt 20°",
                        "unit circle vs three-petal antispin")) {
            Pairing pairing = Phrase.parse(phrase).with(Tether.of(0.6));
            assertThat(MotionKind.of(pairing, Side.LEFT))
                    .as(phrase)
                    .isEqualTo(MotionKind.ISOLATION);
            assertThat(MotionKind.of(pairing, Side.RIGHT))
                    .as(phrase)
                    .isEqualTo(MotionKind.TRIQUETRA);
        }
        assertThat(
                        Stream.of("pendulum", "stall", "static spin", "half-and-half flower", "CAP")
                                .map(m -> Phrase.parse(m + " vs extension").with(Tether.of(0.6)))
                                .map(p -> MotionKind.of(p, Side.LEFT)))
                .containsExactly(
                        MotionKind.PENDULUM,
                        MotionKind.STALL,
                        MotionKind.STATIC_SPIN,
                        MotionKind.HALF_AND_HALF_FLOWER,
                        MotionKind.CAP);
    }
}
