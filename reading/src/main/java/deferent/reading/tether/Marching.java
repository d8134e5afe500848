package deferent.reading.tether;

/** Moves a taut cord's state, and slips beside it, along a hand's table. One for one thread. */
final class Marching {
    private static final double PART_TURN = 0.4;
    private static final int MOST_STEPS = 20_000;

    private final Cord cord;
    private final Swinging swinging;
    private final EighthOrder method;
    private final int slips;
    private double[] h = new double[0];
    private int at;
    private final double[] partial = new double[3 * EighthOrder.STAGES];
    private final EighthOrder.Slope slope;

    Marching(Cord cord, int slips) {
        this.cord = cord;
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

    /**
     * A step of the table so closely that slips keep their accuracy: beside a short cord, what they
     * carry of the hand's own speed goes round faster than the cord.
     */
    void closely(HandTable table, int step, double[] y) {
        if (parts(table, table.time(step), table.time(step + 1)) == 1) {
            step(table, step, y);
        } else {
            closely(table, table.time(step), table.time(step + 1), y);
        }
    }

    /** The same of a step of one's own. */
    void closely(HandTable table, double from, double to, double[] y) {
        int parts = parts(table, from, to);
        for (int i = 0; i < parts; i++) {
            step(table, from + (to - from) * i / parts, from + (to - from) * (i + 1) / parts, y);
        }
    }

    private int parts(HandTable table, double from, double to) {
        double turned =
                table.hand().at(from).velocity().getNorm() * (to - from) / cord.swingLength();
        int parts = (int) Math.max(1, Math.ceil(turned / PART_TURN));
        if (parts > 1 && (long) parts * table.steps() > MOST_STEPS) {
            throw Steadiness.swingsTooOften();
        }
        return parts;
    }

    /** The whole table. */
    void cycle(HandTable table, double[] y) {
        for (int i = 0; i < table.steps(); i++) {
            step(table, i, y);
        }
    }
}
