package deferent.motion.phrase;

/** Where in a phrase something stands: from character {@code start} to before {@code end}. */
record Spot(int start, int end) {
    Spot to(Spot later) {
        return new Spot(start, Math.max(end, later.end));
    }
}
