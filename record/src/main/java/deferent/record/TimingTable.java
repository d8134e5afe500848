package deferent.record;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Rate;
import deferent.motion.trace.TetherAngle;
import deferent.motion.trace.Trace;
import deferent.reading.tether.Cord;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Pull;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A trace as numbers for other programs: where hands and heads are, which way the tethers point and
 * how hard they pull, at evenly spaced times.
 *
 * <p>Each row is worked out when it is written, so a long table takes no more memory than a short
 * one; and each time is worked out from its number, so the last row is as exact as the first. All
 * numbers are the shortest decimals that read back as the same double, with a point.
 *
 * <p>The columns, in this order, first of the left and then of the right hand:
 *
 * <ul>
 *   <li>{@code time_s}: seconds from the start of the trace, i·den/num
 *   <li>{@code left_hand_x_m} to {@code left_head_z_m}: places in the frame: x to the performer's
 *       left, y up, z toward the audience, origin at the breastbone
 *   <li>{@code left_tether_unwrapped_deg}: the way from hand to head in the motion's own plane,
 *       from its u toward its v; it counts on past 360 and below 0 rather than jumping
 *   <li>{@code left_pull_n}, {@code left_pull_weights}: the tether's pull, in newtons and in head
 *       weights; below 0 a cord would have to push, and goes slack
 * </ul>
 */
public final class TimingTable {
    /** No table is longer, rows. */
    public static final long MOST_ROWS = 10_000_000;

    private static final List<String> EACH =
            List.of(
                    "hand_x_m",
                    "hand_y_m",
                    "hand_z_m",
                    "head_x_m",
                    "head_y_m",
                    "head_z_m",
                    "tether_unwrapped_deg",
                    "pull_n",
                    "pull_weights");

    private final Trace trace;
    private final Rate rate;
    private final int cycles;
    private final long rows;
    private final Map<Side, Cord> cords = new EnumMap<>(Side.class);
    private final Map<Side, TetherAngle> angles = new EnumMap<>(Side.class);
    private final double[] row = new double[1 + 2 * EACH.size()];

    /**
     * @param rate rows a second
     * @throws Refusal of too few rows, and of more than {@link #MOST_ROWS}
     */
    public TimingTable(Trace trace, Kit kit, Rate rate, int cycles) {
        this.rows = rows(trace, rate, cycles);
        Refusal.within(cycles, 1, 1_000_000, "cycles of a table", "cycles");
        if (cycles > 1 && !trace.periodic()) {
            throw new Refusal(
                    "are " + cycles + " of a motion that does not come round again",
                    "cycles of a table",
                    "give 1");
        }
        this.trace = trace;
        this.rate = rate;
        this.cycles = cycles;
        for (Side side : Side.values()) {
            cords.put(side, Cord.of(trace, side, kit));
            angles.put(side, TetherAngle.of(trace, side));
        }
    }

    public long rows() {
        return rows;
    }

    /** Of a periodic trace the end is left out, since it is the start again. */
    private static long rows(Trace trace, Rate rate, int cycles) {
        double steps = trace.period() * cycles * rate.perSecond();
        if (steps > MOST_ROWS) {
            throw new Refusal(
                    "makes about " + Math.round(steps) + " rows",
                    "rate of " + rate + " a second over " + cycles + " cycles",
                    "keep to " + MOST_ROWS + " rows: a lower rate or fewer cycles");
        }
        // An end that is met but for rounding is met.
        double whole = Math.rint(steps);
        boolean met = Math.abs(steps - whole) < 1e-9 * Math.max(1, steps);
        long before = met ? (long) whole : (long) Math.floor(steps) + 1;
        long all = trace.periodic() ? before : met ? before + 1 : before;
        if (all < 2) {
            throw new Refusal(
                    "makes " + all + " row" + (all == 1 ? "" : "s"),
                    "rate of " + rate + " a second over " + cycles + " cycles",
                    "give more than one a cycle: a higher rate or more cycles");
        }
        return all;
    }

    /**
     * As lines that end in CR LF, the first of them a header with the units in its names. With
     * commas between, it is CSV (RFC 4180).
     *
     * @param mark between the fields of a line
     * @param progress told the share that is written, 0 to 1
     * @param stop asked before each row
     * @return whether all of it was written
     */
    public boolean lines(String mark, Appendable out, DoubleConsumer progress, BooleanSupplier stop)
            throws IOException {
        out.append(String.join(mark, columns())).append("\r\n");
        return each(
                (i, row) -> {
                    for (int k = 0; k < row.length; k++) {
                        out.append(k == 0 ? "" : mark).append(Numbers.plain(row[k]));
                    }
                    out.append("\r\n");
                },
                progress,
                stop);
    }

