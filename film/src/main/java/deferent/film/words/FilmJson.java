package deferent.film.words;

import deferent.film.FilmReading;
import deferent.film.Passages;
import deferent.film.cycle.Unsure;
import deferent.film.held.Beat;
import deferent.film.held.Finding;
import deferent.film.held.Off;
import deferent.film.held.OpenLink;
import deferent.film.measured.Measured;
import deferent.film.measured.MeasuredSide;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.record.PrettyJson;
import deferent.record.number.Written;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A film's reading as JSON: lengths end in _m, times in _s, angles in _deg, as in the readings of
 * pairings.
 */
public final class FilmJson {
    private FilmJson() {}

    public static String write(FilmReading film) {
        return PrettyJson.text(tree(film));
    }

    /** With the measured mean cycle, hands and heads at even moments, beside the reading. */
    public static String writeWithTrace(FilmReading film) {
        ObjectNode all = tree(film);
        Samples samples = film.measured().trace(film.held().meant()).samples(MeasuredSide.MOMENTS);
        ObjectNode cycle = all.putObject("cycle");
        ArrayNode times = cycle.putArray("time_s");
        for (int i = 0; i < samples.count(); i++) {
            times.add(samples.time(i));
        }
        for (Side side : Side.values()) {
            put(cycle, side.word() + "_head", samples.head(side));
            put(cycle, side.word() + "_hand", samples.hand(side));
        }
        return PrettyJson.text(all);
    }

    /** Passages by time, each with its reading. */
    public static String passages(List<Passages.Passage> passages) {
        ObjectNode all = JsonNodeFactory.instance.objectNode();
        ArrayNode list = all.putArray("passages");
        for (Passages.Passage passage : passages) {
            ObjectNode one = list.addObject();
            one.put("from_s", passage.within().start());
            one.put("to_s", passage.within().end());
            one.set("film", tree(passage.reading()));
        }
        return PrettyJson.text(all);
    }

    private static void put(ObjectNode cycle, String what, double[] xyz) {
        ArrayNode x = cycle.putArray(what + "_x_m");
        ArrayNode y = cycle.putArray(what + "_y_m");
        for (int i = 0; i < xyz.length; i += 3) {
            x.add(xyz[i]);
            y.add(xyz[i + 1]);
        }
    }

    /** As a tree, to be part of a larger answer. */
    public static ObjectNode tree(FilmReading film) {
        Measured measured = film.measured();
        ObjectNode all = JsonNodeFactory.instance.objectNode();
        Phrase.write(film.held().meant()).ifPresent(phrase -> all.put("phrase", phrase));
        all.put("asked", film.asked());
        all.put("film_s", measured.seconds());
        all.put("period_s", measured.period());
        all.put("tempo_cycles_per_min", film.held().meant().tempo());
        all.put("drift_s", measured.drift().range());
        ObjectNode scale = all.putObject("scale");
        scale.put("pixel_m", measured.scale().metres());
        scale.put("error_share", measured.how().error());
        scale.put("how", Written.word(measured.how()));
        scale.put("mirrored", measured.scale().mirrored());
        ObjectNode upright = all.putObject("upright");
        upright.put("roll_deg", Math.toDegrees(measured.upright().roll()));
        upright.put("error_deg", Math.toDegrees(measured.upright().error()));
        upright.put("how", Written.word(measured.upright().how()));
        all.put("sides", Written.word(measured.sides()));
        ArrayNode unsure = all.putArray("unsure");
        for (Unsure stretch : film.unsure()) {
            ObjectNode one = unsure.addObject();
            one.put("from_s", stretch.from());
            one.put("to_s", stretch.to());
            one.put("why", Written.word(stretch.why()));
        }
        ObjectNode hands = all.putObject("hands");
        for (Side side : Side.values()) {
            MeasuredSide one = measured.side(side);
            ObjectNode hand = hands.putObject(side.word());
            hand.put("tether_m", one.tether());
            hand.put("kept", Written.word(film.held().kept(side)));
            hand.put("off_m", film.held().off(side));
            hand.put("head_scatter_m", one.head().scatter());
            hand.put("hand_error_m", one.handError());
            hand.put("hand_known_share", one.handKnown());
        }
        film.nearest()
                .ifPresent(
                        nearest -> {
                            ObjectNode near = all.putObject("nearest");
                            nearest.phrase().ifPresent(phrase -> near.put("phrase", phrase));
                            near.put("off_m", nearest.off());
                        });
        ArrayNode beats = all.putArray("beats");
        film.held().beats().forEach(beat -> beats.add(beat(beat)));
        ArrayNode links = all.putArray("links");
        film.held().links().forEach(link -> links.add(link(link)));
        ArrayNode findings = all.putArray("findings");
        film.held().findings().forEach(f -> findings.add(finding(f)));
        return all;
    }

    private static ObjectNode beat(Beat beat) {
        ObjectNode one = JsonNodeFactory.instance.objectNode();
        one.put("count", beat.count());
        one.put("moment_s", beat.moment());
        for (Side side : Side.values()) {
            off(one, side.word() + "_head", beat.heads().get(side));
            off(one, side.word() + "_hand", beat.hands().get(side));
        }
        return one;
    }

    private static void off(ObjectNode beat, String what, @Nullable Off off) {
        if (off != null) {
            beat.putObject(what)
                    .put("off_m", off.far())
                    .put("x_m", off.x())
                    .put("y_m", off.y())
                    .put("error_m", off.error())
                    .put("way", off.way().words());
        }
    }

    private static ObjectNode link(OpenLink link) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("carrier", link.carrier().word())
                .put("lag_cycles", link.lag())
                .put("apart_m", link.apart())
                .put("error_m", link.error())
                .put("on", link.on())
                .put("moment_s", link.moment())
                .put("closest_m", link.closest())
                .put("closest_on", link.closestOn())
                .put("meant_m", link.meant())
                .put("known_share", link.known());
    }

    private static ObjectNode finding(Finding finding) {
        ObjectNode one = JsonNodeFactory.instance.objectNode();
        one.put("key", finding.fault().key());
        finding.side().ifPresent(side -> one.put("hand", side.word()));
        boolean angle = finding.fault().unit().equals("rad");
        one.put(
                "value_" + (angle ? "deg" : finding.fault().unit()),
                angle ? Math.toDegrees(finding.value()) : finding.value());
        one.put("weight_m", finding.weight());
        one.put("moment_s", finding.moment());
        one.put("said", finding.said());
        one.put("mend", finding.mend());
        return one;
    }
}
