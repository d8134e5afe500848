package deferent.search.whole;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class ReachHelpsTest {
    private static ReachHelps helps(Pairing pairing) {
        return ReachHelps.of(
                pairing, Performer.USUAL, Reach.of(Trace.of(pairing), Performer.USUAL));
    }

    private static Pairing stillHandAt(double x) {
        Pairing pairing = Phrase.parse("static spin vs isolation").pairing();
        Part part = pairing.part(Side.LEFT);
        Vector3D centre = part.place().centre().add(new Vector3D(x, 0, 0));
        return pairing.with(
                Side.LEFT,
                new Part(
                        part.motion(),
                        part.tether(),
                        part.place().withCentre(centre),
                        part.cycles()));
    }

    @Test
    void aStillHandFarAcrossTheBodyIsWithinReachBeforeItsOwnShoulder() {
        ReachHelps.StillHand still = helps(stillHandAt(-0.9)).still().orElseThrow();
        assertThat(still.side()).isEqualTo(Side.LEFT);
        assertThat(still.left()).isZero();
    }

    @Test
    void aStillHandIsNotMovedWhereTheOtherHandAloneIsOutOfReach() {
        Pairing pairing = Phrase.parse("static spin vs triquetra hand radius 80 cm").pairing();
        assertThat(helps(pairing).still()).isEmpty();
    }
}
