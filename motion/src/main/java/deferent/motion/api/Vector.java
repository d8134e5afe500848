package deferent.motion.api;

/**
 * A place in the room, or how something moves through it.
 *
 * @param x to the performer's left; metres, or metres a second
 * @param y up
 * @param z toward the audience
 */
public record Vector(double x, double y, double z) {
    /**
     * How long it is.
     *
     * @return metres from the performer's breastbone for a place, metres a second for a velocity
     */
    public double length() {
        return Math.sqrt(x * x + y * y + z * z);
    }

    /**
     * The way from another to this one.
     *
     * @param other where the way begins
     * @return this one less the other
     */
    public Vector minus(Vector other) {
        return new Vector(x - other.x, y - other.y, z - other.z);
    }
}
