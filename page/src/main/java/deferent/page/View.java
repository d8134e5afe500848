package deferent.page;

import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Where the scene is looked at from, far away (parallel projection, so that lengths in a plane
 * facing the viewer stay true). Views belong to drawing alone; readings know nothing of them.
 *
 * @param stand who looks
 * @param turn how far the viewer has walked round, radians, toward their own right
 * @param lift how far the viewer has climbed, radians; a quarter turn looks straight down
 */
public record View(Stand stand, double turn, double lift) {
    public static final View AUDIENCE = new View(Stand.AUDIENCE, 0, 0);
    public static final View PERFORMER = new View(Stand.PERFORMER, 0, 0);
    public static final View MIRROR = new View(Stand.MIRROR, 0, 0);

    /** Who looks. */
    public enum Stand {
        /** From the front: the performer's left is on the right. */
        AUDIENCE,
        /** With the performer's own eyes: left is left, what is far out in front is far away. */
        PERFORMER,
        /** The performer before a mirror: left is left, what is far out in front is near. */
        MIRROR;

        /** Who looks: "seen by the audience". */
        public String seenBy() {
            return switch (this) {
                case AUDIENCE -> "seen by the audience";
                case PERFORMER -> "seen by the performer";
                case MIRROR -> "seen by the performer in a mirror";
            };
        }
    }

    /**
     * A point as seen.
     *
     * @param right toward the viewer's right, metres
     * @param up toward the viewer's up, metres
     * @param near toward the viewer, metres
     */
    public record Seen(double right, double up, double near) {}

    public Seen see(Vector3D p) {
        return see(p.getX(), p.getY(), p.getZ());
    }

    public Seen see(double x, double y, double z) {
        double round =
                switch (stand) {
                    case AUDIENCE -> turn;
                    case PERFORMER -> Math.PI + turn;
                    case MIRROR -> -turn;
                };
        double c = Math.cos(round);
        double s = Math.sin(round);
        double right = c * x - s * z;
        double out = s * x + c * z;
        double near = Math.cos(lift) * out + Math.sin(lift) * y;
        double up = Math.cos(lift) * y - Math.sin(lift) * out;
        return new Seen(stand == Stand.MIRROR ? -right : right, up, near);
    }
}
