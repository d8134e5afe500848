package deferent.studio;

import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Person;
import deferent.reading.body.PoseOver;
import deferent.reading.body.Reach;
import deferent.reading.closest.Closely;
import deferent.reading.link.LinkReading;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Pull;
import deferent.reading.worked.CordReading;
import deferent.reading.worked.Detail;
import deferent.reading.worked.Worked;
import deferent.search.whole.Keep;
import deferent.search.whole.Readings;
import deferent.search.whole.Staged;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * What the stage draws of a pairing. A move of a drag asks for this alone: it is had in half the
 * time of all readings, of which words and numbers need the most.
 *
 * @param ideal the pairing as it was said
 * @param shown what is on the stage of it, ideal or corded
 * @param carrier whose head leads
 * @param person the body that holds what is shown; none where its reach could not be worked out, or
 *     nobody asked for it
 */
record DrawnMove(Trace ideal, Staged shown, Side carrier, Optional<Person> person) {

    /** Of what was read already. */
    static DrawnMove of(Readings readings, Staged shown, Optional<Side> carrier, boolean body) {
        return new DrawnMove(
                readings.trace(),
                shown,
                carrier.orElse(shown.carrier()),
                body
                        ? person(
                                readings.reach(),
                                readings.trace(),
                                shown.trace(),
                                readings.performer())
                        : Optional.empty());
    }

    /** Of a pairing as it was said, of which nothing was read yet. */
    static DrawnMove ideal(Matter matter, Optional<Side> carrier, boolean body) {
        Trace trace = Trace.of(matter.pairing());
        Performer performer = matter.document().performer();
        Side leads = carrier.orElseGet(() -> leading(trace));
        return new DrawnMove(
                trace,
                new Staged(
                        Keep.IDEAL,
                        leads,
                        trace,
                        Map.of(),
                        pulls(trace, matter.document().kit()),
                        Map.of()),
                leads,
                body
                        ? person(
                                Worked.of(
                                        "whether the hands get there",
                                        () -> Reach.of(trace, performer)),
                                trace,
                                trace,
                                performer)
                        : Optional.empty());
    }

    private static Side leading(Trace trace) {
        return Readings.carrier(link(trace, Side.LEFT), link(trace, Side.RIGHT));
    }

    private static Worked<LinkReading> link(Trace trace, Side carrier) {
        return Worked.of(
                "the link from " + carrier.head(), () -> LinkReading.quick(trace, carrier));
    }

    private static Map<Side, Pull> pulls(Trace trace, Kit kit) {
        Map<Side, Pull> pulls = new EnumMap<>(Side.class);
        for (Side side : Side.values()) {
            CordReading.of(trace, side, kit, Detail.LIVE, Closely.USUAL)
                    .pull()
                    .reading()
                    .ifPresent(pull -> pulls.put(side, pull));
        }
        return pulls;
    }

    private static Optional<Person> person(
            Worked<Reach> reach, Trace ideal, Trace shown, Performer performer) {
        return reach.reading()
                .map(
                        read ->
                                shown.equals(ideal)
                                        ? PoseOver.of(shown, read)
                                        : PoseOver.of(shown, performer))
                .map(Person::of);
    }
}
