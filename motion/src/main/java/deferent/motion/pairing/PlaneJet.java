package deferent.motion.pairing;

/** A point of a motion's plane with its first three derivatives in phase. */
public record PlaneJet(Jet u, Jet v) {
    public static final PlaneJet ORIGIN = new PlaneJet(Jet.constant(0), Jet.constant(0));

    /** The point at distance {@code radius} in the direction {@code angle} from the origin. */
    public static PlaneJet polar(double radius, Jet angle) {
        return new PlaneJet(angle.cos().times(radius), angle.sin().times(radius));
    }

    public PlaneJet plus(PlaneJet o) {
        return new PlaneJet(u.plus(o.u), v.plus(o.v));
    }
}
