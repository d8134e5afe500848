package deferent.tell;

import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import deferent.reading.link.LinkReading;
import deferent.reading.link.PathKind;
import deferent.reading.shared.LinkKind;
import deferent.search.whole.Readings;
import deferent.tell.Told.Tone;
import java.util.Arrays;

/** Says one link: of which kind it is, and where it is none, how far apart and why. */
final class TellLink {
    private static final double NOTHING = 1e-3;

    private final Readings readings;
    private final LinkReading link;
    private final Side carrier;
    private final Side rider;

    TellLink(Readings readings, LinkReading link) {
        this.readings = readings;
        this.link = link;
        this.carrier = link.carrier();
        this.rider = carrier.other();
    }

    Told told() {
        boolean good = link.kind() != LinkKind.NONE;
        return new Told("link." + carrier.word(), good ? Tone.GOOD : Tone.NOTE, sentence(), why());
    }

    /** The same where the other one links already, and this one does not. */
    Told toldAside() {
        return new Told(
                "link." + carrier.word(),
                Tone.NOTE,
                "The other way round nothing links: "
                        + carrier.head()
                        + " and "
                        + rider.hand()
                        + " are up to "
                        + Say.length(link.inPlaneGap())
                        + " apart now.",
                why());
    }

    private String sentence() {
        String head = carrier.head();
        String hand = rider.hand();
        return switch (link.kind()) {
            case TOUCHING ->
                    link.inPlaneGap() < NOTHING
                            ? "Linked, touching: "
                                    + head
                                    + " stays on "
                                    + hand
                                    + " all the way round."
                            : "Linked, touching: "
                                    + head
                                    + " stays within "
                                    + Say.length(link.inPlaneGap())
                                    + " of "
                                    + hand
                                    + ", less than a hand's breadth.";
            case CARRIED ->
                    "Linked, carried: "
                            + hand
                            + (link.wander() < NOTHING ? " moves exactly as " : " moves as ")
                            + head
                            + " does, "
                            + Say.offset(link.offset().getX(), link.offset().getY(), 0)
                            + (link.wander() < NOTHING
                                    ? ""
                                    : ", give or take " + Say.length(link.wander()))
                            + ".";
            case FOLLOWED -> followed(link.followed().orElseThrow());
            case ROD ->
                    "Linked as by a rod: "
                            + head
                            + " and "
                            + hand
                            + " draw the same figure and stay "
                            + Say.length(link.inPlaneGap())
                            + " apart.";
            case NONE -> link.shapeGap() <= link.tolerance() ? sameFigureApart() : apart();
        };
    }

    private String followed(LinkReading.Following by) {
        boolean half = Math.abs(Math.abs(by.lag()) - 0.5) < 0.005;
        boolean trails = by.lag() >= 0 && !half;
        String beside = by.touching() ? "" : ", to one side";
        return "Linked, followed: "
                + rider.hand()
                + " goes where "
                + carrier.head()
                + (trails ? " went" : " goes")
                + beside
                + ", "
                + Say.share(by.lag())
                + (trails ? " later." : half ? " apart." : " ahead of it.")
                + (half && by.touching() && together() ? " In split time they touch." : "");
    }

    private boolean together() {
        return readings.pairing().timing().ahead() == 0;
    }

    private String sameFigureApart() {
        return "Same figure, not together: "
                + carrier.head()
                + " draws what "
                + rider.hand()
                + " draws"
                + (link.shapeGap() < NOTHING ? "" : " within " + Say.length(link.shapeGap()))
                + ", but they are up to "
                + Say.length(link.inPlaneGap())
                + " apart now.";
    }

    private String apart() {
        Trace trace = readings.trace();
        Samples samples = trace.samples();
        PathKind head = PathKind.of(samples.head(carrier));
        PathKind hand = PathKind.of(samples.hand(rider));
        boolean circles =
                head.sort() == PathKind.Sort.CIRCLE && hand.sort() == PathKind.Sort.CIRCLE;
        String now = Say.length(link.inPlaneGap());
        String best = Say.length(link.shapeGap());
        String round = circles ? " all the way round" : "";
        return "No link from "
                + carrier.head()
                + " to "
                + rider.hand()
                + ": they are up to "
                + now
                + " apart now, "
                + (best.equals(now) && !link.quick()
                        ? "at best no nearer"
                        : "at best " + (link.quick() ? "about " : "") + best + round)
                + ", because "
                + cause(head, hand)
                + ".";
    }

