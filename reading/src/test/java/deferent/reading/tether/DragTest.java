package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DragTest {
    /**
     * Standard drag curve at tabulated Reynolds numbers (Clift, Grace and Weber 1978, after Lapple
     * and Shepherd 1940). Values from memory, to the two or three digits such tables give.
     */
    @ParameterizedTest
    @CsvSource({
        "0.1, 245",
        "1, 27.2",
        "10, 4.26",
        "100, 1.09",
        "1000, 0.47",
        "10000, 0.41",
        "100000, 0.49"
    })
    void aHeadInAirFollowsTheStandardDragCurve(double reynolds, double coefficient) {
        assertThat(Drag.coefficient(reynolds)).isCloseTo(coefficient, within(0.03 * coefficient));
    }

    /**
     * An independent fit to the measurements: Brown and Lawler, J. Environ. Eng. 129 (2003), C =
     * 24/Re·(1 + 0.150·Re^0.681) + 0.407/(1 + 8710/Re), for Re below 2·10⁵ (coefficients from
     * memory).
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.5, 5, 50, 200, 700, 1400, 5000, 11000, 20000, 43000, 1.5e5})
    void anotherFitToTheSameMeasurementsAgrees(double reynolds) {
        double other =
                24 / reynolds * (1 + 0.150 * Math.pow(reynolds, 0.681))
                        + 0.407 / (1 + 8710 / reynolds);
        assertThat(Drag.coefficient(reynolds)).isCloseTo(other, within(0.1 * other));
    }

    /** Stokes: 3π·viscosity·diameter. */
    @Test
    void aVerySlowHeadFeelsStokesDrag() {
        double stokes = 3 * Math.PI * Drag.AIR_DENSITY * Drag.AIR_VISCOSITY * 0.07;
        assertThat(Drag.overSpeed(1e-9, 0.07)).isCloseTo(stokes, within(1e-2 * stokes));
        assertThat(Drag.overSpeed(0, 0.07)).isCloseTo(stokes, within(1e-2 * stokes));
    }

    // At 4·10⁵, amid the drag crisis, the published pieces step from 0.09 to 0.07.
    @ParameterizedTest
    @ValueSource(doubles = {0.01, 20, 260, 1500, 1.2e4, 4.4e4, 3.38e5, 1e6})
    void thePiecesMeet(double joint) {
        double before = Drag.coefficient(joint * (1 - 1e-9));
        double after = Drag.coefficient(joint * (1 + 1e-9));
        assertThat(after).isCloseTo(before, within(0.03 * before));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.005, 3, 100, 900, 6000, 2e4, 1e5, 3.6e5, 6e5, 3e6})
    void theSlopeIsThatOfThePiece(double reynolds) {
        double h = 1e-5 * reynolds;
        double difference =
                (Drag.coefficient(reynolds + h) - Drag.coefficient(reynolds - h)) / (2 * h);
        assertThat(Drag.coefficientSlope(reynolds))
                .isCloseTo(difference, within(1e-6 * Math.abs(difference) + 1e-15));
    }
}
