package deferent.tell;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Side;
import deferent.reading.body.TrunkTurn;
import deferent.search.fit.ArmsFit;
import deferent.tell.Told.Tone;
import java.util.Optional;

/** Says how large a version of a pairing the arms reach. */
public final class TellArms {
    private TellArms() {}

    /** One sentence on the fit of a pairing to a performer's arms. */
    public static Told of(Optional<ArmsFit> fit) {
        return fit.map(TellArms::found)
                .orElseGet(
                        () ->
                                new Told(
                                        "arms",
                                        Tone.WARN,
                                        "No tether tried brings it within reach: bring the centres nearer to"
                                                + " the shoulders.",
                                        HOW));
    }

    /** The same beside a fit whose answer is out of reach. */
    public static Told beside(ArmsFit fit) {
        Told told = found(fit);
        return new Told(
                told.key(), told.tone(), "The arms don't reach it so. " + told.text(), told.why());
    }

    private static final String HOW =
            "Hand paths and tethers are made smaller together, so the figures keep their shape. The"
                    + " trunk turns by 45° at most, and no faster than a body does.";

    private static Told found(ArmsFit fit) {
        String reached = "both arms reach it" + turned(fit.reach().trunk()) + ".";
        if (fit.scale() == 1) {
            return new Told("arms", Tone.GOOD, "As it stands " + reached, HOW);
        }
        return new Told(
                "arms",
                fit.longEnough() ? Tone.GOOD : Tone.WARN,
                "With "
                        + tethers(fit.pairing())
                        + " and hand paths to match "
                        + reached
                        + givenUp(fit),
                "Everything is " + Say.percent(fit.scale()) + " of its size. " + HOW);
    }

    private static String givenUp(ArmsFit fit) {
        if (fit.closedTether().isPresent()) {
            return " It stays off its link, which would take "
                    + "tethers as short as "
                    + Say.length(fit.closedTether().getAsDouble())
                    + ".";
        }
        return fit.longEnough()
                ? ""
                : " That is shorter than most tethers are: the arms cross too far in it.";
    }

    /** ", with the trunk turned by up to 43°", where it has to turn. */
    static String turned(TrunkTurn trunk) {
        return trunk.turned()
                ? ", with the trunk turned by up to "
                        + Math.round(Math.toDegrees(trunk.greatest()))
                        + "°"
                : "";
    }

    private static String tethers(Pairing pairing) {
        String left = Say.length(pairing.part(Side.LEFT).tether().length());
        String right = Say.length(pairing.part(Side.RIGHT).tether().length());
        return left.equals(right)
                ? "tethers of " + left
                : "a left tether of " + left + " and a right one of " + right;
    }
}
