package deferent.reading.tether;

/**
 * Air drag on a smooth sphere: the standard drag curve in the ten pieces recommended by Clift,
 * Grace and Weber, Bubbles, Drops and Particles (1978), table 5.2, with w = log10(Re).
 *
 * <p>Air at 20 °C and one atmosphere: density 1.204 kg/m³, kinematic viscosity 1.516·10⁻⁵ m²/s
 * (from memory). A poi head of 7 cm at 4 m/s has Re about 18 000, well before the drag crisis.
 */
public final class Drag {
    /** kg/m³ */
    public static final double AIR_DENSITY = 1.204;

    /** m²/s */
    public static final double AIR_VISCOSITY = 1.516e-5;

    private Drag() {}

    /** Drag coefficient of a smooth sphere at a Reynolds number above 0, on its frontal area. */
    public static double coefficient(double reynolds) {
        return coefficient(reynolds, Math.log10(reynolds));
    }

    private static double coefficient(double reynolds, double w) {
        if (reynolds < 0.01) {
            return 3.0 / 16 + 24 / reynolds;
        }
        if (reynolds <= 20) {
            return 24 / reynolds * (1 + 0.1315 * Math.pow(reynolds, 0.82 - 0.05 * w));
        }
        if (reynolds <= 260) {
            return 24 / reynolds * (1 + 0.1935 * Math.pow(reynolds, 0.6305));
        }
        if (reynolds <= 1500) {
            return Math.pow(10, 1.6435 + w * (-1.1242 + w * 0.1558));
        }
        if (reynolds <= 1.2e4) {
            return Math.pow(10, -2.4571 + w * (2.5558 + w * (-0.9295 + w * 0.1049)));
        }
        if (reynolds <= 4.4e4) {
            return Math.pow(10, -1.9181 + w * (0.6370 - w * 0.0636));
        }
        if (reynolds <= 3.38e5) {
            return Math.pow(10, -4.3390 + w * (1.5809 - w * 0.1546));
        }
        if (reynolds <= 4e5) {
            return 29.78 - 5.3 * w;
        }
        if (reynolds <= 1e6) {
            return 0.1 * w - 0.49;
        }
        return 0.19 - 8e4 / reynolds;
    }

    /** d(coefficient)/d(reynolds), of the same pieces. */
    static double coefficientSlope(double reynolds) {
        double w = Math.log10(reynolds);
        return coefficientSlope(reynolds, w, coefficient(reynolds, w));
    }

    private static double coefficientSlope(double reynolds, double w, double c) {
        double ln10 = Math.log(10);
        if (reynolds < 0.01) {
            return -24 / (reynolds * reynolds);
        }
        if (reynolds <= 20) {
            // d/dRe of Re^(0.82 − 0.05w) is that power times (0.82 − 0.1w)/Re.
            double power = c * reynolds / 24 - 1;
            return (-c + 24 / reynolds * power * (0.82 - 0.1 * w)) / reynolds;
        }
        if (reynolds <= 260) {
            double power = c * reynolds / 24 - 1;
            return (-c + 24 / reynolds * power * 0.6305) / reynolds;
        }
        if (reynolds <= 1500) {
            return c * (-1.1242 + 2 * 0.1558 * w) / reynolds;
        }
        if (reynolds <= 1.2e4) {
            return c * (2.5558 + w * (-2 * 0.9295 + w * 3 * 0.1049)) / reynolds;
        }
        if (reynolds <= 4.4e4) {
            return c * (0.6370 - 2 * 0.0636 * w) / reynolds;
        }
        if (reynolds <= 3.38e5) {
            return c * (1.5809 - 2 * 0.1546 * w) / reynolds;
        }
        if (reynolds <= 4e5) {
            return -5.3 / (ln10 * reynolds);
        }
        if (reynolds <= 1e6) {
            return 0.1 / (ln10 * reynolds);
        }
        return 8e4 / (reynolds * reynolds);
    }

    /**
     * Drag force over speed, in N·s/m, so that the force is minus this times the velocity; tends to
     * Stokes's 3π·viscosity·diameter at rest.
     */
    public static double overSpeed(double speed, double diameter) {
        double reynolds = Math.max(speed * diameter / AIR_VISCOSITY, 1e-6);
        // ½·ρ·C·(π/4)d²·v with v = Re·ν/d
        return Math.PI
                / 8
                * AIR_DENSITY
                * AIR_VISCOSITY
                * diameter
                * coefficient(reynolds)
                * reynolds;
    }

    /** d(overSpeed)/d(speed), in N·s²/m². */
    static double overSpeedSlope(double speed, double diameter) {
        return both(speed, diameter).slope();
    }

    /** {@link #overSpeed} and its slope, for one asking's price. */
    static Both both(double speed, double diameter) {
        double reynolds = Math.max(speed * diameter / AIR_VISCOSITY, 1e-6);
        double w = Math.log10(reynolds);
        double c = coefficient(reynolds, w);
        double size = Math.PI / 8 * AIR_DENSITY * diameter;
        return new Both(
                size * AIR_VISCOSITY * c * reynolds,
                size * diameter * (c + reynolds * coefficientSlope(reynolds, w, c)));
    }

    /** N·s/m and N·s²/m². */
    record Both(double overSpeed, double slope) {}
}
