package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.reading.tether.Drag;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;

class LetGoCommandTest {
    private static final double G = 9.80665;
    private static final double TETHER = 0.6;

    private static Desk.Answer good(String... args) {
        Desk.Answer answer = Desk.asked(args);
        assertThat(answer.err()).isEmpty();
        assertThat(answer.code()).isZero();
        return answer;
    }

    /** Times and angles of the rows, as the command line gives them. */
    private static List<double[]> swing(String... more) {
        List<String> args = new ArrayList<>(List.of("letgo", "--json"));
        args.addAll(List.of(more));
        List<double[]> rows = new ArrayList<>();
        for (JsonNode row : good(args.toArray(String[]::new)).json().get("rows")) {
            rows.add(
                    new double[] {
                        row.get("time_s").doubleValue(), row.get("angle_deg").doubleValue()
                    });
        }
        return rows;
    }

    /** Seconds a swing out and back, from its first to its last way down through the bottom. */
    private static double period(List<double[]> rows) {
        List<Double> crossings = new ArrayList<>();
        for (int i = 1; i < rows.size(); i++) {
            double before = rows.get(i - 1)[1];
            double after = rows.get(i)[1];
            if (before > 0 && after <= 0) {
                double share = before / (before - after);
                double step = rows.get(i)[0] - rows.get(i - 1)[0];
                crossings.add(rows.get(i - 1)[0] + share * step);
            }
        }
        int swings = crossings.size() - 1;
        return (crossings.get(swings) - crossings.get(0)) / swings;
    }

    /** Greatest angle about the swing's end nearest to a time, by the parabola of three rows. */
    private static double end(List<double[]> rows, double near) {
        int top = -1;
        for (int i = 1; i + 1 < rows.size(); i++) {
            boolean turns =
                    rows.get(i)[1] > 0
                            && rows.get(i)[1] >= rows.get(i - 1)[1]
                            && rows.get(i)[1] > rows.get(i + 1)[1];
            if (turns
                    && (top < 0
                            || Math.abs(rows.get(i)[0] - near)
                                    < Math.abs(rows.get(top)[0] - near))) {
                top = i;
            }
        }
        double a = rows.get(top - 1)[1];
        double b = rows.get(top)[1];
        double c = rows.get(top + 1)[1];
        return b - (a - c) * (a - c) / (8 * (a - 2 * b + c));
    }

    /** DLMF 19.2(ii), 22.19(i): 2K(k)/π, k = sin(amplitude/2), over 2π√(L/g). */
    @ParameterizedTest
    @CsvSource({"0.5, 1.000004760", "30, 1.017408798", "60, 1.073182007", "90, 1.180340599"})
    void withoutAirItSwingsInTheTimeOfAPendulum(double degrees, double ratio) {
        List<double[]> rows =
                swing("--angle", degrees + "deg", "--seconds", "20s", "--step", "10ms");
        assertThat(rows).hasSize(2001);
        double small = 2 * Math.PI * Math.sqrt(TETHER / G);
        assertThat(period(rows) / small).isCloseTo(ratio, within(2e-6));
        assertThat(end(rows, 18)).isCloseTo(degrees, within(1e-3 * degrees));
    }

    /**
     * Stokes's law, drag 3πμdv (Landau and Lifshitz, Fluid Mechanics §20): a slow swing's amplitude
     * falls as e^(−3πμd·t/2m). The curve gives 24/Re·(1 + 0.1315·Re^0.82) here, Re at most 0.02, so
     * within a hundredth.
     */
    @Test
    void aTinySlowHeadLosesItsSwingByStokessLaw() {
        List<double[]> rows =
                swing(
                        "--air",
                        "--angle=0.1deg",
                        "--tether=10cm",
                        "--head-size=0.2mm",
                        "--head-mass=0.0005g",
                        "--seconds=20s",
                        "--step=5ms");
        double viscosity = Drag.AIR_DENSITY * Drag.AIR_VISCOSITY;
        double rate = 3 * Math.PI * viscosity * 2e-4 / (2 * 5e-7);
        assertThat(Math.log(end(rows, 2) / end(rows, 18)) / (peak(rows, 18) - peak(rows, 2)))
                .isCloseTo(rate, within(0.02 * rate));
    }

    /** The time of the swing's end that {@link #end} finds. */
    private static double peak(List<double[]> rows, double near) {
        double period = period(rows);
        return Math.rint(near / period) * period;
    }

    /**
     * Independent calculation: a″ = −(g/L)·sin a − (ρ·C·π·d²·L/8m)·|a′|·a′ by the classical
     * Runge-Kutta rule in steps of a millisecond, the drag coefficient by the standard curve.
     */
    @Test
    void withAirAPoiLosesItsSwingAsAnIndependentCalculationHasIt() {
        List<double[]> rows =
                swing(
                        "--air",
                        "--angle=80deg",
                        "--head-mass=60g",
                        "--head-size=8cm",
                        "--seconds=30s",
                        "--step=10ms");
        double[] y = {Math.toRadians(80), 0};
        for (int i = 0; i <= 30_000; i++) {
            if (i % 1000 == 0) {
                assertThat(rows.get(i / 10)[1]).isCloseTo(Math.toDegrees(y[0]), within(1e-4));
            }
            y = stepped(y, 1e-3);
        }
        // And it does lose: of 80 degrees nearly half in half a minute.
        assertThat(end(rows, 29)).isBetween(40.0, 45.0);
    }

