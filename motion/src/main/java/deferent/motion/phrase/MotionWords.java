package deferent.motion.phrase;

import deferent.motion.pairing.Arc;
import deferent.motion.pairing.Drawn;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Polygon;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Stretches;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Turns;

/**
 * What a hand does, in the trade's words where it has some, else described: which motion it is, not
 * its sizes. Sizes within a billionth of a trade word's own count as that.
 */
public final class MotionWords {
    private static final double NEAR = 1e-9;

    private final Motion motion;
    private final double tether;
    private final boolean mirrored;

    private MotionWords(Motion motion, double tether, boolean mirrored) {
        this.motion = motion;
        this.tether = tether;
        this.mirrored = mirrored;
    }

    public static String of(Pairing pairing, Side side) {
        return of(pairing, side, Lexicon.EMPTY);
    }

    /** "isolation", "horizontal cat-eye", "four-petal antispin", "CAP-like triquetra". */
    public static String of(Pairing pairing, Side side, Lexicon lexicon) {
        Part part = pairing.part(side);
        double tether = part.tether().length();
        for (Lexicon.Own own : lexicon.byKey().values()) {
            if (PhraseWriter.makes(
                    own.name(), part.motion(), tether, pairing.mirrored(side), lexicon)) {
                return own.name();
            }
        }
        MotionWords words = new MotionWords(part.motion(), tether, pairing.mirrored(side));
        String name =
                part.motion().riding()
                        ? words.rider(Names.headOnArc(pairing.part(side.other()).motion()))
                        : words.name();
        return part.place().turn().turns() == 0 ? name : "toroid of " + name;
    }

    static String describe(Motion motion, double tether) {
        return new MotionWords(motion, tether, false).name();
    }

    private String name() {
        HandPath path = motion.path();
        SpinLaw spin = motion.spin();
        if (path.still()) {
            return still(spin);
        }
        if (path instanceof Series series && series.terms().size() == 1) {
            Series.Term only = series.terms().get(0);
            if (only.k() == 1) {
                return circling(only.radius(), spin.turned(-only.angle()), only.angle());
            }
        }
        if (path instanceof Series series && linearIsolation(series, spin)) {
            return "linear isolation";
        }
        if (path instanceof Arc && !(spin instanceof Swing) && spin.turns() != 0 && oneWay(spin)) {
            return "CAP";
        }
        return pathName(path) + ", " + turning(spin);
    }

    private static String still(SpinLaw spin) {
        if (spin instanceof Swing) {
            return "pendulum";
        }
        if (spin instanceof Stretches s) {
            boolean rests =
                    s.stretches().stream().allMatch(x -> x.ease() == Stretches.Ease.RESTING);
            return s.turns() == 0 && rests ? "stall" : "still hand, " + turning(spin);
        }
        return spin.turns() == 0
                ? "still hand and poi"
                : spin.turns() == 1 ? "static spin" : "static spin, " + turning(spin);
    }

    // A hand on a circle of that radius; from is where the hand starts on it, spin is seen from
    // there.
    private String circling(double radius, SpinLaw spin, double from) {
        if (spin instanceof Stretches s && halfAndHalf(s)) {
            return "half-and-half flower";
        }
        if (!(spin instanceof Turns even)) {
            return "circle, " + turning(spin);
        }
        int n = even.turns();
        if (n == 1) {
            if (radius < tether - NEAR && sameTurn(even.start(), Math.PI)) {
                return "isolation";
            }
            return sameTurn(even.start(), 0)
                    ? "extension"
                    : "circle, the poi turning once with the hand, "
                            + degrees(Math.IEEEremainder(even.start(), 2 * Math.PI))
                            + " from outward";
        }
        double tilt = even.start() / (1 - n) + from;
        if (n == -1) {
            boolean line = Math.abs(radius - tether) < NEAR;
            return eye(line ? "linear extension" : "cat-eye", tilt, line);
        }
        String flower = n == -2 ? "triquetra" : Names.flower(n);
        boolean box = Math.abs(n - 1) == 4 && repeats(tilt, Math.PI / 4, Math.PI / 2);
        return box ? "box " + flower : flower;
    }

