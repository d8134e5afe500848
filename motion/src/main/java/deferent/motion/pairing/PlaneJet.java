package deferent.motion.pairing;

/** A point of a motion's plane with its first three derivatives in phase. */
public record PlaneJet(Jet u, Jet v) {
    public static final PlaneJet ORIGIN = new PlaneJet(Jet.constant(0), Jet.constant(0));

    /** The point at distance {@code radius} in the direction {@code angle} from the origin. */
    public static PlaneJet polar(double radius, Jet angle) {
        double c = radius * Math.cos(angle.value());
        double s = radius * Math.sin(angle.value());
        return new PlaneJet(angle.into(c, -s, -c, s), angle.into(s, c, -s, -c));
    }

    public PlaneJet plus(PlaneJet o) {
        return new PlaneJet(u.plus(o.u), v.plus(o.v));
    }
}
