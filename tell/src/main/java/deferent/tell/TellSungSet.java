package deferent.tell;

import deferent.motion.shared.Side;
import deferent.motion.song.Beats;
import deferent.motion.song.SongClock;
import deferent.search.set.InSong;
import deferent.search.set.SetPlan;
import deferent.search.set.Stay;
import deferent.search.set.ToSong;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Says a set in its song: where each pattern's counts begin, and what the song's tempo asks of it.
 * Music has beats a minute, a pattern cycles a minute, and both are said wherever they meet.
 */
public final class TellSungSet {
    // Tempi nearer to each other than that are told as one.
    private static final double SAME = 0.01;

    // A pendulum off the beat by less than that, in beats, is still heard on it.
    private static final double ON_BEAT = 0.1;

    private TellSungSet() {}

    /** To what the set is spun, from where on, and whether the song is long enough. */
    public static List<Told> whole(SetPlan plan, ToSong song, String name) {
        List<Told> all = new ArrayList<>();
        SongClock clock = song.clock();
        double end = plan.seconds();
        SongClock.Tempi tempi = clock.tempi(0, end);
        all.add(
                new Told(
                        "set.song",
                        Tone.NOTE,
                        "To \""
                                + name
                                + "\", "
                                + beats(song.tempo())
                                + ", from "
                                + place(song.beats(), song.fromBeat())
                                + " on, "
                                + time(clock.time(0))
                                + " into the song."
                                + (apart(tempi)
                                        ? " Meanwhile it goes at "
                                                + range(tempi.slowest(), tempi.fastest())
                                                + " beats a minute."
                                        : ""),
                        "The set is planned at the song's usual tempo and follows it where it"
                                + " drifts, but no single beat that falls early or late: the beats"
                                + " are up to "
                                + Math.round(1000 * clock.farthest(0, end))
                                + " ms from its course. Times are those of that course."));
        double over = clock.time(end) - song.beats().times().get(song.beats().times().size() - 1);
        if (over > song.beat()) {
            all.add(
                    new Told(
                            "set.song.short",
                            Tone.WARN,
                            "The song's last beat comes "
                                    + TellSet.duration(over)
                                    + " before the end: begin on an earlier beat, or keep patterns"
                                    + " for fewer counts.",
                            "After its last beat a song is taken to go on as before."));
        }
        return List.copyOf(all);
    }

    /** That the song is not where the set has it. */
    public static Told gone(String name, Optional<String> unread) {
        String without = " The set is told without it, at the patterns' own tempi.";
        return new Told(
                "set.song.gone",
                Tone.WARN,
                "The song \""
                        + name
                        + (unread.isPresent()
                                ? "\" cannot be read from the shelf: mend its file, or choose another."
                                : "\" is no longer on the shelf: put it back, or choose another.")
                        + without,
                unread.map(why -> "Its file " + why + ".")
                        .orElse("Neither its file nor its name is."));
    }

    /** That a part that comes round again is told without its song. */
    public static Told round(String name) {
        return new Told(
                "set.song.round",
                Tone.NOTE,
                "Round and round it goes without \"" + name + "\", at the patterns' own tempi.",
                "A part that is repeated for practice seldom lasts whole bars.");
    }

    /**
     * That a page has not the song in it, and what then gives the time.
     *
     * @param there whether the song's sound was found
     */
    public static Told unheard(String name, boolean there) {
        return new Told(
                "set.song.unheard",
                Tone.NOTE,
                there
                        ? "The song is not in here: take this set away alone, as a page, and you"
                                + " hear it there."
                        : "The song is not in here: the sound of \""
                                + name
                                + "\" was not found where the set was taken away.",
                "A page with all songs of a shelf would be too large for a phone to open at once.");
    }

    /** That pages which are open to all have not the song in them. */
    public static Told unpublished() {
        return new Told(
                "set.song.unpublished",
                Tone.NOTE,
                "Here it goes at the song's usual tempo and without the song.",
                "A site is open to all, and a song is mostly somebody's. As a page of its own the set"
                        + " plays to it.");
    }

    /** "16 counts, the first on beat 1 of bar 5". */
    public static String counted(InSong at, ToSong song) {
        return TellSet.counts(at.counts())
                + ", the first on "
                + place(song.beats(), (int) Math.rint(at.beat()));
    }

    /** Where a pattern's counts begin, how many there are, and at which tempi. */
    public static Told start(InSong at, Stay stay, ToSong song) {
        int asked = stay.wanted().counts();
        String counts = TellSet.counts(at.counts());
        String begins =
                Say.capital(counts)
                        + (counts.equals(TellSet.counts(asked)) ? "" : " instead of " + asked)
                        + ", the first on "
                        + place(song.beats(), (int) Math.rint(at.beat()))
                        + ", "
                        + time(at.time())
                        + " into the song.";
        if (at.ownTime()) {
            return new Told(
                    "set.song.own",
                    Tone.NOTE,
                    begins + " Then " + Say.small(ownTime(at, song)),
                    "A pendulum that nobody drives keeps the time that its cord gives it, and what"
                            + " comes after it begins anew on a beat. Its length for a swing of so"
                            + " many seconds is g·(T/4K)², K the complete elliptic integral (DLMF"
                            + " 19.2(ii), 22.19(i)).");
        }
        return new Told(
                "set.song.start",
                Tone.NOTE,
                begins + " " + tempi(at),
                "A count is one turn of the poi that turns more often; to a song a pattern's counts"
                        + " go on until the next one's begin. The tempo is the song's, with as many beats a cycle as the set says, or as bring"
                        + " it nearest to the pattern's own tempo.");
    }

