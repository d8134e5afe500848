package deferent.search.set;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.motion.song.SongClock;
import deferent.reading.danger.Dangers;
import deferent.reading.danger.Level;
import deferent.reading.tether.Pull;
import deferent.search.whole.Readings;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * One pattern of a set in its song: when its counts begin there, how the song goes meanwhile, and
 * what it asks where the song goes slowest and fastest.
 *
 * @param step which pattern of the set
 * @param beat the beat of the song, from 0, on which it is first counted from 1
 * @param time when that is, seconds from the start of the sound
 * @param counts how many of its counts go on until the next one's begin, or until it is left where
 *     nothing leads on
 * @param beatsACycle beats a cycle, as its tempo counts cycles; not whole where a pendulum keeps
 *     its own time
 * @param tempi slowest and fastest tempo of the song while it is spun, beats a minute
 * @param slowest what it asks at the slowest
 * @param fastest what it asks at the fastest
 * @param pendulum beside the song, where it has one that nobody drives
 * @param adrift how far that pendulum, begun on its 1, comes off the song at most while the song
 *     drifts, seconds; none without one
 */
public record InSong(
        int step,
        double beat,
        double time,
        double counts,
        double beatsACycle,
        SongClock.Tempi tempi,
        Readings slowest,
        Readings fastest,
        Optional<ToSong.Pendulum> pendulum,
        double adrift) {
    /** A tempo that differs by less than that share asks the same. */
    private static final double ALIKE = 0.005;

    /** At so many times, evenly over its counts, a pendulum is held against the song. */
    private static final int LOOKS = 64;

    /** The patterns that are there, each in its song; none where the set has none. */
    public static List<InSong> of(SetPlan plan, PairBook book) {
        List<InSong> all = new ArrayList<>();
        plan.song().ifPresent(song -> of(plan, song, book, all));
        return List.copyOf(all);
    }

    private static void of(SetPlan plan, ToSong song, PairBook book, List<InSong> all) {
        SongClock clock = song.clock();
        for (int i = 0; i < plan.stays().size(); i++) {
            if (plan.stays().get(i).isPresent()) {
                Stay stay = plan.stays().get(i).get();
                SongClock.Tempi tempi = clock.tempi(stay.starts(), stay.ends());
                Optional<ToSong.Pendulum> pendulum =
                        song.pendulum(stay.wanted().pairing(), OptionalInt.empty());
                all.add(
                        new InSong(
                                i,
                                clock.beat(stay.one()),
                                clock.time(stay.one()),
                                counts(plan, i),
                                song.beatsOf(stay.wanted().pairing()),
                                tempi,
                                at(stay, tempi.slowest() / song.tempo(), book),
                                at(stay, tempi.fastest() / song.tempo(), book),
                                pendulum,
                                pendulum.isPresent()
                                        ? adrift(clock, stay.one(), until(plan, i))
                                        : 0));
            }
        }
    }

    /** How far what goes evenly comes off the song between two times of the plan, seconds. */
    private static double adrift(SongClock clock, double from, double until) {
        return IntStream.rangeClosed(0, LOOKS)
                .mapToDouble(k -> from + (until - from) * k / LOOKS)
                .map(t -> Math.abs(clock.time(t) - clock.time(from) - (t - from)))
                .max()
                .orElseThrow();
    }

    /**
     * For how many of its counts a pattern goes on, from where it is counted from 1 until the next
     * one is, or until it is left where nothing leads on.
     *
     * @param step which pattern of the set, one that is there
     */
    public static double counts(SetPlan plan, int step) {
        Stay stay = plan.stays().get(step).orElseThrow();
        return (until(plan, step) - stay.one()) / stay.wanted().count();
    }

    /** When a pattern's counts end, seconds from the set's start. */
    private static double until(SetPlan plan, int step) {
        boolean led = step < plan.joints().size() && plan.joints().get(step).way() == Joint.Way.LED;
        return led
                ? plan.stays().get(step + 1).orElseThrow().one()
                : plan.stays().get(step).orElseThrow().ends();
    }

    /** What a pattern asks so many times as fast as planned; a pendulum is no faster. */
    private static Readings at(Stay stay, double faster, PairBook book) {
        Pairing pairing = stay.wanted().pairing();
        return Math.abs(faster - 1) < ALIKE || pairing.setsOwnTempo()
                ? stay.readings()
                : book.readings(pairing.withTempo(OptionalDouble.of(pairing.tempo() * faster)));
    }

    /** Whether it keeps a time of its own beside the song. */
    public boolean ownTime() {
        return Math.abs(beatsACycle - Math.rint(beatsACycle)) > 1e-6;
    }

    /** How grave what can hurt in it is where it is gravest; what is not known asks for care. */
    public Level level() {
        Level one = level(slowest);
        Level other = level(fastest);
        return one.atLeast(other) ? one : other;
    }

    private static Level level(Readings readings) {
        return readings.dangers().reading().map(Dangers::level).orElse(Level.CARE);
    }

    /** Whose cord would have to push where the song goes slowest, the figure as it is drawn. */
    public List<Side> slack() {
        return Arrays.stream(Side.values())
                .filter(side -> pull(slowest, side).filter(p -> p.least() < 0).isPresent())
                .toList();
    }

    /** Whose hand would have to quicken more than it can where the song goes fastest. */
    public List<Side> hurried() {
        double most = fastest.performer().hands().acceleration();
        return Arrays.stream(Side.values())
                .filter(
                        side ->
                                pull(fastest, side)
                                        .filter(p -> p.handAcceleration() > most)
                                        .isPresent())
                .toList();
    }

    private static Optional<Pull> pull(Readings readings, Side side) {
        return readings.cord(side).pull().reading();
    }
}