    private static double[] stepped(double[] y, double h) {
        double[] a = rate(y);
        double[] b = rate(new double[] {y[0] + h / 2 * a[0], y[1] + h / 2 * a[1]});
        double[] c = rate(new double[] {y[0] + h / 2 * b[0], y[1] + h / 2 * b[1]});
        double[] d = rate(new double[] {y[0] + h * c[0], y[1] + h * c[1]});
        return new double[] {
            y[0] + h / 6 * (a[0] + 2 * b[0] + 2 * c[0] + d[0]),
            y[1] + h / 6 * (a[1] + 2 * b[1] + 2 * c[1] + d[1])
        };
    }

    private static double[] rate(double[] y) {
        double speed = Math.abs(y[1]) * TETHER;
        double reynolds = Math.max(1e-9, speed * 0.08 / Drag.AIR_VISCOSITY);
        double force =
                0.5
                        * Drag.AIR_DENSITY
                        * Drag.coefficient(reynolds)
                        * Math.PI
                        * 0.04
                        * 0.04
                        * speed
                        * speed;
        return new double[] {
            y[1], -G / TETHER * Math.sin(y[0]) - Math.signum(y[1]) * force / 0.06 / TETHER
        };
    }

    @Test
    void theTableSaysWhatIsWorkedOutAndWhatIsNot() {
        Desk.Answer answer = good("letgo", "--angle", "30deg", "--seconds", "1s");
        assertThat(answer.text())
                .contains("positive to the performer's left")
                .contains("The cord stays taut throughout.")
                .contains("without air, so nothing damps the swing.")
                .contains("Left out: the cord's own mass, stretch and drag");
        List<String> lines = answer.out().lines().toList();
        int head = lines.indexOf("  time, s   angle, °  speed, m/s  pull, N");
        assertThat(lines.subList(head + 1, lines.size())).hasSize(11);
        // cos 30° of the weight of 120 g.
        assertThat(lines.get(head + 1)).isEqualTo("    0.000      30.00       0.000    1.019");
    }

    /**
     * From 120 degrees the head falls freely and is a cord's length from the hand again straight
     * below where it began: 2·L·cos 60° lower, √(2h/g) later; of its speed v the outward part is
     * v·cos 60°. By hand.
     */
    @Test
    void fromAboveTheHandTheCordIsSaidToGoSlackAndSnapTaut() {
        Desk.Answer answer = good("letgo", "--angle=-120deg", "--seconds=1s", "--json");
        JsonNode snap = answer.json().get("events").get(1);
        assertThat(answer.json().get("events").get(0).get("kind").stringValue()).isEqualTo("slack");
        assertThat(snap.get("kind").stringValue()).isEqualTo("snap");
        assertThat(snap.get("time_s").doubleValue()).isCloseTo(Math.sqrt(1.2 / G), within(1e-8));
        assertThat(snap.get("speed_m_per_s").doubleValue())
                .isCloseTo(0.5 * Math.sqrt(1.2 * G), within(1e-8));
        assertThat(answer.json().get("rows").get(0).get("slack").booleanValue()).isTrue();
        assertThat(answer.json().get("rows").get(0).get("pull_n").doubleValue()).isZero();
        assertThat(good("letgo", "--angle=-120deg", "--seconds=0.5s").text())
                .contains("The cord goes slack at 0 s, snaps taut at 0.35 s (and takes 1.72 m/s).")
                .contains(" slack ");
    }

    @Test
    void linesWithCommasHoldTheSameNumbersAsJson() {
        String[] asked = {"letgo", "--angle=40deg", "--speed=-0.5m/s", "--seconds=1s"};
        List<String> args = new ArrayList<>(List.of(asked));
        args.add("--csv");
        List<String> lines = good(args.toArray(String[]::new)).out().lines().toList();
        List<double[]> rows = swing("--angle=40deg", "--speed=-0.5m/s", "--seconds=1s");
        assertThat(lines.get(0)).isEqualTo("time_s,angle_deg,speed_m_per_s,pull_n,slack");
        assertThat(lines).hasSize(rows.size() + 1);
        for (int i = 0; i < rows.size(); i++) {
            String[] fields = lines.get(i + 1).split(",", -1);
            assertThat(Double.parseDouble(fields[0])).isEqualTo(rows.get(i)[0]);
            assertThat(Double.parseDouble(fields[1])).isEqualTo(rows.get(i)[1]);
            assertThat(fields[4]).isEqualTo("0");
        }
        assertThat(rows.get(1)[1]).isLessThan(40);
    }

    @ParameterizedTest
    @CsvSource({
        "--angle=270deg, start angle",
        "--angle=30, unit",
        "--angle=30deg --speed=any, start speed",
        "--angle=30deg --tether=0cm, tether",
        "--angle=30deg --head-mass=0g, head mass",
        "--angle=30deg --seconds=2s --step=3s, step of the table",
        "--angle=30deg --seconds=601s, at most 600 s",
        "--angle=30deg --json --csv, give one of them",
        "--air, --angle"
    })
    void whatCannotBeIsRefused(String options, String told) {
        List<String> args = new ArrayList<>(List.of("letgo"));
        args.addAll(List.of(options.split(" ", -1)));
        Desk.Answer answer = Desk.asked(args.toArray(String[]::new));
        assertThat(answer.code()).isEqualTo(Exit.WRONG_WORDS.code());
        assertThat(answer.err()).contains(told);
        assertThat(answer.out()).isEmpty();
    }
}
