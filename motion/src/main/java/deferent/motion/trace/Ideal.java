package deferent.motion.trace;

import deferent.motion.pairing.Break;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Jet;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.PlaneJet;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Weave;
import deferent.motion.shared.Side;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;

/**
 * Works out the ideal trace: phase from time, the motion in its own plane, the plane's own turn,
 * the mirror, and last the placement in the frame. A rider's hand is its carrier's head at the same
 * phase, carried by the vector between the two centres.
 */
final class Ideal {
    private static final double BESIDE = 1e-11;

    private final Pairing pairing;
    private final double period;
    private final Map<Side, Course> hands = new EnumMap<>(Side.class);
    private final Map<Side, Course> heads = new EnumMap<>(Side.class);
    private final List<TimedBreak> breaks = new ArrayList<>();

    private Ideal(Pairing pairing) {
        this.pairing = pairing;
        this.period = pairing.period();
    }

    static Trace trace(Pairing pairing) {
        Ideal ideal = new Ideal(pairing);
        Side first = pairing.rider().map(Side::other).orElse(Side.LEFT);
        ideal.add(first);
        ideal.add(first.other());
        ideal.breaks.sort(
                Comparator.comparingDouble(TimedBreak::time).thenComparing(TimedBreak::side));
        return new Trace(
                pairing,
                Origin.IDEAL,
                new Interval(0, ideal.period),
                true,
                ideal.hands,
                ideal.heads,
                ideal.breaks,
                Map.of(),
                List.of(),
                0);
    }

    private void add(Side side) {
        Part part = pairing.part(side);
        Local local =
                new Local(side, part, pairing.mirrored(side), pairing.startPhase(side), period);
        breaks.addAll(local.breaks(side));
        if (!part.motion().riding()) {
            HandPath.Course path = part.motion().path().course();
            hands.put(side, local.course(path, local.poi, Local.Want.HAND));
            heads.put(side, local.course(path, local.poi, Local.Want.HEAD));
            return;
        }
        Side carrier = side.other();
        Course lead = require(heads, carrier);
        Part carrierPart = pairing.part(carrier);
        Vector3D carried = part.place().centre().subtract(carrierPart.place().centre());
        double later =
                period
                        * (pairing.startPhase(side) / part.cycles()
                                - pairing.startPhase(carrier) / carrierPart.cycles());
        Course hand =
                new Course() {
                    @Override
                    public State at(double time) {
                        return lead.at(time + later).shifted(carried);
                    }

                    @Override
                    public Vector3D position(double time) {
                        return lead.position(time + later).add(carried);
                    }

                    @Override
                    public State before(double time) {
                        return lead.before(time + later).shifted(carried);
                    }
                };
        Course poi = local.course(Local.STILL, local.poi, Local.Want.TETHER);
        hands.put(side, hand);
        heads.put(
                side,
                new Course() {
                    @Override
                    public State at(double time) {
                        return sum(hand.at(time), poi.at(time));
                    }

                    @Override
                    public Vector3D position(double time) {
                        return hand.position(time).add(poi.position(time));
                    }

                    @Override
                    public State before(double time) {
                        return sum(hand.before(time), poi.before(time));
                    }
                });
        for (TimedBreak b : List.copyOf(breaks)) {
            if (b.side() == carrier) {
                double time = b.time() - later;
                time -= period * Math.floor(time / period);
                breaks.add(new TimedBreak(time, b.order(), side, "its carrier: " + b.why()));
            }
        }
    }

    private static Course require(Map<Side, Course> courses, Side side) {
        Course course = courses.get(side);
        if (course == null) {
            throw new IllegalStateException("the carrier is traced before its rider");
        }
        return course;
    }

    private static State sum(State a, State b) {
        return new State(
                a.position().add(b.position()),
                a.velocity().add(b.velocity()),
                a.acceleration().add(b.acceleration()),
                a.jerk().add(b.jerk()));
    }

    /** One side's own plane. */
    private static final class Local {
        enum Want {
            HAND,
            HEAD,
            /** From hand to head alone, not placed. */
            TETHER
        }

        static final HandPath.Course STILL = phase -> PlaneJet.ORIGIN;

        final Part part;
        final Optional<Weave> weave;
        final Vector3D toOwn;
        final boolean mirrored;
        final double start;
        final double rate;
        final double period;
        final SpinLaw.Course poi;
        final Vector3D u;
        final Vector3D v;
        final Vector3D normal;
        final double[] breakPhases;

        Local(Side side, Part part, boolean mirrored, double start, double period) {
            this.part = part;
            this.weave = part.motion().weave();
            this.toOwn = weave.map(w -> w.between().own(side)).orElse(Vector3D.ZERO);
            this.mirrored = mirrored;
            this.start = start;
            this.period = period;
            this.rate = part.cycles() / period;
            this.poi = part.motion().spin().course();
            this.u = part.place().plane().u();
            this.v = part.place().plane().v();
            this.normal = part.place().plane().normal();
            this.breakPhases =
                    part.motion().breaks().stream().mapToDouble(Break::phase).distinct().toArray();
        }

