package deferent.tell;

import deferent.motion.shared.Side;
import deferent.reading.link.LinkReading;
import deferent.reading.shared.LinkKind;
import deferent.reading.tether.SlowestTempo;
import deferent.reading.worked.Worked;
import deferent.search.whole.Readings;
import deferent.tell.Told.Tone;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Says first the one thing that matters most now, and that can be mended: what makes it a danger;
 * else that it does not link; else the arm that falls short, or the tempo that a cord needs. What
 * stands behind it is told once that is mended.
 */
final class TellFirst {
    private final Readings readings;

    TellFirst(Readings readings) {
        this.readings = readings;
    }

    Told told() {
        Worked<LinkReading> link = readings.link(readings.carrier());
        Optional<String> danger = new TellDanger(readings).inShort();
        boolean good = danger.isEmpty() && Readings.links(link) && against().isEmpty();
        return new Told(
                "first",
                danger.isPresent() ? Tone.DANGER : good ? Tone.GOOD : Tone.NOTE,
                danger.map(what -> "Danger: " + what + ".")
                        .orElseGet(
                                () ->
                                        link.reading()
                                                .map(
                                                        l ->
                                                                Readings.links(link)
                                                                        ? linked(l)
                                                                        : apart(l))
                                                .orElse(
                                                        "Whether it links could not be worked out.")),
                "It links where a head stays with the other hand as placed, within a hand's breadth, goes"
                        + " beside it or comes where it was. A danger is told first, then whether it"
                        + " links, then arms, then cords.");
    }

    private String linked(LinkReading link) {
        return against()
                .map(why -> "It links" + how(link) + ", but " + why + ".")
                .orElseGet(() -> how(link).isEmpty() ? "It links" + taut() : apart(link));
    }

    private static String how(LinkReading link) {
        return switch (link.kind()) {
            case CARRIED, ROD -> " without touching";
            case FOLLOWED -> " with a lag";
            default -> "";
        };
    }

    private Optional<String> against() {
        return arms().or(this::cords);
    }

    private String taut() {
        boolean settled =
                Stream.of(Side.values())
                        .allMatch(side -> readings.cord(side).slowest().reading().isPresent());
        return settled
                ? ", and both cords can stay taut at " + Say.tempo(readings.pairing().tempo()) + "."
                : ".";
    }

    /** The same of one link, whatever else is in the way. */
    String apart(LinkReading link) {
        Optional<Told> hands = TellHands.of(readings);
        if (link.kind() == LinkKind.NONE && hands.isPresent()) {
            return hands.get().text();
        }
        return (link.kind() == LinkKind.NONE ? "It does not link: " : "It links" + how(link) + ": ")
                + link.carrier().head()
                + " and "
                + link.carrier().other().hand()
                + " are up to "
                + Say.length(link.inPlaneGap())
                + " apart now.";
    }

    private Optional<String> arms() {
        return readings.reach().reading().flatMap(TellBody::outOfReach);
    }

    private Optional<String> cords() {
        return Stream.of(Side.values())
                .flatMap(side -> readings.cord(side).slowest().reading().stream())
                .filter(slowest -> !met(slowest.figureKept()) && !met(slowest.handPathKept()))
                .map(this::gives)
                .findFirst();
    }

    private boolean met(SlowestTempo.Limit limit) {
        return limit.met(readings.pairing().tempo());
    }

    private String gives(SlowestTempo slowest) {
        OptionalDouble least =
                Stream.of(slowest.figureKept(), slowest.handPathKept())
                        .flatMapToDouble(limit -> limit.tempo().stream())
                        .filter(tempo -> tempo > readings.pairing().tempo())
                        .min();
        String cord = "the " + slowest.side().word() + " cord ";
        return least.isPresent()
                ? cord
                        + "needs a tempo of "
                        + Say.tempo(least.getAsDouble())
                        + " or more to stay taut"
                : cord + "does not stay taut in it";
    }
}
