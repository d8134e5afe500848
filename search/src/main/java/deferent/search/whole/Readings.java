package deferent.search.whole;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.MotionWords;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Figure;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.reading.body.Room;
import deferent.reading.closest.Arm;
import deferent.reading.closest.Closely;
import deferent.reading.danger.Dangers;
import deferent.reading.link.LinkReading;
import deferent.reading.shared.LinkKind;
import deferent.reading.tether.Kit;
import deferent.reading.worked.CordReading;
import deferent.reading.worked.Detail;
import deferent.reading.worked.Worked;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Every reading of one pairing, by one performer. Each is worked out on its own; one that cannot be
 * leaves the others as they are.
 *
 * @param trace the pairing worked out
 * @param performer whose arms and body
 * @param detail how much was worked out
 * @param phrase the pairing in trade words, where they can say it
 * @param left the left hand's motion and figure
 * @param right the right hand's
 * @param leftLeads the link of the left head with the right hand
 * @param rightLeads the link of the right head with the left hand
 * @param reach whether the hands get there
 * @param room how near things come
 * @param leftCord what the left cord does
 * @param rightCord what the right cord does
 * @param dangers what can hurt in it
 * @param advice on the leading link, unless live
 */
public record Readings(
        Trace trace,
        Performer performer,
        Detail detail,
        Optional<String> phrase,
        Hand left,
        Hand right,
        Worked<LinkReading> leftLeads,
        Worked<LinkReading> rightLeads,
        Worked<Reach> reach,
        Worked<Room> room,
        CordReading leftCord,
        CordReading rightCord,
        Worked<Dangers> dangers,
        Optional<Advice> advice) {

    /** One hand: what its motion is called, and what its head draws over one of its own cycles. */
    public record Hand(String motion, Worked<Figure> figure) {}

    public static Readings of(Pairing pairing, Performer performer, Detail detail) {
        return of(pairing, performer, Kit.USUAL, detail, Lexicon.EMPTY);
    }

    public static Readings of(
            Pairing pairing, Performer performer, Kit kit, Detail detail, Lexicon lexicon) {
        return of(pairing, performer, kit, detail, lexicon, Closely.USUAL);
    }

    /**
     * All readings of a pairing.
     *
     * @param kit the performer's heads and cords
     * @param lexicon the user's own names for motions
     * @param closely how closest figures are looked for; arms and hands are the performer's
     */
    public static Readings of(
            Pairing pairing,
            Performer performer,
            Kit kit,
            Detail detail,
            Lexicon lexicon,
            Closely closely) {
        Trace trace = Trace.of(pairing);
        Worked<LinkReading> leftLeads = link(trace, Side.LEFT, detail);
        Worked<LinkReading> rightLeads = link(trace, Side.RIGHT, detail);
        Worked<Room> room = Worked.of("how near things come", () -> Room.of(trace, performer));
        Worked<Reach> reach =
                Worked.of("whether the hands get there", () -> Reach.of(trace, performer));
        Closely by = closely.held(performer.hands());
        TwoHands<CordReading> cords =
                TwoHands.of(
                        side ->
                                LatestCords.of(
                                        trace,
                                        side,
                                        kit,
                                        detail,
                                        by.within(arm(trace, reach, side))),
                        detail != Detail.LIVE && Runtime.getRuntime().availableProcessors() > 1);
        CordReading leftCord = cords.left();
        CordReading rightCord = cords.right();
        boolean left = carrier(leftLeads, rightLeads) == Side.LEFT;
        return new Readings(
                trace,
                performer,
                detail,
                Phrase.write(pairing, lexicon),
                hand(trace, Side.LEFT, detail, lexicon),
                hand(trace, Side.RIGHT, detail, lexicon),
                leftLeads,
                rightLeads,
                reach,
                room,
                leftCord,
                rightCord,
                Worked.of(
                        "what can hurt in it",
                        () ->
                                Dangers.of(
                                        trace,
                                        performer,
                                        kit,
                                        room,
                                        leftCord.pull(),
                                        rightCord.pull(),
                                        detail)),
                detail == Detail.LIVE
                        ? Optional.empty()
                        : Optional.of(
                                LatestAdvice.of(
                                        trace,
                                        performer,
                                        kit,
                                        detail,
                                        closely,
                                        () ->
                                                Advice.of(
                                                        trace,
                                                        left ? leftLeads : rightLeads,
                                                        left ? leftCord : rightCord,
                                                        left ? rightCord : leftCord,
                                                        reach,
                                                        detail == Detail.SETTLED))));
    }

    /**
     * The arm that bounds a closest figure, its trunk straight ahead: where the ideal hand itself
     * goes beyond it, that is told as a matter of reach, and nothing is gained by telling it twice.
     * None where the body turns, since its shoulder does not keep to one place in the room then.
     */
    static Optional<Arm> arm(Trace trace, Worked<Reach> reach, Side side) {
        return reach.reading()
                .filter(r -> !trace.turned())
                .filter(r -> r.hand(side).everywhere())
                .map(r -> new Arm(r.performer().shoulder(side), r.performer().arm()));
    }

    private static Hand hand(Trace trace, Side side, Detail detail, Lexicon lexicon) {
        return new Hand(
                MotionWords.of(trace.pairing(), side, lexicon),
                Worked.of(
                        "what " + side.head() + " draws",
                        () ->
                                detail == Detail.LIVE
                                        ? Figure.quick(trace, side)
                                        : Figure.of(trace, side)));
    }

    private static Worked<LinkReading> link(Trace trace, Side carrier, Detail detail) {
        return Worked.of(
                "the link from " + carrier.head() + " to " + carrier.other().hand(),
                () ->
                        detail == Detail.LIVE
                                ? LinkReading.quick(trace, carrier)
                                : LatestLinks.of(trace, carrier));
    }

    public Pairing pairing() {
        return trace.pairing();
    }

    public Hand hand(Side side) {
        return side == Side.LEFT ? left : right;
    }

    /** What that side's head draws. */
    public Worked<Figure> figure(Side side) {
        return hand(side).figure();
    }

    /** The link whose carrier is that side's head. */
    public Worked<LinkReading> link(Side carrier) {
        return carrier == Side.LEFT ? leftLeads : rightLeads;
    }

    /**
     * The carrier whose link is told and drawn first: one that links, else the one whose shapes
     * miss by less; the left of equals. One that was not worked out comes last.
     */
    public Side carrier() {
        return carrier(leftLeads, rightLeads);
    }

    /** The same of both links alone, the left head's first. */
    public static Side carrier(Worked<LinkReading> leftLeads, Worked<LinkReading> rightLeads) {
        boolean left = links(leftLeads);
        boolean right = links(rightLeads);
        if (left != right) {
            return left ? Side.LEFT : Side.RIGHT;
        }
        return miss(rightLeads) < miss(leftLeads) - 1e-3 ? Side.RIGHT : Side.LEFT;
    }

    /** Whether it was worked out and links. */
    public static boolean links(Worked<LinkReading> link) {
        return link.reading().filter(l -> l.kind() != LinkKind.NONE).isPresent();
    }

    private static double miss(Worked<LinkReading> link) {
        return link.reading().map(LinkReading::shapeGap).orElse(Double.POSITIVE_INFINITY);
    }

    /** How far a head comes from its figure's centre, metres; only where both are worked out. */
    public OptionalDouble farthest() {
        Optional<Figure> one = left.figure().reading();
        Optional<Figure> other = right.figure().reading();
        return one.isPresent() && other.isPresent()
                ? OptionalDouble.of(Math.max(one.get().outerRadius(), other.get().outerRadius()))
                : OptionalDouble.empty();
    }

    public CordReading cord(Side side) {
        return side == Side.LEFT ? leftCord : rightCord;
    }
}
