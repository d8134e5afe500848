package deferent.reading.body;

import deferent.motion.shared.Side;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * An arm at one instant, as the turned trunk sees it: where shoulder joint, elbow, wrist and grip
 * are, metres. Where the hand's path is out of reach the arm is stretched toward it and its grip is
 * where it ends; of a hand too near to its shoulder likewise.
 *
 * <p>With shoulder and grip given the elbow is free on a circle about the line between them; the
 * angle on it, the swivel angle, is 0 where the elbow hangs lowest and grows outward and up (Tolani
 * and Badler 1996; Kim, Miller and Rosen, IEEE Transactions on Biomedical Engineering 59 (2012),
 * both from memory). The wrist is straight, and bends only where an elbow that is bent all the way
 * leaves the grip too far from the shoulder.
 */
record ArmLine(Vector3D shoulder, Vector3D elbow, Vector3D wrist, Vector3D grip) {
    /** The half of the upper arm that is free of the body begins here. */
    Vector3D half() {
        return shoulder.add(elbow).scalarMultiply(0.5);
    }

    /**
     * All that arm and grip settle, before the elbow's swivel is chosen.
     *
     * @param along unit vector from the shoulder joint toward the hand's path
     * @param down unit vector across it, to where an elbow hangs lowest
     * @param outward unit vector across both, away from the body's middle
     * @param fold how far along and across the arm's joints are
     * @param missed by how much the grip is off the hand's path, metres
     */
    record Hung(
            Vector3D shoulder,
            Vector3D along,
            Vector3D down,
            Vector3D outward,
            Performer.Fold fold,
            double missed) {
        static Hung of(Performer performer, Side side, Vector3D shoulder, Vector3D hand) {
            Vector3D line = hand.subtract(shoulder);
            double d = line.getNorm();
            Vector3D u = d > 1e-9 ? line.scalarMultiply(1 / d) : Vector3D.PLUS_K;
            Vector3D low = low(u);
            double side1 = side == Side.LEFT ? 1 : -1;
            Performer.Fold fold = performer.fold(d);
            return new Hung(
                    shoulder,
                    u,
                    low,
                    Vector3D.crossProduct(u, low).scalarMultiply(side1),
                    fold,
                    Math.abs(d - fold.grip()));
        }

        /** With the elbow swivelled so far, radians. */
        ArmLine at(double swivel) {
            Vector3D aside = new Vector3D(Math.cos(swivel), down, Math.sin(swivel), outward);
            return new ArmLine(
                    shoulder,
                    shoulder.add(fold.elbow(), along).add(fold.elbowOut(), aside),
                    shoulder.add(fold.wrist(), along).add(fold.wristOut(), aside),
                    shoulder.add(fold.grip(), along));
        }

        // Lowest; of an arm straight up or down, backward.
        private static Vector3D low(Vector3D u) {
            Vector3D low = Vector3D.MINUS_J.subtract(-u.getY(), u);
            return low.getNorm() > 1e-3
                    ? low.normalize()
                    : Vector3D.MINUS_K.subtract(-u.getZ(), u).normalize();
        }
    }
}
