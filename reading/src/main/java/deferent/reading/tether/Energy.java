package deferent.reading.tether;

import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** Adds up a simulation's energy, between its events. */
final class Energy {
    // Four-point Gauss–Legendre nodes and weights; Abramowitz and Stegun table 25.4.
    private static final double[] NODE = {
        -0.861136311594053, -0.339981043584856, 0.339981043584856, 0.861136311594053
    };
    private static final double[] WEIGHT = {
        0.347854845137454, 0.652145154862546, 0.652145154862546, 0.347854845137454
    };

    private Energy() {}

    static LetGo.Audit audit(LetGo run) {
        Trace trace = run.trace();
        Cord cord = run.cord();
        double start = trace.interval().start();
        double end = trace.interval().end();
        double period = run.trace().pairing().period();
        List<Double> cuts = new ArrayList<>(List.of(start));
        double snaps = 0;
        for (LetGo.Event event : run.events()) {
            cuts.add(event.time());
            snaps += event.loss();
        }
        cuts.add(end);
        double hand = 0;
        double air = 0;
        double hair = 1e-10 * period;
        for (int p = 0; p + 1 < cuts.size(); p++) {
            double a = cuts.get(p) + hair;
            double b = cuts.get(p + 1) - hair;
            int parts = (int) Math.ceil((b - a) / period * 96);
            for (int i = 0; i < parts; i++) {
                double half = (b - a) / parts / 2;
                double middle = a + (2 * i + 1) * half;
                for (int k = 0; k < NODE.length; k++) {
                    double t = middle + half * NODE[k];
                    State head = trace.head(run.side()).at(t);
                    Vector3D drag = cord.drag(head.velocity());
                    double power = drag.dotProduct(head.velocity());
                    double all =
                            cord.kit().headMass()
                                    * head.acceleration()
                                            .subtract(cord.fall())
                                            .dotProduct(head.velocity());
                    hand += WEIGHT[k] * half * (all - power);
                    air -= WEIGHT[k] * half * power;
                }
            }
        }
        // What the hand's own motion gives or takes in a snap.
        for (LetGo.Event event : run.events()) {
            if (event.kind() == LetGo.Kind.SNAP) {
                State h = trace.hand(run.side()).at(event.time());
                Vector3D e =
                        trace.head(run.side())
                                .at(event.time())
                                .position()
                                .subtract(h.position())
                                .normalize();
                hand -= cord.kit().headMass() * event.speed() * h.velocity().dotProduct(e);
            }
        }
        double before = energy(cord, trace.head(run.side()).at(start));
        double after = energy(cord, trace.head(run.side()).before(end));
        return new LetGo.Audit(
                before, after, hand, air, snaps, after - before - hand + air + snaps);
    }

    private static double energy(Cord cord, State head) {
        return cord.kit().headMass()
                * (0.5 * head.velocity().getNormSq() + cord.gravity() * head.position().getY());
    }
}
