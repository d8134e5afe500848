package deferent.motion.pairing;

import static org.junit.jupiter.api.Assumptions.assumeFalse;

import deferent.motion.shared.Side;
import deferent.motion.trial.Any;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** Pairings of every kind of hand path, spin law, plane, timing and rhythm, for properties. */
public final class AnyPairing {
    private final Any any;

    /**
     * Whether sizes are all that can be written down, or those that a trace is soon worked out of.
     */
    private final boolean wide;

    private AnyPairing(Any any, boolean wide) {
        this.any = any;
        this.wide = wide;
    }

    /**
     * A pairing whose trace is soon worked out: upright planes, few cycles, no tempo of its own.
     */
    public static Pairing of(Any any) {
        return new AnyPairing(any, false).pairing();
    }

    /** A pairing of any sizes that can be written down. */
    public static Pairing wide(Any any) {
        return new AnyPairing(any, true).pairing();
    }

    public static HandPath path(Any any) {
        return new AnyPairing(any, false).path(false, 0.6);
    }

    public static SpinLaw spin(Any any) {
        return new AnyPairing(any, false).spin();
    }

    /** Angles as code makes them: anything, whole degrees, fractions of a turn, nearly nought. */
    public static double angle(Any any) {
        return any.<Double>oneOf(
                () -> any.of(0.0, -0.0, Math.PI / 2, Math.PI, -Math.PI / 2, Math.PI / 7),
                () -> Math.toRadians(any.whole(-720, 720)),
                () -> any.whole(-24, 24) * Math.PI / 12,
                () -> any.number(-10, 10),
                () -> 1e-9 * any.number(-1, 1));
    }

    /** Lengths as code makes them: anything, and whole centimetres. */
    public static double length(Any any) {
        return any.<Double>oneOf(() -> any.whole(5, 200) / 100.0, () -> any.number(0.01, 2.05));
    }

    /** A body that turns and turns back, or on round, at any two moments. */
    public static Facing facing(Any any) {
        double begins = any.number(0, Math.nextDown(1.0));
        double then = (begins + any.number(0.2, 0.8)) % 1;
        int quarters = any.of(-2, -1, 1, 2, 4);
        double takes = any.number(0.01, 0.2);
        int back = any.of(false, true) && quarters == 2 ? 2 : -quarters;
        return new Facing(
                any.of(0, 1, 2, 3),
                List.of(
                        new Facing.Turn(begins, takes, quarters),
                        new Facing.Turn(then, takes, back)));
    }

    private Pairing pairing() {
        Part left = part(Side.LEFT, wide);
        Part right = part(Side.RIGHT, !left.motion().riding());
        // Two pendulums would have to swing at one tempo, and one sets it.
        assumeFalse(left.motion().undriven() && right.motion().undriven());
        boolean driven = !left.motion().undriven() && !right.motion().undriven();
        double ahead =
                any.<Double>oneOf(
                        () -> any.of(0.0, 0.25, 0.5, 1.0 / 3, 5.0 / 7),
                        () -> any.number(0, Math.nextDown(1.0)));
        OptionalDouble tempo =
                wide && driven && any.of(false, true)
                        ? OptionalDouble.of(any.number(1, 600))
                        : OptionalDouble.empty();
        Direction direction = any.of(Direction.class);
        Pairing pairing =
                new Pairing(left, right, Timing.of(ahead), direction, any.of(Sense.class), tempo);
        return wide && any.of(false, true) ? pairing.with(facing(any)) : pairing;
    }

    private Part part(Side side, boolean mayRide) {
        double tether = wide ? any.oneOf(() -> 0.6, () -> length(any)) : any.number(0.2, 1.2);
        Motion motion = new Motion(path(mayRide, tether), spin());
        Place place = place(side);
        if (motion.undriven()) {
            // Gravity swings it about straight down, in an upright plane that keeps still.
            motion = Motion.pendulum(motion.spin().swing().orElseThrow().amplitude());
            Plane plane = place.plane();
            boolean wheel = plane.kind() == Plane.Kind.WHEEL;
            place =
                    new Place(
                            new Plane(
                                    wheel ? Plane.Kind.WHEEL : Plane.Kind.WALL, 0, plane.swivel()),
                            PlaneTurn.NONE,
                            place.centre());
        }
        int cycles = wide ? any.oneOf(() -> 1, () -> any.whole(1, 24)) : any.whole(1, 4);
        return new Part(motion, Tether.of(tether), place, cycles);
    }

    private HandPath path(boolean mayRide, double tether) {
        List<Supplier<HandPath>> kinds =
                new ArrayList<>(
                        List.of(
                                () -> Series.STILL,
                                () -> Series.circle(size(tether)),
                                () -> Series.ellipse(across(tether), any.number(-1, 1), angle()),
                                () -> Series.line(size(tether), angle()),
                                () -> new Arc(size(tether), angle(), sweep()),
                                () ->
                                        new Arc(
                                                size(tether),
                                                angle(),
                                                sweep(),
                                                any.number(0.25, 0.75)),
                                () -> new Polygon(any.whole(3, 24), size(tether), angle()),
                                () -> drawn(any.list(8, 8, () -> any.number(0.3, 1)))));
        if (wide) {
            kinds.add(() -> Series.circle(any.number(0, 1)).turned(angle()));
            kinds.add(() -> new Series(List.of(term(1, tether), term(-1, tether))));
        }
        if (mayRide) {
            kinds.add(Riding::new);
        }
        return any.of(kinds).get();
    }

