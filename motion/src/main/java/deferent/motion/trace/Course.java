package deferent.motion.trace;

/** One point of a trace, a hand or a head, as a function of time in seconds. */
public interface Course {
    /** State at a time; at a break, the one just after it. */
    State at(double time);

    /** As {@link #at}, but at a break the one just before it. */
    default State before(double time) {
        return at(time);
    }
}
