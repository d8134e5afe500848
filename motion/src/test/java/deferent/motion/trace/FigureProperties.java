package deferent.motion.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.AnyPairing;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.shared.Side;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import java.util.Arrays;

class FigureProperties {
    @Property(tries = 50)
    void aFigureAgreesWithItsOwnDensePolygon(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        Trace trace = Trace.of(pairing);
        for (Side side : Side.values()) {
            Figure figure = Figure.of(trace, side);
            HeadPath dense = HeadPath.of(trace, side, 10_000);
            double size = Math.max(figure.outerRadius(), 0.1);
            double length = 0;
            double area = 0;
            double[] u = dense.u();
            double[] v = dense.v();
            for (int i = 0; i < u.length; i++) {
                int j = (i + 1) % u.length;
                length += Math.hypot(u[j] - u[i], v[j] - v[i]);
                area += (u[i] * v[j] - u[j] * v[i]) / 2;
            }
            assertThat(figure.signedArea()).isCloseTo(area, within(1e-4 * size * (size + length)));
            // The polygon cuts a hand path's corners.
            if (flat(pairing, side)) {
                assertThat(figure.length()).isCloseTo(length, within(1e-3 * size));
            }
            assertThat(figure.length()).isGreaterThan(length - 1e-4 * size);
        }
    }

    private static boolean flat(Pairing pairing, Side side) {
        boolean turns = pairing.part(side).place().turn().turns() != 0;
        return !turns && pairing.rider().isEmpty();
    }

    @Property(tries = 50)
    void theUnionIsNoLargerThanWhatTheFigureSpans(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        Trace trace = Trace.of(pairing);
        for (Side side : Side.values()) {
            Figure figure = Figure.of(trace, side);
            assertThat(figure.unionArea())
                    .isLessThanOrEqualTo(figure.width() * figure.height() + 1e-9);
        }
    }

    @Property(tries = 50)
    void theQuickFigureIsTheSettledOneToWhatChordsCutOff(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        Trace trace = Trace.of(pairing);
        for (Side side : Side.values()) {
            Figure quick = Figure.quick(trace, side);
            Figure settled = Figure.of(trace, side);
            double size = settled.outerRadius();
            assertThat(quick.length()).isCloseTo(settled.length(), within(1e-4 * size + 1e-9));
            assertThat(quick.signedArea())
                    .isCloseTo(settled.signedArea(), within(1e-4 * size * size + 1e-9));
            assertThat(quick.selfCrossings()).isEqualTo(settled.selfCrossings());
            if (pairing.part(side).place().turn().equals(PlaneTurn.NONE)) {
                // Chords between 720 samples cut a little off every bend.
                assertThat(quick.unionArea())
                        .isCloseTo(
                                settled.unionArea(), within(2e-3 * size * settled.length() + 1e-9));
            }
        }
    }

    @Property(tries = 30)
    void theUnionHoldsThePointsAboutWhichTheHeadTurnsOnBalance(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        Trace trace = Trace.of(pairing);
        for (Side side : Side.values()) {
            HeadPath path = HeadPath.of(trace, side, 2880);
            double area = WoundArea.of(path.u(), path.v());
            double cell = Math.max(path.width(), path.height()) / GRID;
            if (cell == 0) {
                assertThat(area).isZero();
                continue;
            }
            double left = Arrays.stream(path.u()).min().orElseThrow();
            double low = Arrays.stream(path.v()).min().orElseThrow();
            boolean[][] crossed = crossed(path, left, low, cell);
            long[][] turns = new long[GRID][GRID];
            int held = 0;
            int doubtful = 0;
            for (int i = 0; i < GRID; i++) {
                for (int j = 0; j < GRID; j++) {
                    if (crossed[i][j]) {
                        doubtful++;
                        continue;
                    }
                    // Next to one another, with no path between, cells are gone round alike.
                    if (i > 0 && !crossed[i - 1][j]) {
                        turns[i][j] = turns[i - 1][j];
                    } else if (j > 0 && !crossed[i][j - 1]) {
                        turns[i][j] = turns[i][j - 1];
                    } else {
                        turns[i][j] = turns(path, left + (i + 0.5) * cell, low + (j + 0.5) * cell);
                    }
                    held += turns[i][j] != 0 ? 1 : 0;
                }
            }
            assertThat(area / (cell * cell)).isBetween(held - 4.0, held + doubtful + 4.0);
        }
    }

    private static final int GRID = 70;

    // Cells that the path runs through: column, row.
    private static boolean[][] crossed(HeadPath path, double left, double low, double cell) {
        boolean[][] crossed = new boolean[GRID + 1][GRID + 1];
        for (int i = 0; i < path.count(); i++) {
            int j = (i + 1) % path.count();
            double du = path.u()[j] - path.u()[i];
            double dv = path.v()[j] - path.v()[i];
            int steps = 1 + (int) (4 * Math.hypot(du, dv) / cell);
            for (int step = 0; step < steps; step++) {
                double u = path.u()[i] + du * step / steps;
                double v = path.v()[i] + dv * step / steps;
                crossed[(int) ((u - left) / cell)][(int) ((v - low) / cell)] = true;
            }
        }
        return crossed;
    }

    // By the angle that the way to the path's points sweeps.
    private static long turns(HeadPath path, double u, double v) {
        double swept = 0;
        for (int i = 0; i < path.count(); i++) {
            int j = (i + 1) % path.count();
            double au = path.u()[i] - u;
            double av = path.v()[i] - v;
            double bu = path.u()[j] - u;
            double bv = path.v()[j] - v;
            swept += Math.atan2(au * bv - av * bu, au * bu + av * bv);
        }
        return Math.round(swept / (2 * Math.PI));
    }
}
