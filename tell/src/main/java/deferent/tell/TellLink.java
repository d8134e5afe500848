package deferent.tell;

import deferent.motion.pairing.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import deferent.reading.link.LinkKind;
import deferent.reading.link.LinkReading;
import deferent.reading.link.PathKind;
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
                "The other way round, from "
                        + carrier.head()
                        + " to "
                        + rider.hand()
                        + ", nothing links.",
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
                            + (link.wander() < NOTHING ? " goes exactly as " : " goes as ")
                            + head
                            + " goes, "
                            + Say.offset(link.offset().getX(), link.offset().getY(), 0)
                            + (link.wander() < NOTHING
                                    ? ""
                                    : ", within " + Say.length(link.wander()))
                            + ".";
            case FOLLOWED -> followed(link.followed().orElseThrow());
            case ROD ->
                    "Linked as by a rod: "
                            + head
                            + " and "
                            + hand
                            + " draw the same figure and keep one distance.";
            case NONE -> link.shapeGap() <= link.tolerance() ? sameFigureApart() : apart();
        };
    }

    private String followed(LinkReading.Following by) {
        boolean half = Math.abs(Math.abs(by.lag()) - 0.5) < 0.005;
        boolean trails = by.lag() >= 0 && !half;
        String beside = by.touching() ? "" : "beside ";
        return "Linked, followed: "
                + rider.hand()
                + (trails ? " comes " : " is ")
                + beside
                + "where "
                + carrier.head()
                + (trails ? " was " : " will be ")
                + Say.share(by.lag())
                + (trails ? " before." : " later.")
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
                + ", but at one instant they are up to "
                + Say.length(link.inPlaneGap())
                + " apart.";
    }

    private String apart() {
        Trace trace = readings.trace();
        Samples samples = trace.samples();
        PathKind head = PathKind.of(samples.head(carrier));
        PathKind hand = PathKind.of(samples.hand(rider));
        boolean circles =
                head.sort() == PathKind.Sort.CIRCLE && hand.sort() == PathKind.Sort.CIRCLE;
        return "No link from "
                + carrier.head()
                + " to "
                + rider.hand()
                + ": up to "
                + Say.length(link.inPlaneGap())
                + " apart now, at best "
                + (link.quick() ? "about " : "")
                + Say.length(link.shapeGap())
                + (circles ? " all the way round" : "")
                + ", because "
                + cause(head, hand)
                + ".";
    }

    private String cause(PathKind head, PathKind hand) {
        String carriers = motion(carrier) + "'s head";
        String riders = motion(rider) + "'s hand";
        if (hand.sort() == PathKind.Sort.POINT) {
            return "the "
                    + riders
                    + " stands still while the "
                    + carriers
                    + " goes along "
                    + Say.a(head.noun());
        }
        if (head.sort() == PathKind.Sort.POINT) {
            return "the "
                    + carriers
                    + " stands still while the "
                    + riders
                    + " goes along "
                    + Say.a(hand.noun());
        }
        if (head.sort() == hand.sort() && head.sort() != PathKind.Sort.FIGURE) {
            return "the "
                    + carriers
                    + " "
                    + head.noun()
                    + " ("
                    + Say.length(head.size())
                    + ") is "
                    + (head.size() < hand.size() ? "smaller" : "larger")
                    + " than the "
                    + riders
                    + " "
                    + hand.noun()
                    + " ("
                    + Say.length(hand.size())
                    + ")";
        }
        if (head.sort() == PathKind.Sort.FIGURE && hand.sort() == PathKind.Sort.FIGURE) {
            return "the "
                    + carriers
                    + " and the "
                    + riders
                    + " draw different figures, "
                    + Say.length(2 * head.size())
                    + " and "
                    + Say.length(2 * hand.size())
                    + " across";
        }
        return Say.a(head.noun())
                + " is no "
                + hand.noun()
                + ": the "
                + carriers
                + (head.sort() == PathKind.Sort.FIGURE ? " draws " : " goes along ")
                + Say.a(head.noun())
                + ", the "
                + riders
                + " goes along "
                + Say.a(hand.noun());
    }

    private boolean varies() {
        double least = Arrays.stream(link.gapOverCycle()).min().orElse(0);
        return link.inPlaneGap() - least >= NOTHING;
    }

    private String motion(Side side) {
        return readings.hand(side).motion();
    }

    private String why() {
        StringBuilder why = new StringBuilder();
        why.append("Apart now, at one instant, by up to ")
                .append(Say.length(link.inPlaneGap()))
                .append(" in the plane");
        if (varies()) {
            why.append(" (most ")
                    .append(Say.percent(link.worstTime() / readings.trace().period()))
                    .append(" into the cycle)");
        }
        why.append(" and ").append(Say.length(link.depthGap())).append(" across it. At best ");
        why.append(link.quick() ? "about " : "").append(Say.length(link.shapeGap()));
        if (!link.quick() && link.shapeGapError() >= 0.0005) {
            why.append(" (sampled to ").append(Say.length(link.shapeGapError())).append(")");
        }
        why.append(" as shapes");
        if (link.shapeGap() >= NOTHING) {
            why.append(", ")
                    .append(Say.percent(link.shareOfFigure()))
                    .append(" of the figure's width or ")
                    .append(Say.trimmed(link.handsBreadths(), 1))
                    .append(" hand's breadths");
        }
        why.append("; with their timing ").append(Say.length(link.clockGap()));
        if (Math.abs(link.lag()) > 0.495) {
            why.append(", half a cycle apart");
        } else if (Math.abs(link.lag()) > 0.002) {
            why.append(link.lag() > 0 ? ", the hand trailing by " : ", the hand leading by ")
                    .append(Say.share(link.lag()));
        }
        why.append('.');
        return why.toString();
    }
}
