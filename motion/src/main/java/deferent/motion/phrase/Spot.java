package deferent.motion.phrase;

/** Where in a phrase something stands: from character {@code start} to before {@code end}. */
record Spot(int start, int end) {
    Spot to(Spot later) {
        return new Spot(start, Math.max(end, later.end));
    }

    /** The least that covers both. */
    Spot with(Spot other) {
        return new Spot(Math.min(start, other.start), Math.max(end, other.end));
    }
}
