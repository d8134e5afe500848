package deferent.search.set;

import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.danger.ShoulderForce;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Pull;
import deferent.search.transition.Transition;
import deferent.search.transition.TransitionFinder;
import deferent.search.whole.Readings;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a set asks of grip and shoulder, added up over its time, newton seconds.
 *
 * <p>Of the grip it is the pull of the ideal figure, which the grip holds all the time; of the
 * shoulder the force on it at most, as its dangers are read ({@link ShoulderForce}). Both are taken
 * as a pattern's mean for as long as it is kept; between two patterns they are those of the passage
 * as it is played on cords, from the first hand's leaving to the last one's joining. What a turn of
 * the body adds is left out here and told with the turn ({@link TurnLoad}). A force times how long
 * it is held is the simplest dose of load there is; that it grows without a rest is what it shows,
 * and at how much of it anything is harmed no source is known to us.
 *
 * @param times seconds from the set's start: where each pattern begins and ends
 * @param left of the left arm at those times
 * @param right of the right
 * @param unread how many patterns could not be read, which count for nothing
 */
public record SetWork(List<Double> times, Arm left, Arm right, int unread) {
    /**
     * Of one arm.
     *
     * @param grip what the grip has held by each time, N·s
     * @param shoulder what the shoulder has borne by each time, N·s, at most
     * @param hardest the pattern, by its place in the set, of which the grip holds most a second;
     *     the first of equals
     * @param most how much that is, N
     */
    public record Arm(List<Double> grip, List<Double> shoulder, int hardest, double most) {
        public Arm {
            grip = List.copyOf(grip);
            shoulder = List.copyOf(shoulder);
        }

        /** All that the grip holds, N·s. */
        public double gripped() {
            return grip.get(grip.size() - 1);
        }

        /** All that the shoulder bears at most, N·s. */
        public double borne() {
            return shoulder.get(shoulder.size() - 1);
        }
    }

    public SetWork {
        times = List.copyOf(times);
    }

    public Arm arm(Side side) {
        return side == Side.LEFT ? left : right;
    }

    /**
     * Mean forces of a pattern, newtons.
     *
     * @param grip the pull that the grip holds
     * @param shoulder the force on the shoulder at most
     */
    public record Load(double grip, double shoulder) {
        static final Load NONE = new Load(0, 0);

        static Optional<Load> of(Readings readings, Side side, ShoulderForce shoulder) {
            return readings.cord(side).pull().reading().map(p -> of(readings.trace(), p, shoulder));
        }

        /** Over a trace's cycle. */
        public static Load of(Trace trace, Pull pull, ShoulderForce shoulder) {
            double[] newtons = pull.newtons();
            double sum = 0;
            double start = trace.interval().start();
            for (int i = 0; i < newtons.length; i++) {
                double time = start + trace.period() * i / newtons.length;
                double quickens = trace.hand(pull.side()).at(time).acceleration().getNorm();
                sum += shoulder.at(Math.max(0, newtons[i]), quickens);
            }
            return new Load(Math.max(0, pull.mean()), sum / newtons.length);
        }
    }

    /** Mean forces of a passage, of both arms. */
    record Passing(Load left, Load right) {
        static Passing of(Transition transition, TransitionFinder finder, Kit kit) {
            Trace played = finder.play(List.of(transition), transition.leaves(), 0, 0).trace();
            ShoulderForce shoulder = ShoulderForce.of(finder.request().performer());
            return new Passing(
                    Load.of(played, Pull.of(played, Side.LEFT, kit), shoulder),
                    Load.of(played, Pull.of(played, Side.RIGHT, kit), shoulder));
        }

        Load load(Side side) {
            return side == Side.LEFT ? left : right;
        }
    }

    /**
     * What a set asks of who spins it.
     *
     * @param book with which it was planned
     */
    public static SetWork of(SetPlan plan, PairBook book) {
        ShoulderForce shoulder = ShoulderForce.of(book.performer());
        List<Optional<Passing>> before = before(plan, book);
        List<Stay> stays = plan.stays().stream().flatMap(Optional::stream).toList();
        List<Double> times = new ArrayList<>();
        stays.forEach(stay -> times.addAll(List.of(stay.starts(), stay.ends())));
        return new SetWork(
                times.isEmpty() ? List.of(0.0) : times,
                arm(plan, stays, before, Side.LEFT, shoulder),
                arm(plan, stays, before, Side.RIGHT, shoulder),
                (int) stays.stream().filter(stay -> !read(stay)).count());
    }

    private static boolean read(Stay stay) {
        return stay.readings().leftCord().pull().reading().isPresent()
                && stay.readings().rightCord().pull().reading().isPresent();
    }

    /** The passage that leads into each of the patterns that are there, where one does. */
    private static List<Optional<Passing>> before(SetPlan plan, PairBook book) {
        List<Optional<Passing>> before = new ArrayList<>();
        for (int step = 0; step < plan.stays().size(); step++) {
            if (plan.stays().get(step).isPresent()) {
                before.add(
                        step == 0
                                ? Optional.empty()
                                : plan.joints().get(step - 1).transition().map(book::passing));
            }
        }
        return before;
    }

    private static Arm arm(
            SetPlan plan,
            List<Stay> stays,
            List<Optional<Passing>> before,
            Side side,
            ShoulderForce shoulder) {
        List<Load> loads =
                stays.stream()
                        .map(s -> Load.of(s.readings(), side, shoulder).orElse(Load.NONE))
                        .toList();
        List<Double> grip = new ArrayList<>();
        List<Double> borne = new ArrayList<>();
        double held = 0;
        double carried = 0;
        int hardest = 0;
        for (int i = 0; i < stays.size(); i++) {
            Load load = loads.get(i);
            if (before.get(i).isPresent()) {
                Load between = before.get(i).get().load(side);
                double gap = stays.get(i).starts() - stays.get(i - 1).ends();
                held += gap * between.grip();
                carried += gap * between.shoulder();
            }
            grip.add(held);
            borne.add(carried);
            held += stays.get(i).seconds() * load.grip();
            carried += stays.get(i).seconds() * load.shoulder();
            grip.add(held);
            borne.add(carried);
            hardest = load.grip() > loads.get(hardest).grip() ? i : hardest;
        }
        if (stays.isEmpty()) {
            return new Arm(List.of(0.0), List.of(0.0), 0, 0);
        }
        return new Arm(grip, borne, place(plan, hardest), loads.get(hardest).grip());
    }

    /** Where the {@code nth} of the patterns that are there stands among all. */
    private static int place(SetPlan plan, int nth) {
        int there = -1;
        int at = -1;
        while (there < nth) {
            at++;
            there += plan.stays().get(at).isPresent() ? 1 : 0;
        }
        return at;
    }
}
