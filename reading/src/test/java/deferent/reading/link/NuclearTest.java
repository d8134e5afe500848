package deferent.reading.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;
import org.junit.jupiter.api.Test;

/** Held to Hipparchus's decompositions, which go another way. */
class NuclearTest {
    @Property(tries = 60)
    void singularValuesAndDeterminantAreHipparchuss(Any any) {
        double[] a = any.list(9, 9, () -> any.number(-2, 2)).stream().mapToDouble(x -> x).toArray();
        RealMatrix matrix =
                MatrixUtils.createRealMatrix(
                        new double[][] {
                            {a[0], a[1], a[2]}, {a[3], a[4], a[5]}, {a[6], a[7], a[8]}
                        });
        double[] known = new SingularValueDecomposition(matrix).getSingularValues();
        assertThat(Nuclear.singular(a)).containsExactly(known, within(1e-6));
        assertThat(Nuclear.norm(a)).isCloseTo(known[0] + known[1] + known[2], within(1e-6));
        assertThat(Nuclear.determinant(a))
                .isCloseTo(new LUDecomposition(matrix, 0).getDeterminant(), within(1e-9));
    }

    @Test
    void aTurnThatLengthensEverythingThreefoldHasThreeOnceInEachDirection() {
        double[] turned = {0, -3, 0, 3, 0, 0, 0, 0, 3};
        assertThat(Nuclear.singular(turned)).containsExactly(3, 3, 3);
        assertThat(Nuclear.determinant(turned)).isEqualTo(27);
    }
}
