package deferent.tell;

import deferent.motion.pairing.Side;
import deferent.reading.link.LinkKind;
import deferent.reading.link.LinkReading;
import deferent.reading.tether.SlowestTempo;
import deferent.reading.worked.Worked;
import deferent.search.whole.Readings;
import deferent.tell.Told.Tone;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Says first what is asked first: does it link, and can it be spun; before that, where it is a
 * danger, what makes it one. One sentence, with the one number that decides it: how far an arm
 * falls short, else the tempo that a cord needs, else how far head and hand are apart.
 */
final class TellFirst {
    private final Readings readings;

    TellFirst(Readings readings) {
        this.readings = readings;
    }

    Told told() {
        Worked<LinkReading> link = readings.link(readings.carrier());
        boolean links = Readings.links(link);
        Optional<String> against = arms().or(this::cords);
        Optional<String> danger = new TellDanger(readings).inShort();
        return new Told(
                "first",
                danger.isPresent()
                        ? Tone.DANGER
                        : links && against.isEmpty() ? Tone.GOOD : Tone.NOTE,
                danger.map(what -> "Danger: " + what + ". ").orElse("")
                        + link.reading()
                                .map(l -> links ? linked(l, against) : unlinked(l, against))
                                .orElseGet(() -> unknown(against)),
                "It links where a head stays with the other hand as placed, within a hand's breadth, goes"
                        + " beside it or comes where it was. Arms are asked first, then cords.");
    }

    private String linked(LinkReading link, Optional<String> against) {
        String how =
                switch (link.kind()) {
                    case CARRIED, ROD -> " without touching";
                    case FOLLOWED -> " with a lag";
                    default -> "";
                };
        return against.map(why -> "It links" + how + ", but " + why + ".")
                .orElseGet(() -> how.isEmpty() ? "It links" + taut() : apart(link, "links" + how));
    }

    private String unlinked(LinkReading link, Optional<String> against) {
        return against.map(why -> "It does not link as it stands, and " + why + ".")
                .orElseGet(() -> apart(link, "does not link"));
    }

    private static String unknown(Optional<String> against) {
        return "Whether it links could not be worked out"
                + against.map(why -> ", and " + why).orElse("")
                + ".";
    }

    private String taut() {
        return settled()
                ? ", and both cords can stay taut at " + Say.tempo(readings.pairing().tempo()) + "."
                : ".";
    }

    private String apart(LinkReading link, String links) {
        boolean not = link.kind() == LinkKind.NONE;
        return (settled()
                        ? "Both cords can stay taut at this tempo, " + (not ? "but it " : "and it ")
                        : "It ")
                + links
                + ": "
                + link.carrier().head()
                + " and "
                + link.carrier().other().hand()
                + " are up to "
                + Say.length(link.inPlaneGap())
                + " apart now.";
    }

    private boolean settled() {
        return Stream.of(Side.values())
                .allMatch(side -> readings.cord(side).slowest().reading().isPresent());
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
