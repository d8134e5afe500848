package deferent.motion.phrase;

import deferent.motion.pairing.Arc;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Polygon;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Stretches;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Turns;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Says one hand's motion: offers the words it might be, shortest and most usual first, and keeps
 * the first that make the very same motion. The last offers are plain ones that can say any path
 * but a drawn one.
 */
final class MotionWriter {
    private static final double NEAR = 1e-9;

    private final Motion motion;
    private final double tether;
    private final boolean mirrored;
    private final boolean onArc;
    private final Lexicon lexicon;
    private final List<String> offers = new ArrayList<>();

    /**
     * @param tether metres
     * @param mirrored whether the motion is mirrored before it is placed
     * @param onArc whether the other hand's head, which a rider follows, goes to and fro on an arc
     */
    MotionWriter(Motion motion, double tether, boolean mirrored, boolean onArc, Lexicon lexicon) {
        this.motion = motion;
        this.tether = tether;
        this.mirrored = mirrored;
        this.onArc = onArc;
        this.lexicon = lexicon;
    }

    /** The words; of a rider those without "riding". */
    Optional<String> words() {
        offer(motion.path());
        String riding = motion.riding() ? " riding" : "";
        return offers.stream()
                .filter(
                        words ->
                                PhraseWriter.makes(
                                        words + riding, motion, tether, mirrored, lexicon))
                .findFirst();
    }

    private void offer(HandPath path) {
        SpinLaw spin = motion.spin();
        owned();
        if (path instanceof Series series) {
            series(series, spin);
        } else if (path instanceof Arc arc) {
            arc(arc, spin);
        } else if (path instanceof Polygon polygon) {
            offers.add(
                    Names.polygon(polygon.corners())
                            + radius(polygon.radius(), tether)
                            + angle("hand start", polygon.start())
                            + SpinWords.of(spin, 1));
        } else if (path instanceof Riding) {
            riding(spin);
        }
    }

    private void owned() {
        for (Lexicon.Own own : lexicon.byKey().values()) {
            if (own.motion().spin().equals(motion.spin())) {
                offers.add(own.name());
                if (motion.path().radius() > 0) {
                    offers.add(
                            own.name() + " hand radius " + Amounts.length(motion.path().radius()));
                }
            }
        }
    }

    private void series(Series series, SpinLaw spin) {
        int terms = series.terms().size();
        if (terms == 0) {
            still(spin);
            return;
        }
        Series.Term last = series.terms().get(terms - 1);
        if (terms == 1 && last.k() == 1) {
            if (Double.compare(last.angle(), 0) == 0) {
                circle(last.radius(), spin);
            } else {
                from(
                        offers.size(),
                        () -> circle(last.radius(), near(spin.turned(-last.angle()))),
                        angle("hand start", last.angle()));
            }
        }
        if (terms == 2 && last.k() == 1 && series.terms().get(0).k() == -1) {
            double along = (last.angle() + series.terms().get(0).angle()) / 2;
            line(series, along, near(spin.turned(-along)));
            line(series, along, spin.turned(-along));
        }
        StringBuilder loops = new StringBuilder("loops");
        for (Series.Term term : series.terms()) {
            loops.append(loops.length() > 5 ? " plus " : " ")
                    .append(term.k())
                    .append(" of ")
                    .append(Amounts.length(term.radius()))
                    .append(
                            Double.compare(term.angle(), 0) == 0
                                    ? ""
                                    : " " + Amounts.angle(term.angle()));
        }
        offers.add(loops + SpinWords.of(spin, 1));
    }

    // Adds a size's words to every offer made from there on.
    private void from(int mark, Runnable more, String size) {
        more.run();
        for (int i = mark; i < offers.size(); i++) {
            offers.set(i, offers.get(i) + size);
        }
    }

    private void still(SpinLaw spin) {
        if (spin instanceof Swing swing) {
            String pendulum =
                    "pendulum"
                            + (swing.amplitude() == Math.PI / 2
                                    ? ""
                                    : " amplitude " + Amounts.angle(swing.amplitude()));
            if (swing.rest() == Swing.DOWN) {
                offers.add(pendulum);
            }
            tilted(pendulum, swing.rest() - Swing.DOWN);
            offers.add(pendulum + " rest " + Amounts.angle(swing.rest()));
        }
        if (spin instanceof Stretches s && s.stretches().size() == 2) {
            double amplitude = s.stretches().get(0).turns() * Math.PI;
            String stall =
                    amplitude == Math.PI / 2
                            ? "stall"
                            : "stall amplitude " + Amounts.angle(amplitude);
            offers.add(stall);
            offers.add(stall + " start " + Amounts.angle(s.start()));
        }
        offers.add("static spin" + SpinWords.of(spin, 1));
        offers.add("point" + SpinWords.of(spin, 1));
    }