    private String cause(PathKind head, PathKind hand) {
        String heads = carrier.head();
        String hands = rider.hand();
        boolean headDraws = head.sort() == PathKind.Sort.FIGURE;
        boolean handDraws = hand.sort() == PathKind.Sort.FIGURE;
        if (headDraws && handDraws) {
            return heads
                    + " and "
                    + hands
                    + " draw different figures, "
                    + Say.length(2 * head.size())
                    + " and "
                    + Say.length(2 * hand.size())
                    + " across";
        }
        if (head.sort() == hand.sort() && SayPath.sized(head).equals(SayPath.sized(hand))) {
            return heads + " and " + hands + " go along different arcs";
        }
        if (head.sort() == hand.sort()) {
            return heads
                    + "'s "
                    + SayPath.sized(head)
                    + " is "
                    + SayPath.against(head, hand)
                    + " than "
                    + hands
                    + "'s "
                    + SayPath.sized(hand);
        }
        if (head.sort() == PathKind.Sort.POINT) {
            return heads + " stays still while " + hands + " " + SayPath.goes(hand);
        }
        if (hand.sort() == PathKind.Sort.POINT) {
            return hands + " stays still while " + heads + " " + SayPath.goes(head);
        }
        if (headDraws) {
            return hands + " " + SayPath.goes(hand) + " and " + heads + " draws another figure";
        }
        return heads
                + " "
                + SayPath.goes(head)
                + " and "
                + hands
                + (handDraws ? " draws another figure" : " " + SayPath.goes(hand));
    }

    private boolean varies() {
        double least = Arrays.stream(link.gapOverCycle()).min().orElse(0);
        return link.inPlaneGap() - least >= NOTHING;
    }

    private String why() {
        StringBuilder why = new StringBuilder();
        if (link.inPlaneGap() < NOTHING) {
            why.append("Never apart in the plane");
        } else {
            why.append("Apart now by up to ")
                    .append(Say.length(link.inPlaneGap()))
                    .append(" in the plane");
            if (varies()) {
                why.append(" (most ")
                        .append(Say.into(link.worstTime() / readings.trace().period()))
                        .append(')');
            }
        }
        if (link.depthGap() >= NOTHING) {
            why.append(link.inPlaneGap() < NOTHING ? ", " : " and ")
                    .append(Say.length(link.depthGap()))
                    .append(" across it");
        }
        why.append(". ");
        if (link.clockGap() < NOTHING) {
            why.append("At best the same in shape and time");
        } else {
            why.append(link.shapeGap() < NOTHING ? "At best the same in shape" : shapes())
                    .append("; in shape and time ")
                    .append(Say.length(link.clockGap()));
        }
        if (Math.abs(link.lag()) > 0.495) {
            why.append(", half a cycle apart");
        } else if (Math.abs(link.lag()) > 0.002) {
            why.append(link.lag() > 0 ? ", the hand trailing by " : ", the hand leading by ")
                    .append(Say.share(link.lag()));
        }
        why.append('.');
        return why.toString();
    }

    private String shapes() {
        String sampled =
                !link.quick() && link.shapeGapError() >= 0.0005
                        ? " (sampled to " + Say.length(link.shapeGapError()) + ")"
                        : "";
        String breadths = Say.trimmed(link.handsBreadths(), 1);
        return "At best "
                + (link.quick() ? "about " : "")
                + Say.length(link.shapeGap())
                + " in shape"
                + sampled
                + ", "
                + Say.percent(link.shareOfFigure())
                + " of the figure's width or "
                + (breadths.equals("1") ? "" : breadths + " times ")
                + "a hand's breadth";
    }
}