    private static String tempi(InSong at) {
        String cycle = "A cycle lasts " + count(at.beatsACycle());
        SongClock.Tempi tempi = at.tempi();
        return apart(tempi)
                ? cycle
                        + ": "
                        + range(
                                tempi.slowest() / at.beatsACycle(),
                                tempi.fastest() / at.beatsACycle())
                        + " cycles a minute at "
                        + range(tempi.slowest(), tempi.fastest())
                        + " beats a minute."
                : cycle
                        + ": "
                        + Say.trimmed(tempi.fastest() / at.beatsACycle(), 1)
                        + " cycles a minute at "
                        + beats(tempi.fastest())
                        + ".";
    }

    /** "The pendulum keeps its own time: a swing lasts 3.67 beats. A cord of 71 cm swings in 4." */
    private static String ownTime(InSong at, ToSong song) {
        String beats =
                at.pendulum()
                        .map(
                                pendulum ->
                                        ": at "
                                                + beats(song.tempo())
                                                + " a swing lasts "
                                                + Say.trimmed(pendulum.beats(), 2)
                                                + " of its beats. A cord of "
                                                + Say.size(pendulum.tether())
                                                + " swings in "
                                                + pendulum.whole())
                        .orElse("");
        return "The pendulum keeps its own time" + beats + ".";
    }

    /** What the song's tempo asks that cords or hands do not give. */
    public static List<Told> asked(InSong at) {
        List<Told> all = new ArrayList<>();
        if (!at.slack().isEmpty()) {
            all.add(
                    new Told(
                            "set.song.slow",
                            Tone.WARN,
                            "Where the song is slowest, "
                                    + pace(at.tempi().slowest(), at)
                                    + ", "
                                    + whose(at.slack(), "cord")
                                    + " goes slack: give a cycle fewer beats.",
                            "The pull of the figure as it is drawn; a hand that gives may save it."));
        }
        if (!at.hurried().isEmpty()) {
            all.add(
                    new Told(
                            "set.song.fast",
                            Tone.WARN,
                            "Where the song is fastest, "
                                    + pace(at.tempi().fastest(), at)
                                    + ", "
                                    + whose(at.hurried(), "hand")
                                    + " has to be quicker than a practised one: give a cycle more"
                                    + " beats.",
                            "The hand's acceleration in the figure as it is drawn, against what is"
                                    + " said of the performer's hands."));
        }
        if (!at.ownTime() && at.adrift() > ON_BEAT * 60 / at.tempi().fastest()) {
            all.add(
                    new Told(
                            "set.song.adrift",
                            Tone.WARN,
                            "The song drifts and the pendulum does not: over these counts it comes up"
                                    + " to "
                                    + Say.trimmed(at.adrift(), 1)
                                    + " s off the song. Keep it for fewer counts.",
                            "The swing begins with the first count and keeps the time that its cord"
                                    + " gives it; a little wider is a little slower. The drawing"
                                    + " follows the song."));
        }
        return List.copyOf(all);
    }

    private static String whose(List<Side> sides, String what) {
        return sides.size() == 2 ? "each " + what : "the " + sides.get(0).word() + " " + what;
    }

    private static String pace(double beatsAMinute, InSong at) {
        return Say.trimmed(beatsAMinute / at.beatsACycle(), 1)
                + " cycles a minute at "
                + beats(beatsAMinute);
    }

    /** The first of what can hurt, where the song is such that it is gravest; empty where calm. */
    public static Optional<Told> danger(InSong at) {
        TellDanger slowest = new TellDanger(at.slowest());
        TellDanger fastest = new TellDanger(at.fastest());
        return Stream.of(
                        fastest.dangers().stream(),
                        slowest.dangers().stream(),
                        fastest.cares().stream(),
                        slowest.cares().stream())
                .flatMap(told -> told)
                .findFirst();
    }

    /** "beat 1 of bar 5". */
    public static String place(Beats beats, int beat) {
        return beats.bar(beat) < 1
                ? "beat " + (beat + 1) + ", before the first bar"
                : "beat " + beats.inBar(beat) + " of bar " + beats.bar(beat);
    }

    /** "0:08.2", minutes and seconds. */
    public static String time(double seconds) {
        long tenths = Math.round(10 * Math.abs(seconds));
        return (seconds < 0 && tenths > 0 ? "-" : "")
                + String.format(
                        Locale.ROOT, "%d:%02d.%d", tenths / 600, tenths / 10 % 60, tenths % 10);
    }

    private static boolean apart(SongClock.Tempi tempi) {
        return tempi.fastest() > (1 + SAME) * tempi.slowest();
    }

    private static String beats(double aMinute) {
        return Say.trimmed(aMinute, 1) + " beats a minute";
    }

    private static String count(double beats) {
        return Math.abs(beats - 1) < 1e-9 ? "one beat" : Say.trimmed(beats, 2) + " beats";
    }

    private static String range(double least, double most) {
        return Say.trimmed(least, 0) + " to " + Say.trimmed(most, 0);
    }
}
