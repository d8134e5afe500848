package deferent.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.film.held.Beat;
import deferent.film.held.Fault;
import deferent.film.held.Finding;
import deferent.film.held.Held;
import deferent.film.held.OpenLink;
import deferent.film.light.LitSpot;
import deferent.film.measured.HowScaled;
import deferent.film.measured.Measured;
import deferent.film.words.TellFilm;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Timing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.motion.trial.TwelveClassics;
import deferent.reading.link.LinkReading;
import deferent.tell.Told;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FilmFindingsTest {
    private static final String ISOLATIONS = "isolation vs horizontal cat-eye, split time";
    private static final long SEED = 3;

    private static FilmReading held(Pairing spun, Pairing meant, boolean scaled) {
        Trace trace = Classics.corded(spun, true).orElseThrow();
        List<List<LitSpot>> spots = Classics.spots(trace, 7, 30, SEED);
        FilmAsk ask = FilmAsk.NOTHING.meaning(meant, false).first(Classics.further(trace, SEED));
        return FilmReading.of(spots, scaled ? ask.scaled(Classics.PIXEL) : ask, 1080, "film");
    }

    private static Finding worst(Pairing spun, Pairing meant) {
        return held(spun, meant, true).held().findings().get(0);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                ISOLATIONS,
                "static spin vs triquetra",
                "CAP riding pendulum",
                "extension vs extension, opposites"
            })
    void nothingIsOffWhereTheFigureIsKept(String phrase) {
        Pairing meant = TwelveClassics.turning(phrase, 70);
        assertThat(held(meant, meant, true).held().findings()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {ISOLATIONS, "static spin vs triquetra", "triquetra riding pendulum"})
    void aLateHandComesFirst(String phrase) {
        Pairing meant = TwelveClassics.turning(phrase, 70);
        double ahead = meant.timing().ahead() - 0.06;
        Finding worst = worst(meant.with(Timing.of(ahead - Math.floor(ahead))), meant);
        assertThat(worst.fault()).isEqualTo(Fault.LATE);
        assertThat(worst.side()).isEqualTo(Optional.of(Side.RIGHT));
        assertThat(worst.value()).isCloseTo(-0.06 * meant.period(), within(0.005));
    }

    @ParameterizedTest
    @ValueSource(strings = {ISOLATIONS, "static spin vs triquetra", "CAP vs CAP, split time"})
    void aSmallCircleComesFirst(String phrase) {
        Pairing meant = TwelveClassics.turning(phrase, 70);
        Part right = meant.right();
        double radius = right.motion().path().radius();
        Part small = right.with(right.motion().withPath(right.motion().path().scaled(0.75)));
        Finding worst = worst(meant.with(Side.RIGHT, small), meant);
        assertThat(worst.fault()).isEqualTo(Fault.SIZE);
        assertThat(worst.side()).isEqualTo(Optional.of(Side.RIGHT));
        assertThat(worst.value()).isCloseTo(-radius / 4, within(0.01));
    }

    @ParameterizedTest
    @ValueSource(strings = {ISOLATIONS, "four-petal antispin vs static spin"})
    void aCentreThatIsTooHighComesFirst(String phrase) {
        Pairing meant = TwelveClassics.turning(phrase, 70);
        Part right = meant.right();
        Vector3D high = right.place().centre().add(new Vector3D(0, 0.1, 0));
        Part raised = right.with(right.place().withCentre(high));
        Finding worst = worst(meant.with(Side.RIGHT, raised), meant);
        assertThat(worst.fault()).isEqualTo(Fault.CENTRE_UP);
        assertThat(worst.value()).isCloseTo(0.1, within(0.01));
    }

    @Test
    void itIsSaidAsASpinnerWould() {
        Pairing meant = TwelveClassics.turning(ISOLATIONS, 60);
        Part right = meant.right();
        Part small = right.with(right.motion().withPath(right.motion().path().resized(0.22)));
        FilmReading film = held(meant.with(Side.RIGHT, small), meant, true);
        assertThat(TellFilm.of(film))
                .extracting(Told::text)
                .anySatisfy(
                        text ->
                                assertThat(text)
                                        .startsWith(
                                                "The right hand's circle is 8 cm too small: its"
                                                        + " radius is 22 cm instead of 30."));
    }

    @Test
    void theTetherAndThePhraseTellHowLargeThePictureIs() {
        Pairing meant = TwelveClassics.turning("static spin vs triquetra", 70);
        Measured measured = held(meant, meant, false).measured();
        assertThat(measured.how()).isEqualTo(HowScaled.FIGURE);
        assertThat(measured.scale().metres())
                .isCloseTo(Classics.PIXEL, within(0.01 * Classics.PIXEL));
    }

    @Test
    void anotherMotionThanTheOneMeantIsCalledByItsName() {
        FilmReading film =
                held(
                        TwelveClassics.turning("static spin vs triquetra", 70),
                        TwelveClassics.turning("static spin vs isolation", 70),
                        true);
        assertThat(film.nearest().orElseThrow().phrase().orElseThrow()).contains("triquetra");
        assertThat(TellFilm.of(film))
                .as("how one pattern differs from another is no advice")
                .anyMatch(told -> told.key().equals("film.rather"))
                .noneMatch(told -> told.key().startsWith("film.off"));
    }

    @Test
    void aMeasuredTraceIsReadLikeAnyOther() {
        Pairing meant = TwelveClassics.turning("static spin vs triquetra", 70);
        Measured measured = held(meant, meant, true).measured();
        LinkReading seen = LinkReading.of(measured.trace(meant), Side.LEFT);
        LinkReading spun = LinkReading.of(Classics.corded(meant, true).orElseThrow(), Side.LEFT);
        assertThat(seen.placedGap()).isCloseTo(spun.placedGap(), within(0.05));
        assertThat(seen.shapeGap()).isCloseTo(spun.shapeGap(), within(0.05));
    }

    @Test
    void aLinkOpensByWhatTheCircleIsTooSmall() {
        Pairing meant = TwelveClassics.turning("static spin vs triquetra", 70);
        Part right = meant.right();
        Part small = right.with(right.motion().withPath(right.motion().path().resized(0.45)));
        FilmReading film = held(meant.with(Side.RIGHT, small), meant, true);
        assertThat(film.held().findings().get(0).fault()).isEqualTo(Fault.SIZE);
        OpenLink link = film.held().links().get(0);
        assertThat(link.carrier()).isEqualTo(Side.LEFT);
        // Cords alone put the hand elsewhere than a rod would; what is beyond that is the fault's.
        assertThat(link.open()).isCloseTo(0.15, within(0.04));
        assertThat(film.held().findings())
                .filteredOn(finding -> finding.fault() == Fault.LINK)
                .singleElement()
                .satisfies(
                        finding ->
                                assertThat(finding.said())
                                        .startsWith("The link stands open 1")
                                        .contains("right hand", "from the left head"));
    }

    @ParameterizedTest
    @ValueSource(strings = {ISOLATIONS, "static spin vs triquetra"})
    void aLinkThatIsSpunAsCordsLetItIsNoFault(String phrase) {
        Pairing meant = TwelveClassics.turning(phrase, 70);
        Held held = held(meant, meant, true).held();
        assertThat(held.links()).isNotEmpty();
        assertThat(held.links())
                .allSatisfy(link -> assertThat(link.open()).isCloseTo(0, within(0.04)));
        assertThat(held.beats())
                .allSatisfy(
                        beat ->
                                assertThat(beat.heads().values())
                                        .allSatisfy(off -> assertThat(off.far()).isLessThan(0.03)));
    }

    @Test
    void whatIsOffIsToldOnItsCount() {
        Pairing meant = TwelveClassics.turning("static spin vs triquetra", 70);
        Part right = meant.right();
        Vector3D high = right.place().centre().add(new Vector3D(0, 0.12, 0));
        Held held =
                held(
                                meant.with(Side.RIGHT, right.with(right.place().withCentre(high))),
                                meant,
                                true)
                        .held();
        // Both are laid on what was meant together, so that each takes half of what they differ by.
        for (Beat beat : held.beats()) {
            assertThat(beat.heads().get(Side.RIGHT).y()).isCloseTo(0.06, within(0.02));
            assertThat(beat.heads().get(Side.LEFT).y()).isCloseTo(-0.06, within(0.02));
            assertThat(beat.hands().get(Side.LEFT).y()).isCloseTo(-0.06, within(0.03));
        }
        assertThat(held.beats()).extracting(Beat::count).containsExactly("1", "2");
    }

    @Test
    void aHandIsNotToldWhereItsCordHangsLoose() {
        Pairing meant = TwelveClassics.turning("static spin vs triquetra", 70);
        Held held = held(meant, meant, true).held();
        for (Side side : Side.values()) {
            for (Beat beat : held.beats()) {
                boolean pulls =
                        held.measured().side(side).hands().stream()
                                .anyMatch(
                                        sight ->
                                                Math.abs(sight.time() - beat.moment())
                                                        < meant.period() / 100);
                assertThat(beat.hands().containsKey(side)).isEqualTo(pulls);
            }
        }
    }
}