    private void circle(double radius, SpinLaw spin) {
        if (spin instanceof Turns even) {
            flower(radius, even, "");
        }
        if (spin instanceof Stretches s) {
            String start = angle("start", s.start());
            if (s.stretches().size() == 1) {
                flower(radius, new Turns(s.turns(), s.start()), " stalling");
            } else if (s.stretches().size() == 2) {
                int petals = (int) Math.rint(2 * s.stretches().get(0).turns() - 1);
                String name =
                        (petals == 4 ? "" : petals + "-petal ")
                                + "half-and-half flower"
                                + radius(radius, tether)
                                + start;
                offers.add(name);
                offers.add(name + " stalling");
            }
        }
        offers.add("circle" + radius(radius, tether) + SpinWords.of(spin, 1));
    }

    private void flower(double radius, Turns even, String after) {
        int n = even.turns();
        double start = even.start();
        if (n == 1) {
            if (start == Math.PI) {
                offers.add("isolation" + radius(radius, tether / 2));
            }
            if (start == 0) {
                offers.add("extension" + radius(radius, tether));
            }
            return;
        }
        double tilt = start / (1 - n);
        if (n == -1) {
            boolean line = radius == tether;
            String name = line ? "linear extension" : "cat-eye" + radius(radius, tether / 2);
            offers.add(line ? name : "horizontal " + name);
            offers.add("vertical " + name);
            tilted(name, tilt);
            offers.add(name + angle("start", start));
        }
        String name = n == -2 ? "triquetra" : Names.flower(n);
        String size = radius(radius, tether) + after;
        if (start == 0) {
            offers.add(name + size);
        }
        if (start == Math.PI && Math.abs(n - 1) == 4) {
            offers.add("box " + name + size);
        }
        tilted(name + size, tilt);
        offers.add(name + size + angle("start", start));
    }

    private void line(Series series, double along, SpinLaw spin) {
        double out = series.terms().get(1).radius();
        double back = series.terms().get(0).radius();
        String turns = SpinWords.of(spin, 1);
        List<String> names =
                List.of(
                        "linear isolation",
                        "line" + radius(out + back, tether) + turns,
                        "ellipse axes "
                                + Amounts.length(out + back)
                                + " by "
                                + Amounts.length(out - back)
                                + turns);
        for (String name : names) {
            offers.add(name);
            offers.add("vertical " + name);
            tilted(name, along);
        }
    }

    private void arc(Arc arc, SpinLaw spin) {
        String sizes =
                radius(arc.radius(), tether)
                        + (arc.halfSweep() == Math.PI / 2
                                ? ""
                                : " sweep " + Amounts.angle(arc.halfSweep()));
        double tilt = arc.middle() - Swing.DOWN;
        SpinLaw untilted = near(spin.turned(-tilt));
        if (arc.middle() != Swing.DOWN) {
            tilted("CAP" + sizes + SpinWords.of(untilted, 2), tilt);
            tilted("arc" + sizes + SpinWords.of(untilted, 1), tilt);
        }
        String middle = arc.middle() == Swing.DOWN ? "" : " middle " + Amounts.angle(arc.middle());
        if (!(spin instanceof Swing) && spin.turns() != 0) {
            offers.add("CAP" + sizes + middle + SpinWords.of(spin, 2));
        }
        offers.add("arc" + sizes + middle + SpinWords.of(spin, 1));
    }

    private void riding(SpinLaw spin) {
        if (onArc && spin.turns() > 0) {
            offers.add("CAP" + SpinWords.of(spin, 2));
        }
        if (!(spin instanceof Swing)) {
            circle(tether / 2, spin);
            circle(tether, spin);
        }
        still(spin);
    }

    private void tilted(String name, double tilt) {
        double placed = mirrored ? 0.0 - tilt : tilt;
        double degrees = Math.rint(Math.toDegrees(placed) * 1000) / 1000;
        offers.add(name + " tilt " + Amounts.number(degrees) + "°");
    }

    private static String radius(double radius, double unsaid) {
        return radius == unsaid ? "" : " hand radius " + Amounts.length(radius);
    }

    private static String angle(String word, double angle) {
        return Double.compare(angle, 0) == 0 ? "" : " " + word + " " + Amounts.angle(angle);
    }

    // The same law with a start that is all but 0 or a half turn made that.
    private static SpinLaw near(SpinLaw spin) {
        if (spin instanceof Turns even) {
            for (double round : new double[] {0, Math.PI}) {
                if (Math.abs(even.start() - round) < NEAR) {
                    return new Turns(even.turns(), round);
                }
            }
        }
        if (spin instanceof Stretches s && Math.abs(s.start()) < NEAR) {
            return new Stretches(0, s.stretches());
        }
        return spin;
    }
}
