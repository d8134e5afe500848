package deferent.search.set;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.song.Beats;
import deferent.motion.song.SongClock;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.search.transition.Grade;
import deferent.search.transition.Hindrance;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ToSongTest {
    private static final PairBook BOOK = new PairBook(Grade.PRACTISED, Performer.USUAL, Kit.USUAL);
    private static final List<Pairing> PATTERNS =
            List.of(
                    said("extension vs extension, split time, tether 40 cm"),
                    said("extension vs static spin, tether 40 cm"),
                    said("static spin vs triquetra, tether 40 cm"),
                    said("CAP vs CAP, split time, tether 40 cm"));

    private static Pairing said(String phrase) {
        return Phrase.parse(phrase).pairing();
    }

    private static SetPlan plan(ToSong song, List<Wanted> wanted) {
        return SetPlan.of(
                        wanted.stream().map(Optional::of).toList(),
                        BOOK,
                        false,
                        Optional.of(song),
                        p -> {},
                        () -> false)
                .orElseThrow();
    }

    private static Wanted wanted(ToSong song, Pairing pairing, int beats, int counts) {
        return new Wanted(song.fitted(pairing, OptionalInt.of(beats)), counts);
    }

    private static Stay stay(SetPlan plan, int step) {
        return plan.stays().get(step).orElseThrow();
    }

    @Test
    void everyPatternIsCountedFromOneOnABeat() {
        Random random = new Random(11);
        int led = 0;
        for (int set = 0; set < 4; set++) {
            // Of two songs, one in threes: 56 cycles a minute of two beats or three.
            int bar = 3 + set % 2;
            int beats = bar == 3 ? 3 : 2;
            ToSong song = new ToSong(Beats.even(0.4, 56.0 * beats, 400, bar), random.nextInt(20));
            List<Wanted> wanted =
                    random.ints(5, 0, PATTERNS.size())
                            .mapToObj(
                                    i ->
                                            wanted(
                                                    song,
                                                    PATTERNS.get(i),
                                                    beats,
                                                    4 + random.nextInt(20)))
                            .toList();
            SetPlan plan = plan(song, wanted);
            for (int i = 0; i < plan.stays().size(); i++) {
                Stay stay = stay(plan, i);
                boolean goesOn = i > 0 && plan.joints().get(i - 1).way() == Joint.Way.SAME;
                if (goesOn) {
                    continue;
                }
                double on = stay.one() / song.beat();
                assertThat(Math.abs(on - Math.rint(on)) * song.beat())
                        .as("set %s, pattern %s", set, i)
                        .isLessThan(1e-3);
                assertThat(stay.one()).isBetween(stay.starts() - 1e-9, stay.starts() + 60);
            }
            led += (int) plan.joints().stream().filter(j -> j.way() == Joint.Way.LED).count();
        }
        assertThat(led).isGreaterThan(6);
    }

    @Test
    void aPatternsCountsGoOnUntilTheNextOnesBegin() {
        ToSong song = new ToSong(Beats.even(0, 112, 200, 4), 0);
        SetPlan plan =
                plan(
                        song,
                        List.of(
                                wanted(song, PATTERNS.get(0), 2, 8),
                                wanted(song, PATTERNS.get(1), 2, 8),
                                wanted(song, PATTERNS.get(0), 2, 8)));
        assertThat(plan.flows()).isTrue();
        // Eight counts of two beats, passages and all: four bars each, or a count more or less.
        for (int i = 0; i < 3; i++) {
            double until = i < 2 ? stay(plan, i + 1).one() : plan.seconds();
            assertThat((until - stay(plan, i).one()) / song.beat()).isCloseTo(16, within(2.01));
            assertThat(InSong.of(plan, BOOK).get(i).counts() * 2)
                    .isCloseTo((until - stay(plan, i).one()) / song.beat(), within(1e-6));
        }
        assertThat(stay(plan, 0).one()).isZero();
    }

    @Test
    void aCycleHasTheBeatsWithWhichAPatternIsNearestToItsOwnTempo() {
        ToSong four = new ToSong(Beats.even(0, 128, 200, 4), 0);
        assertThat(four.beatsACycle(said("extension vs extension"))).isEqualTo(2);
        assertThat(four.beatsACycle(said("triquetra vs static spin, tempo 35"))).isEqualTo(4);
        ToSong three = new ToSong(Beats.even(0, 180, 200, 3), 0);
        assertThat(three.beatsACycle(said("extension vs extension"))).isEqualTo(3);
        assertThat(three.beatsACycle(said("extension vs extension, tempo 80"))).isEqualTo(3);
        assertThat(four.fitted(said("extension vs extension"), OptionalInt.empty()).tempo())
                .isCloseTo(64, within(1e-9));
        assertThat(four.fitted(said("extension vs extension"), OptionalInt.of(8)).tempo())
                .isCloseTo(16, within(1e-9));
        assertThatThrownBy(() -> four.fitted(said("extension vs extension"), OptionalInt.of(33)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("beats");
        assertThatThrownBy(() -> new ToSong(four.beats(), 200))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("the beat on which the set begins");
    }

    @Test
    void whatKeepsItsOwnTimeIsFollowedAnewOnABeat() {
        ToSong song = new ToSong(Beats.even(0, 120, 200, 4), 0);
        Pairing swing = said("pendulum vs pendulum");
        assertThat(song.keeps(swing)).isFalse();
        assertThat(song.fitted(swing, OptionalInt.of(4))).isEqualTo(swing);
        SetPlan plan =
                plan(song, List.of(new Wanted(swing, 5), wanted(song, PATTERNS.get(0), 2, 8)));
        Joint joint = plan.joints().get(0);
        assertThat(joint.way()).isEqualTo(Joint.Way.NONE);
        assertThat(joint.why()).isEqualTo(Hindrance.OWN_TIME);
        double beats = stay(plan, 1).starts() / song.beat();
        assertThat(beats).isCloseTo(Math.rint(beats), within(1e-9));
        assertThat(stay(plan, 1).starts()).isGreaterThan(stay(plan, 0).ends() - 1e-9);
    }

    @Test
    void aPendulumComesOffASongThatDrifts() {
        ToSong even = new ToSong(Beats.even(0, 120, 200, 4), 0);
        Pairing swing = said("pendulum vs static spin");
        Pairing fitted = inFour(even, swing);
        assertThat(even.keeps(fitted)).isTrue();
        assertThat(InSong.of(plan(even, List.of(new Wanted(fitted, 8))), BOOK).get(0).adrift())
                .isLessThan(1e-6);
        // Each beat a thousandth shorter than the one before, 120 a minute on the whole.
        List<Double> times = new ArrayList<>(List.of(0.0));
        for (int k = 0; k < 199; k++) {
            times.add(times.get(k) + 0.5 * (1.099 - 0.001 * k));
        }
        ToSong quickens = new ToSong(new Beats(times, 4, 0), 0);
        SetPlan plan = plan(quickens, List.of(new Wanted(inFour(quickens, swing), 8)));
        // Four swings of four beats, two counts each.
        assertThat(plan.seconds()).isCloseTo(16 * quickens.beat(), within(1e-6));
        assertThat(InSong.of(plan, BOOK).get(0).adrift())
                .isCloseTo(times.get(16) - 16 * quickens.beat(), within(0.01));
    }

    /** On a cord with which a swing lasts four beats. */
    private static Pairing inFour(ToSong song, Pairing swing) {
        Part part = swing.part(Side.LEFT);
        double cord = song.pendulum(swing, OptionalInt.of(4)).orElseThrow().tether();
        return swing.with(
                Side.LEFT, new Part(part.motion(), Tether.of(cord), part.place(), part.cycles()));
    }

    @Test
    void aBarIsBegunWhereThatCostsLittle() {
        Run two = new Run(2, 8, 1, true);
        List<Run> runs = List.of(two, two);
        // One second a beat, four a bar: the one begins a bar, the other two beats after it.
        Door onTheBar = new Door(1, 2, 1, 1.5);
        Door off = new Door(1, 1, 2, 0);
        Door muchGentler = new Door(1, 1, 2, -1);
        SongBars bars = new SongBars(4, 0, 1);
        assertThat(Chain.open(runs, List.of(List.of(off, onTheBar)), SongBars.NONE).doors())
                .containsExactly(0);
        assertThat(section(two, onTheBar)).isEqualTo(8);
        assertThat(section(two, off)).isEqualTo(8);
        // Begun on the third beat of a bar, the next would begin there too.
        SongBars third = new SongBars(4, 2, 1);
        assertThat(Chain.open(runs, List.of(List.of(muchGentler, onTheBar)), third).cost())
                .isCloseTo(1, within(1e-9));
        assertThat(bars.weight(8)).isZero();
        assertThat(third.weight(2)).isZero();
        assertThat(third.weight(8)).isEqualTo(SongBars.OFF);
    }

    private static double section(Run run, Door out) {
        return run.stay(0, out, run) + out.seconds() + run.untilOne(out.joins());
    }

    @Test
    void theClockOfASetBeginsOnItsBeat() {
        ToSong song = new ToSong(Beats.even(0.4, 90, 100, 3), 6);
        SongClock clock = song.clock();
        assertThat(clock.time(0)).isCloseTo(0.4 + 4, within(1e-9));
        assertThat(clock.beatsAMinute()).isCloseTo(90, within(1e-9));
    }
}