    /** As JSON, by {@link #schema()}; stopped in the middle, it is no whole document. */
    public boolean json(Appendable out, DoubleConsumer progress, BooleanSupplier stop)
            throws IOException {
        out.append("{\n  \"format\": 1,\n  \"kind\": \"timing\",\n");
        out.append("  \"rate\": {\"num\": ").append(Long.toString(rate.num()));
        out.append(", \"den\": ").append(Long.toString(rate.den())).append("},\n");
        out.append("  \"period_s\": ").append(Numbers.plain(trace.period())).append(",\n");
        out.append("  \"periodic\": ").append(Boolean.toString(trace.periodic())).append(",\n");
        out.append("  \"cycles\": ").append(Integer.toString(cycles)).append(",\n");
        for (Side side : Side.values()) {
            out.append("  \"").append(side.word()).append("_tether_m\": ");
            out.append(Numbers.plain(trace.pairing().part(side).tether().length())).append(",\n");
        }
        out.append("  \"head_weight_n\": ");
        out.append(Numbers.plain(cord(Side.LEFT).headWeight())).append(",\n");
        out.append("  \"columns\": [\"").append(String.join("\", \"", columns())).append("\"],\n");
        out.append("  \"rows\": [");
        boolean whole =
                each(
                        (i, row) -> {
                            out.append(i == 0 ? "\n    [" : ",\n    [");
                            for (int k = 0; k < row.length; k++) {
                                out.append(k == 0 ? "" : ", ").append(Numbers.plain(row[k]));
                            }
                            out.append("]");
                        },
                        progress,
                        stop);
        out.append("\n  ]\n}\n");
        return whole;
    }

    /** The published JSON Schema (draft 2020-12) of timing. */
    public static String schema() {
        try (InputStream in = TimingTable.class.getResourceAsStream("timing.schema.json")) {
            return new String(
                    Objects.requireNonNull(in, "timing.schema.json is packed with this class")
                            .readAllBytes(),
                    StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** The names of the columns, in order. */
    public static List<String> columns() {
        List<String> names = new ArrayList<>(List.of("time_s"));
        for (Side side : Side.values()) {
            EACH.forEach(name -> names.add(side.word() + "_" + name));
        }
        return List.copyOf(names);
    }

    private interface Row {
        void write(long i, double[] row) throws IOException;
    }

    private boolean each(Row to, DoubleConsumer progress, BooleanSupplier stop) throws IOException {
        long tell = Math.max(1, rows / 200);
        for (long i = 0; i < rows; i++) {
            if (stop.getAsBoolean()) {
                return false;
            }
            fill(i);
            to.write(i, row);
            if (i % tell == 0) {
                progress.accept((double) i / rows);
            }
        }
        progress.accept(1);
        return true;
    }

    private void fill(long i) {
        double elapsed = rate.time(i);
        row[0] = elapsed;
        long cycle = trace.periodic() ? cycle(elapsed) : 0;
        double within = elapsed - cycle * trace.period();
        double time = trace.interval().start() + Math.max(0, Math.min(within, trace.period()));
        int at = 1;
        for (Side side : Side.values()) {
            at = put(at, trace.hand(side).position(time));
            at = put(at, trace.head(side).position(time));
            row[at++] = Math.toDegrees(angle(side).at(time, cycle)) + 0.0;
            double pull = Pull.at(trace, side, cord(side), time);
            row[at++] = pull + 0.0;
            row[at++] = pull / cord(side).headWeight() + 0.0;
        }
    }

    private long cycle(double elapsed) {
        double cyclesSoFar = elapsed / trace.period();
        double whole = Math.rint(cyclesSoFar);
        // The start of a cycle, met but for rounding, belongs to it.
        return (long)
                (Math.abs(cyclesSoFar - whole) < 1e-12 * Math.max(1, whole)
                        ? whole
                        : Math.floor(cyclesSoFar));
    }

    private int put(int at, Vector3D p) {
        row[at] = p.getX() + 0.0;
        row[at + 1] = p.getY() + 0.0;
        row[at + 2] = p.getZ() + 0.0;
        return at + 3;
    }

    private Cord cord(Side side) {
        return Objects.requireNonNull(cords.get(side));
    }

    private TetherAngle angle(Side side) {
        return Objects.requireNonNull(angles.get(side));
    }
}