    private Series.Term term(int way, double tether) {
        return new Series.Term(way * any.whole(1, 24), size(tether), angle());
    }

    // Four bowed pieces round the centre, with corners where they join.
    private static HandPath drawn(List<Double> far) {
        List<Drawn.Cubic> pieces = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            double a = far.get(i);
            double b = far.get((i + 1) % 4);
            double bow = far.get(4 + i);
            double from = i * Math.PI / 2;
            pieces.add(
                    new Drawn.Cubic(
                            a * Math.cos(from),
                            a * Math.sin(from),
                            bow * Math.cos(from + 0.5),
                            bow * Math.sin(from + 0.5),
                            bow * Math.cos(from + 1),
                            bow * Math.sin(from + 1),
                            b * Math.cos(from + Math.PI / 2),
                            b * Math.sin(from + Math.PI / 2)));
        }
        return new Drawn(pieces);
    }

    private SpinLaw spin() {
        List<Supplier<SpinLaw>> kinds =
                new ArrayList<>(
                        List.of(
                                () ->
                                        new Turns(
                                                wide ? any.whole(-24, 24) : any.whole(-6, 6),
                                                angle()),
                                this::twoStretches,
                                () -> new Swing(any.number(0.2, 2.8), Swing.DOWN)));
        if (wide) {
            kinds.add(
                    () ->
                            new Turns(
                                    any.of(1, 0, -1, 2, -2, -3, 5),
                                    any.of(0.0, Math.PI / 2, Math.PI)));
            kinds.add(this::evenStretches);
            kinds.add(
                    () ->
                            new Swing(
                                    any.oneOf(
                                            () -> Math.PI / 2,
                                            () -> Math.toRadians(any.whole(1, 179)),
                                            () -> any.number(0.1, 3)),
                                    angle()));
        }
        return any.of(kinds).get();
    }

    private SpinLaw twoStretches() {
        double share =
                any.oneOf(() -> 0.5, () -> wide ? any.number(0.05, 0.95) : any.number(0.2, 0.8));
        double turns =
                any.oneOf(
                        () -> any.of(0.5, 1.5, -0.5, 1.0),
                        () -> wide ? any.number(-6, 6) : any.number(-3, 3));
        int whole = wide ? any.whole(-6, 6) : any.whole(-4, 4);
        return new Stretches(
                angle(),
                List.of(
                        new Stretches.Stretch(share, turns, any.of(Stretches.Ease.class)),
                        new Stretches.Stretch(
                                1 - share, whole - turns, any.of(Stretches.Ease.class))),
                ease());
    }

    private SpinLaw evenStretches() {
        int count = any.whole(1, 7);
        var one =
                new Stretches.Stretch(1.0 / count, any.whole(-3, 3), any.of(Stretches.Ease.class));
        return new Stretches(angle(), Collections.nCopies(count, one), ease());
    }

    private double ease() {
        return any.oneOf(() -> any.of(Stretches.USUAL_EASE, 0.0), () -> any.number(0.01, 1));
    }

    private Place place(Side side) {
        Plane plane =
                wide
                        ? new Plane(any.of(Plane.Kind.class), lean(), lean())
                        : new Plane(
                                any.of(Plane.Kind.WALL, Plane.Kind.WHEEL),
                                any.number(-1, 1),
                                any.number(-3, 3));
        int turns = wide ? any.whole(-12, 12) : any.whole(-2, 2);
        PlaneTurn turn =
                any.oneOf(
                        () -> PlaneTurn.NONE,
                        () ->
                                new PlaneTurn(
                                        turns,
                                        any.of(PlaneTurn.Axis.class),
                                        any.of(PlaneTurn.Carries.class)));
        double far = wide ? 2 : 1;
        Vector3D centre =
                new Vector3D(any.number(-far, far), any.number(-far, far), any.number(-far, far));
        Place usual = Place.usual(side, plane).withTurn(turn);
        return usual.withCentre(wide ? usual.centre().add(centre) : centre);
    }

    private double lean() {
        return any.<Double>oneOf(
                () -> 0.0, () -> Math.max(-Math.PI, Math.min(Math.PI, angle(any))));
    }

    private double angle() {
        return wide ? angle(any) : any.number(-3.1, 3.1);
    }

    private double sweep() {
        return wide
                ? any.oneOf(
                        () -> any.of(Math.PI / 2, Math.PI, 1e-3), () -> any.number(0.01, Math.PI))
                : any.number(0.2, 3.1);
    }

    private double across(double tether) {
        return wide ? any.oneOf(() -> any.number(-1, 1), () -> size(tether)) : size(tether);
    }

    private double size(double tether) {
        return wide
                ? any.<Double>oneOf(() -> any.of(tether, tether / 2, 0.3), () -> length(any))
                : any.number(0.1, 1);
    }
}