    private String eye(String name, double tilt, boolean line) {
        if (repeats(tilt, 0, Math.PI)) {
            return line ? name : "horizontal " + name;
        }
        if (repeats(tilt, Math.PI / 2, Math.PI)) {
            return "vertical " + name;
        }
        return name + " tilted " + degrees(Math.IEEEremainder(mirrored ? -tilt : tilt, Math.PI));
    }

    private String rider(boolean onArc) {
        SpinLaw spin = motion.spin();
        if (!(spin instanceof Turns even)) {
            return spin instanceof Swing ? "pendulum, riding" : turning(spin) + ", riding";
        }
        int n = even.turns();
        if (onArc && n != 0) {
            return n == 2
                    ? "CAP"
                    : n > 0
                            ? "CAP, " + turning(spin)
                            : "CAP-like "
                                    + (n == -2
                                            ? "triquetra"
                                            : n == -1 ? "cat-eye" : Names.flower(n));
        }
        return circling(tether / 2, spin, 0) + ", riding";
    }

    private boolean linearIsolation(Series series, SpinLaw spin) {
        if (series.terms().size() != 2
                || series.terms().get(0).k() != -1
                || series.terms().get(1).k() != 1
                || !(spin instanceof Turns even)
                || even.turns() != 1) {
            return false;
        }
        Series.Term back = series.terms().get(0);
        Series.Term out = series.terms().get(1);
        return Math.abs(back.radius() - tether / 2) < NEAR
                && Math.abs(out.radius() - tether / 2) < NEAR
                && sameTurn(even.start(), out.angle() + Math.PI);
    }

    private static boolean halfAndHalf(Stretches s) {
        if (s.stretches().size() != 2) {
            return false;
        }
        double in = s.stretches().get(0).turns();
        double anti = s.stretches().get(1).turns();
        return s.turns() == 1 && in > 0.5 && anti <= 0 && s.stretches().get(0).share() == 0.5;
    }

    private static boolean oneWay(SpinLaw spin) {
        return spin instanceof Turns
                || (spin instanceof Stretches s
                        && s.stretches().stream().allMatch(x -> x.turns() * s.turns() >= 0));
    }

    private static String pathName(HandPath path) {
        if (path instanceof Polygon polygon) {
            return Names.polygon(polygon.corners());
        }
        if (path instanceof Arc) {
            return "arc";
        }
        if (path instanceof Drawn) {
            return "drawn path";
        }
        if (path instanceof Riding) {
            return "riding";
        }
        Series series = (Series) path;
        if (series.terms().size() == 1) {
            return "circle gone round "
                    + Names.times(Math.abs(series.terms().get(0).k()))
                    + (series.terms().get(0).k() < 0 ? " the other way" : "");
        }
        boolean two = series.terms().size() == 2;
        Series.Term first = series.terms().get(0);
        Series.Term last = series.terms().get(series.terms().size() - 1);
        if (two && first.k() == -1 && last.k() == 1) {
            return Math.abs(first.radius() - last.radius()) < NEAR ? "line" : "ellipse";
        }
        return "looped path";
    }

    private static String turning(SpinLaw spin) {
        if (spin instanceof Swing) {
            return "the poi swinging";
        }
        if (spin instanceof Stretches) {
            return "the poi turning in stretches";
        }
        int n = spin.turns();
        return n == 0
                ? "the tether pointing one way"
                : "the poi turning " + Names.times(Math.abs(n)) + (n < 0 ? " against it" : "");
    }

    private static boolean sameTurn(double a, double b) {
        return repeats(a, b, 2 * Math.PI);
    }

    private static boolean repeats(double a, double b, double period) {
        return Math.abs(Math.IEEEremainder(a - b, period)) < NEAR;
    }

    private static String degrees(double radians) {
        return Amounts.number(Math.rint(Math.toDegrees(radians) * 10) / 10) + "°";
    }
}
