package deferent.motion.tell;

import deferent.motion.body.Clearance;
import deferent.motion.body.Performer;
import deferent.motion.body.Reach;
import deferent.motion.link.LinkKind;
import deferent.motion.link.LinkReading;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Side;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.MotionWords;
import deferent.motion.phrase.Phrase;
import deferent.motion.tether.Kit;
import deferent.motion.trace.Figure;
import deferent.motion.trace.Trace;
import java.util.Optional;

/**
 * Every reading of one pairing, by one performer.
 *
 * @param trace the pairing worked out
 * @param performer whose arms and body
 * @param detail how much was worked out
 * @param phrase the pairing in trade words, where they can say it
 * @param left the left hand's motion and figure
 * @param right the right hand's
 * @param leftLeads the tie of the left head with the right hand
 * @param rightLeads the tie of the right head with the left hand
 * @param reach whether the hands get there
 * @param clearance how near things come
 * @param leftCord what the left cord does
 * @param rightCord what the right cord does
 * @param advice on the leading tie, unless live
 */
public record Readings(
        Trace trace,
        Performer performer,
        Detail detail,
        Optional<String> phrase,
        Hand left,
        Hand right,
        Tie leftLeads,
        Tie rightLeads,
        Reach reach,
        Clearance clearance,
        CordReading leftCord,
        CordReading rightCord,
        Optional<Advice> advice) {

    /** One hand: what its motion is called, and what its head draws over one of its own cycles. */
    public record Hand(String motion, Figure figure) {}

    /** One tie: its link reading. */
    public record Tie(LinkReading link) {}

    public static Readings of(Pairing pairing, Performer performer, Detail detail) {
        return of(pairing, performer, Kit.USUAL, detail, Lexicon.EMPTY);
    }

    /**
     * @param kit the performer's heads and cords
     * @param lexicon the user's own names for motions
     */
    public static Readings of(
            Pairing pairing, Performer performer, Kit kit, Detail detail, Lexicon lexicon) {
        Trace trace = Trace.of(pairing);
        Tie leftLeads = tie(trace, Side.LEFT, detail);
        Tie rightLeads = tie(trace, Side.RIGHT, detail);
        return new Readings(
                trace,
                performer,
                detail,
                Phrase.write(pairing, lexicon),
                hand(trace, Side.LEFT, detail, lexicon),
                hand(trace, Side.RIGHT, detail, lexicon),
                leftLeads,
                rightLeads,
                Reach.of(trace, performer),
                Clearance.of(trace, performer),
                CordReading.of(trace, Side.LEFT, kit, detail),
                CordReading.of(trace, Side.RIGHT, kit, detail),
                detail == Detail.LIVE
                        ? Optional.empty()
                        : Optional.of(
                                Advice.of(
                                        trace,
                                        leading(leftLeads, rightLeads),
                                        kit,
                                        detail == Detail.SETTLED)));
    }

    private static LinkReading leading(Tie leftLeads, Tie rightLeads) {
        return (leader(leftLeads, rightLeads) == Side.LEFT ? leftLeads : rightLeads).link();
    }

    private static Hand hand(Trace trace, Side side, Detail detail, Lexicon lexicon) {
        return new Hand(
                MotionWords.of(trace.pairing(), side, lexicon),
                detail == Detail.LIVE ? Figure.quick(trace, side) : Figure.of(trace, side));
    }

    private static Tie tie(Trace trace, Side root, Detail detail) {
        return detail == Detail.LIVE
                ? new Tie(LinkReading.quick(trace, root))
                : new Tie(LinkReading.of(trace, root));
    }

    public Pairing pairing() {
        return trace.pairing();
    }

    public Hand hand(Side side) {
        return side == Side.LEFT ? left : right;
    }

    /** The tie whose root is that side's head. */
    public Tie tie(Side root) {
        return root == Side.LEFT ? leftLeads : rightLeads;
    }

    /**
     * The root whose tie is told and drawn first: one that links, else the one whose shapes miss by
     * less; the left of equals.
     */
    public Side leader() {
        return leader(leftLeads, rightLeads);
    }

    private static Side leader(Tie leftLeads, Tie rightLeads) {
        boolean left = leftLeads.link().kind() != LinkKind.NONE;
        boolean right = rightLeads.link().kind() != LinkKind.NONE;
        if (left != right) {
            return left ? Side.LEFT : Side.RIGHT;
        }
        return rightLeads.link().shapeGap() < leftLeads.link().shapeGap() - 1e-3
                ? Side.RIGHT
                : Side.LEFT;
    }

    public CordReading cord(Side side) {
        return side == Side.LEFT ? leftCord : rightCord;
    }
}