        Course course(HandPath.Course path, SpinLaw.Course spin, Want want) {
            Vector3D centre = want == Want.TETHER ? Vector3D.ZERO : part.place().centre();
            return new Course() {
                @Override
                public State at(double time) {
                    double phase = phase(time);
                    return place(
                            phase,
                            path.at(phase),
                            want == Want.HAND ? Jet.constant(0) : spin.at(phase),
                            want,
                            centre);
                }

                @Override
                public Vector3D position(double time) {
                    double phase = phase(time);
                    if (part.place().turn().turns() != 0 || weave.isPresent()) {
                        return at(time).position();
                    }
                    Vector2D hand = path.place(phase);
                    double a = hand.getX();
                    double b = hand.getY();
                    if (want != Want.HAND) {
                        double angle = spin.angle(phase);
                        a += part.tether().length() * Math.cos(angle);
                        b += part.tether().length() * Math.sin(angle);
                    }
                    return along(mirrored ? -a : a, b, 0, 1).add(centre);
                }

                @Override
                public State before(double time) {
                    double phase = phase(time);
                    return place(
                            phase,
                            path.before(phase),
                            want == Want.HAND ? Jet.constant(0) : spin.before(phase),
                            want,
                            centre);
                }
            };
        }

        private State place(double phase, PlaneJet hand, Jet angle, Want want, Vector3D centre) {
            double length = want == Want.HAND ? 0 : part.tether().length();
            PlaneJet tether = length == 0 ? PlaneJet.ORIGIN : PlaneJet.polar(length, angle);
            PlaneTurn turn = part.place().turn();
            Jet a;
            Jet b;
            Jet c;
            if (turn.turns() == 0) {
                PlaneJet sum = hand.plus(tether);
                a = sum.u();
                b = sum.v();
                c = Jet.constant(0);
            } else {
                boolean figure = turn.carries() == PlaneTurn.Carries.FIGURE;
                PlaneJet turning = figure ? hand.plus(tether) : tether;
                PlaneJet resting = figure ? PlaneJet.ORIGIN : hand;
                double whole = 2 * Math.PI * turn.turns();
                Jet t = Jet.line(whole * phase, whole);
                boolean upright = turn.axis() == PlaneTurn.Axis.UPRIGHT;
                Jet swung = upright ? turning.u() : turning.v();
                Jet kept = swung.times(t.cos());
                a = upright ? kept.plus(resting.u()) : turning.u().plus(resting.u());
                b = upright ? turning.v().plus(resting.v()) : kept.plus(resting.v());
                c = swung.times(t.sin()).times(upright ? -1 : 1);
            }
            if (mirrored && weave.filter(Weave::mirrorsUp).isPresent()) {
                b = b.times(-1);
            } else if (mirrored) {
                a = a.times(-1);
            }
            State inPlace =
                    new State(
                            along(a.value(), b.value(), c.value(), 1).add(centre),
                            along(a.d1(), b.d1(), c.d1(), rate),
                            along(a.d2(), b.d2(), c.d2(), rate * rate),
                            along(a.d3(), b.d3(), c.d3(), rate * rate * rate));
            return want == Want.TETHER ? inPlace : carried(inPlace, phase);
        }

        private State carried(State still, double phase) {
            if (weave.isEmpty()) {
                return still;
            }
            Jet out = weave.get().toOwn(phase).atRate(rate);
            return new State(
                    still.position().add(out.value(), toOwn),
                    still.velocity().add(out.d1(), toOwn),
                    still.acceleration().add(out.d2(), toOwn),
                    still.jerk().add(out.d3(), toOwn));
        }

        // Plain sums: the library's are compensated, which these unit axes do not need and every
        // drag would pay for.
        private Vector3D along(double a, double b, double c, double k) {
            double x = k * a;
            double y = k * b;
            double z = k * c;
            return new Vector3D(
                    x * u.getX() + y * v.getX() + z * normal.getX(),
                    x * u.getY() + y * v.getY() + z * normal.getY(),
                    x * u.getZ() + y * v.getZ() + z * normal.getZ());
        }

        /**
         * Phase in [0, 1). Rounding must not carry a break's own time to its wrong side, so a phase
         * next to a break is the break's.
         */
        private double phase(double time) {
            double turns = start + rate * time;
            double phase = turns - Math.floor(turns);
            for (double b : breakPhases) {
                double off = Math.abs(phase - b);
                if (off < BESIDE || off > 1 - BESIDE) {
                    return b;
                }
            }
            return phase < 1 ? phase : 0;
        }

        List<TimedBreak> breaks(Side side) {
            List<TimedBreak> found = new ArrayList<>();
            for (Break b : part.motion().breaks()) {
                for (int cycle = 0; cycle < part.cycles(); cycle++) {
                    double time = (b.phase() + cycle - start) / rate;
                    time -= period * Math.floor(time / period);
                    found.add(new TimedBreak(time, b.order(), side, b.why()));
                }
            }
            return found;
        }
    }
}
