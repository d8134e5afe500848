package deferent.reading.tether;

/** Moves a taut cord's state, and slips beside it, along a hand's table. One for one thread. */
final class Marching {
    private final Swinging swinging;
    private final EighthOrder method;
    private final int slips;
    private double[] h = new double[0];
    private int at;
    private final double[] partial = new double[3 * EighthOrder.STAGES];
    private final EighthOrder.Slope slope;

    Marching(Cord cord, int slips) {
        this.swinging = new Swinging(cord);
        this.slips = slips;
        this.method = new EighthOrder(6 + 6 * slips);
        this.slope = (stage, y, rate) -> this.swinging.rate(h, at + 3 * stage, y, this.slips, rate);
    }

    /** One whole step of the table. */
    void step(HandTable table, int step, double[] y) {
        h = table.velocity();
        at = table.offset(step);
        method.step(slope, table.length(step), y);
        Swinging.tidy(y);
    }

    /** A step of one's own within a piece of the hand's path. */
    void step(HandTable table, double from, double to, double[] y) {
        HandTable.fill(table.hand(), from, to, partial, 0);
        h = partial;
        at = 0;
        method.step(slope, to - from, y);
        Swinging.tidy(y);
    }

    /** The whole table. */
    void cycle(HandTable table, double[] y) {
        for (int i = 0; i < table.steps(); i++) {
            step(table, i, y);
        }
    }
}
