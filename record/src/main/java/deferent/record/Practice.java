package deferent.record;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One time that a pattern was practised and read: what was meant, what was measured, and what was
 * off, with how sure each number is. Where it was read from a film, the film is told by its name,
 * size and content, and is not in here. Lengths are metres, times seconds.
 *
 * @param name how the user calls it
 * @param note free text, may be empty
 * @param author whose it is, or that it is invented
 * @param date when it was practised
 * @param dated how that is known
 * @param pattern what was meant, in trade words without a tempo: what is compared over weeks
 * @param pairing the same, at the tempo that was measured
 * @param source what it was read from, such as "film"
 * @param clip the film
 * @param period seconds of the common cycle
 * @param periodError its standard deviation
 * @param seconds how long was looked at
 * @param scale of the picture
 * @param sizes what is off, each kind with its error, whether worth saying or not
 * @param findings what was worth saying, what mattered most first
 * @param heads mean cycle of each head
 * @param hands mean cycle of each hand, where it could be told
 * @param extras what other programs keep in it
 */
public record Practice(
        String name,
        String note,
        Optional<String> author,
        Instant date,
        DatedBy dated,
        String pattern,
        Pairing pairing,
        String source,
        Clip clip,
        double period,
        double periodError,
        double seconds,
        Scale scale,
        List<Size> sizes,
        List<Finding> findings,
        Map<Side, Track> heads,
        Map<Side, Track> hands,
        Extras extras) {
    /** Even moments of the common cycle at which it is known where something was. */
    public static final int MOMENTS = 120;

    /** How it is known when something was practised. */
    public enum DatedBy {
        /** The film says it. */
        FILM("as the film says"),
        /** The film does not say; its file was last written then. */
        FILE("as its file says");

        private final String words;

        DatedBy(String words) {
            this.words = words;
        }

        /** For people. */
        public String words() {
            return words;
        }
    }

    /**
     * A film.
     *
     * @param name of its file, without folders
     * @param bytes its size
     * @param sha256 of its content, in hexadecimal
     * @param kept whether the film stands beside this record
     */
    public record Clip(String name, long bytes, String sha256, boolean kept) {
        public Clip {
            Wording.line(name, Wording.NAME, "a film's name");
            if (name.indexOf('/') >= 0 || name.indexOf('\\') >= 0) {
                throw new Refusal("names a folder", "a film's name", "give the file's name alone");
            }
            if (!sha256.matches("[0-9a-f]{64}")) {
                throw new Refusal(
                        "is no SHA-256", "a film's content", "give 64 digits from 0 to f");
            }
        }
    }

    /**
     * How large the picture is.
     *
     * @param pixel metres at the performer
     * @param error a share of itself, one standard deviation
     * @param how it is known, in one word
     * @param mirrored whether it was a mirror's picture
     */
    public record Scale(double pixel, double error, String how, boolean mirrored) {
        public Scale {
            Refusal.within(pixel, 1e-6, 1, "a pixel", "m");
            Refusal.within(error, 0, 1, "how sure a scale is", "");
            Wording.line(how, Wording.TAG, "how a scale is known");
        }
    }

    /**
     * One kind of thing that may be off.
     *
     * @param key what kind
     * @param side whose; empty for both
     * @param value how far off, positive or negative as the kind says
     * @param error its standard deviation
     * @param unit of both: "m", "s" or "rad"
     */
    public record Size(String key, Optional<Side> side, double value, double error, String unit) {
        public Size {
            Wording.line(key, Wording.TAG, "a kind of thing that is off");
            Refusal.numbers("what is off", value, error);
            if (!List.of("m", "s", "rad").contains(unit)) {
                throw new Refusal("is " + unit, "a unit", "give m, s or rad");
            }
        }
    }

    /**
     * What was worth saying.
     *
     * @param weight how much of the picture it spoiled, metres
     */
    public record Finding(
            String key, Optional<Side> side, String said, String mend, double weight) {
        public Finding {
            Wording.line(key, Wording.TAG, "a kind of thing that is off");
            Wording.line(said, Wording.PHRASE, "what is said of it");
            Wording.line(mend, Wording.PHRASE, "what mends it");
            Refusal.numbers("what is off", weight);
        }
    }

    /**
     * Where something was over the mean cycle, seen from the front.
     *
     * @param moments which of {@link #MOMENTS}, rising; those at which nothing is told are left out
     * @param x metres to the performer's left
     * @param y metres up
     * @param error standard deviation on either axis, metres
     */
    public record Track(List<Integer> moments, List<Double> x, List<Double> y, List<Double> error) {
        public Track {
            moments = List.copyOf(moments);
            x = List.copyOf(x);
            y = List.copyOf(y);
            error = List.copyOf(error);
            if (x.size() != moments.size()
                    || y.size() != moments.size()
                    || error.size() != moments.size()) {
                throw new Refusal(
                        "have different lengths", "a track's lists", "give one entry a moment");
            }
            int last = -1;
            for (int moment : moments) {
                if (moment <= last || moment >= MOMENTS) {
                    throw new Refusal(
                            "do not rise from 0 to " + (MOMENTS - 1),
                            "a track's moments",
                            "give each at most once");
                }
                last = moment;
            }
        }
    }

    public Practice {
        Wording.line(name, Wording.NAME, "name");
        Wording.note(note);
        author.ifPresent(a -> Wording.line(a, Wording.NAME, "author"));
        Wording.line(pattern, Wording.PHRASE, "pattern");
        Wording.line(source, Wording.TAG, "source");
        Refusal.positive(period, 60, "a cycle", "s");
        Refusal.within(periodError, 0, 60, "how sure a cycle is", "s");
        Refusal.positive(seconds, 86400, "what was looked at", "s");
        sizes = List.copyOf(sizes);
        findings = List.copyOf(findings);
        heads = new EnumMap<>(heads);
        hands = new EnumMap<>(hands);
        for (Side side : Side.values()) {
            if (!heads.containsKey(side) || !hands.containsKey(side)) {
                throw new Refusal("lack one side", "mean cycles", "give both sides");
            }
        }
    }

    /** Both sides are always there. */
    public Track head(Side side) {
        return track(heads, side);
    }

    /** Both sides are always there. */
    public Track hand(Side side) {
        return track(hands, side);
    }

    private static Track track(Map<Side, Track> tracks, Side side) {
        Track track = tracks.get(side);
        if (track == null) {
            throw new IllegalStateException("both sides are checked at making");
        }
        return track;
    }

    @Override
    public Map<Side, Track> heads() {
        return new EnumMap<>(heads);
    }

    @Override
    public Map<Side, Track> hands() {
        return new EnumMap<>(hands);
    }

    /** One kind of thing that may be off, where it was measured. */
    public Optional<Size> size(String key, Optional<Side> side) {
        return sizes.stream().filter(s -> s.key().equals(key) && s.side().equals(side)).findFirst();
    }

    /** The same, the film standing beside it. */
    public Practice withFilm() {
        return new Practice(
                name,
                note,
                author,
                date,
                dated,
                pattern,
                pairing,
                source,
                new Clip(clip.name(), clip.bytes(), clip.sha256(), true),
                period,
                periodError,
                seconds,
                scale,
                sizes,
                findings,
                heads,
                hands,
                extras);
    }
}
