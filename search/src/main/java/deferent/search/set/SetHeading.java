package deferent.search.set;

import deferent.motion.pairing.Facing;
import deferent.motion.pairing.Jet;
import deferent.motion.trace.Heading;
import java.util.List;

/** How the performer faces over a set: all turns that were made so far. */
record SetHeading(List<TurnMade> turnings) implements Heading {
    SetHeading {
        turnings = List.copyOf(turnings);
    }

    /** Of turns one after the other; {@link Heading#AHEAD} of none. */
    static Heading of(List<TurnMade> turnings) {
        return turnings.isEmpty() ? AHEAD : new SetHeading(turnings);
    }

    @Override
    public Jet at(double time) {
        int done = 0;
        for (TurnMade turning : turnings) {
            if (turning.ends() > time) {
                return turning.starts() < time
                        ? turning.at(time).plus(Facing.QUARTER * done)
                        : Jet.constant(Facing.QUARTER * done);
            }
            done += turning.quarters();
        }
        return Jet.constant(Facing.QUARTER * done);
    }
}
