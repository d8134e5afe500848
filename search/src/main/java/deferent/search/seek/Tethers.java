package deferent.search.seek;

/** Whether the two tethers are one length, or the link may choose their ratio. */
public enum Tethers {
    /** Both hands hold poi of one length: size, shape and timing must agree. */
    EQUAL,
    /** Shape and timing must agree; the rider's tether is then made as long as the link asks. */
    FREE
}
