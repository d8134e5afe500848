package deferent.motion.pairing;

/** Standard gravity, along −y. Source: CGPM 3 (1901), 9.80665 m/s². */
public final class Gravity {
    public static final double STANDARD = 9.80665;

    private Gravity() {}
}
