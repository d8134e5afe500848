package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.reading.body.InTheWay;
import deferent.search.clear.Clearing;
import deferent.search.clear.PlaneChange;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class TellClearTest {
    private static final Pairing TWO =
            Phrase.parse("triquetra vs static spin, tether 40 cm").pairing();
    private static final InTheWay ARM =
            new InTheWay(InTheWay.What.ARM_OF_POI, Optional.of(Side.RIGHT), true, 0.63);

    private static PlaneChange change(Side side, Vector3D shift, double degrees) {
        double lean = Math.toRadians(degrees);
        return new PlaneChange(side, shift, lean, 0, lean, 0.4);
    }

    private static String told(Clearing clearing) {
        return TellClear.of(clearing).text();
    }

    @Test
    void nothingInTheWayIsToldSo() {
        assertThat(told(new Clearing(TWO, List.of(), true, Optional.empty(), List.of(), true)))
                .isEqualTo("Nothing is in the way.");
    }

    @Test
    void nothingInTheWayIsNotToldOfArmsThatWereLeftOut() {
        assertThat(told(new Clearing(TWO, List.of(), false, Optional.empty(), List.of(), true)))
                .isEqualTo(
                        "Nothing is in the way as far as was looked: a hand does not get there, so"
                                + " arms were left out.");
    }

    @Test
    void whatClearsItIsToldWithWhatIsInTheWay() {
        Clearing.Cleared cleared =
                new Clearing.Cleared(
                        TWO,
                        change(Side.LEFT, Vector3D.ZERO, 0),
                        change(Side.RIGHT, new Vector3D(0.06, 0, 0), 10));
        assertThat(
                        told(
                                new Clearing(
                                        TWO,
                                        List.of(ARM),
                                        true,
                                        Optional.of(cleared),
                                        List.of(),
                                        true)))
                .isEqualTo(
                        "The left poi goes through the right forearm just after 2; with the right hand's"
                                + " plane 6 cm further left and leaned by 10°, it is clear.");
        Clearing.Cleared one =
                new Clearing.Cleared(
                        TWO,
                        change(Side.LEFT, Vector3D.ZERO, 0),
                        change(Side.RIGHT, new Vector3D(0, -0.02, 0), 0));
        assertThat(told(new Clearing(TWO, List.of(ARM), true, Optional.of(one), List.of(), true)))
                .endsWith("; with the right hand's plane 2 cm lower, it is clear.");
        Clearing.Cleared little =
                new Clearing.Cleared(
                        TWO,
                        change(Side.LEFT, Vector3D.ZERO, 0),
                        change(Side.RIGHT, new Vector3D(0, -0.019, 0), 0));
        assertThat(
                        told(
                                new Clearing(
                                        TWO,
                                        List.of(ARM),
                                        true,
                                        Optional.of(little),
                                        List.of(),
                                        true)))
                .endsWith("it is a close pass either way, so leave more room.");
    }

    @Test
    void whatNothingClearsIsToldWithItsMoment() {
        Clearing none = new Clearing(TWO, List.of(ARM), true, Optional.empty(), List.of(ARM), true);
        assertThat(told(none))
                .isEqualTo(
                        "No planes were found that clear it: the left poi goes through the right forearm just after"
                                + " 2.");
        Clearing stopped =
                new Clearing(TWO, List.of(ARM), true, Optional.empty(), List.of(ARM), false);
        assertThat(told(stopped)).startsWith("Nothing was found yet that clears it: ");
    }
}
