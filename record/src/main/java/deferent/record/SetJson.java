package deferent.record;

import static deferent.record.number.Written.rounded;

import deferent.motion.shared.Side;
import deferent.search.set.InSong;
import deferent.search.set.Joint;
import deferent.search.set.SetWork;
import deferent.search.set.Stay;
import deferent.search.set.ToSong;
import deferent.search.set.TurnLoad;
import deferent.search.set.TurnMade;
import deferent.search.transition.Transition;
import deferent.search.transition.TransitionKind;
import deferent.tell.TellSet;
import deferent.tell.TellSungSet;
import deferent.tell.Told;
import java.util.List;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** A set worked out, as {@code deferent set --json} and the studio answer it. */
public final class SetJson {
    private SetJson() {}

    /** The answer as text. */
    public static String write(SetReading reading) {
        return PrettyJson.text(tree(reading));
    }

    /** The answer as a tree to be part of a larger one. */
    public static ObjectNode tree(SetReading reading) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("name", reading.name());
        ToldJson.put(node.putArray("told"), reading.told());
        node.put("seconds", rounded(reading.plan().seconds()));
        node.put("counts", rounded(reading.plan().counts()));
        node.put("flows", reading.plan().flows());
        node.put("round", reading.plan().round());
        reading.song().ifPresent(song -> song(node.putObject("song"), reading, song));
        ArrayNode steps = node.putArray("steps");
        for (int i = 0; i < reading.places().size(); i++) {
            step(steps.addObject(), reading, i);
        }
        ArrayNode transitions = node.putArray("transitions");
        for (int i = 0; i < reading.plan().joints().size(); i++) {
            joint(transitions.addObject(), reading, i);
        }
        work(node.putObject("work"), reading.work());
        ToldJson.put(node.putArray("faults"), reading.faults());
        return node;
    }

    private static void step(ObjectNode node, SetReading reading, int i) {
        SetPlaces.Place place = reading.places().get(i);
        node.put("name", place.name());
        place.id().ifPresent(id -> node.put("id", id));
        place.was().ifPresent(was -> node.put("was", was));
        place.pattern().flatMap(PatternDocument::phrase).ifPresent(p -> node.put("phrase", p));
        node.put("counts_asked", place.step().counts());
        if (place.missing()) {
            node.put("missing", true);
            ToldJson.put(
                    node.putObject("missing_told"), TellSet.gone(place.name(), place.unread()));
        }
        reading.plan().stays().get(i).ifPresent(stay -> kept(node, stay, reading.kept(i)));
        if (!place.missing()) {
            node.put("danger", Keys.word(reading.level(i)));
            reading.danger(i).ifPresent(told -> ToldJson.put(node.putObject("danger_told"), told));
        }
        place.step().beatsACycle().ifPresent(beats -> node.put("beats_a_cycle_asked", beats));
        reading.inSong(i).ifPresent(at -> inSong(node.putObject("in_song"), reading, at));
        reading.turn(i).ifPresent(turn -> turn(node.putObject("turn"), turn));
        place.pattern().ifPresent(pattern -> node.set("pattern", PatternJson.tree(pattern)));
    }

    private static void kept(ObjectNode node, Stay stay, List<Told> told) {
        node.put("counts", rounded(stay.counts()));
        node.put("starts_s", rounded(stay.starts()));
        node.put("seconds", rounded(stay.seconds()));
        node.put("entered_s", rounded(stay.entered()));
        node.put("count_s", rounded(stay.wanted().count()));
        node.put("tempo_cycles_per_min", rounded(stay.wanted().pairing().tempo()));
        ToldJson.put(node.putObject("kept_told"), told.get(0));
        node.put("reached", TellSet.reached(stay));
        ToldJson.put(node.putObject("reach_told"), TellSet.reach(stay));
    }

    private static void song(ObjectNode node, SetReading reading, SongPlace song) {
        node.put("id", song.asked().id());
        node.put("name", song.name());
        node.put("from_beat", song.asked().fromBeat());
        song.was().ifPresent(was -> node.put("was", was));
        if (song.beats().isEmpty()) {
            node.put("missing", true);
        }
        reading.plan()
                .song()
                .ifPresent(
                        to -> {
                            node.put("tempo_beats_per_min", rounded(to.tempo()));
                            node.put("beats_a_bar", to.beats().beatsABar());
                            node.put("starts_s", rounded(to.clock().time(0)));
                            ToldJson.put(
                                    node.putArray("told"),
                                    TellSungSet.whole(reading.plan(), to, song.name()));
                        });
    }

    private static void inSong(ObjectNode node, SetReading reading, InSong at) {
        ToSong song = reading.plan().song().orElseThrow();
        int beat = (int) Math.rint(at.beat());
        node.put("beat", beat);
        node.put("bar", song.beats().bar(beat));
        node.put("in_bar", song.beats().inBar(beat));
        node.put("starts_s", rounded(at.time()));
        Stay stay = reading.plan().stays().get(at.step()).orElseThrow();
        node.put("counts", rounded(at.counts()));
        node.put("one_s", rounded(stay.one()));
        node.put("beats_a_cycle", rounded(at.beatsACycle()));
        node.put("own_time", at.ownTime());
        node.put("slowest_beats_per_min", rounded(at.tempi().slowest()));
        node.put("fastest_beats_per_min", rounded(at.tempi().fastest()));
        node.put("slowest_cycles_per_min", rounded(at.tempi().slowest() / at.beatsACycle()));
        node.put("fastest_cycles_per_min", rounded(at.tempi().fastest() / at.beatsACycle()));
        at.pendulum()
                .ifPresent(
                        pendulum ->
                                node.putObject("pendulum")
                                        .put("beats_a_swing", rounded(pendulum.beats()))
                                        .put("whole_beats", pendulum.whole())
                                        .put("tether_m", rounded(pendulum.tether())));
        ToldJson.put(node.putObject("told"), TellSungSet.start(at, stay, song));
        ToldJson.put(node.putArray("asked"), TellSungSet.asked(at));
    }

    private static void turn(ObjectNode node, TurnLoad load) {
        TurnMade turning = load.turning();
        node.put("turn_deg", 90 * turning.quarters());
        node.put("count", rounded(turning.count()));
        node.put("starts_s", rounded(turning.starts()));
        node.put("seconds", rounded(turning.seconds()));
        node.put("fastest_deg_per_s", rounded(Math.toDegrees(turning.fastest())));
        for (Side side : Side.values()) {
            TurnLoad.Cord cord = load.cord(side);
            node.putObject(side.word())
                    .put("pull_change_weights", rounded(cord.pull()))
                    .put("across_weights", rounded(cord.across()))
                    .put("lag_deg", rounded(Math.toDegrees(cord.lag())))
                    .put("least_weights", rounded(cord.least()));
        }
        ToldJson.put(node.putArray("told"), TellSet.turn(load));
    }

    private static void joint(ObjectNode node, SetReading reading, int i) {
        Joint joint = reading.plan().joints().get(i);
        node.put("after", i);
        node.put("way", Keys.word(joint.way()));
        node.put("starts_s", rounded(joint.starts()));
        node.put("seconds", rounded(joint.seconds()));
        List<String> names = reading.names();
        Told told = TellSet.joint(joint, names.get(i), names.get((i + 1) % names.size()));
        boolean none = joint.way() == Joint.Way.NONE || joint.way() == Joint.Way.GONE;
        ToldJson.put(node.putObject(none ? "none" : "told"), told);
        joint.transition().ifPresent(transition -> led(node, transition));
    }

    private static void led(ObjectNode node, Transition transition) {
        node.put("grade", Keys.word(transition.grade()));
        TransitionKind left = transition.left().kind();
        TransitionKind right = transition.right().kind();
        node.put("kind", Keys.word(left.compareTo(right) >= 0 ? left : right));
        for (Side side : Side.values()) {
            ObjectNode hand = node.putObject(side.word());
            hand.put("kind", Keys.word(transition.bridge(side).kind()));
            hand.put("leaves_s", rounded(transition.bridge(side).leaves()));
            hand.put("seconds", rounded(transition.bridge(side).seconds()));
        }
    }

    private static void work(ObjectNode node, SetWork work) {
        numbers(node.putArray("times_s"), work.times());
        node.put("unit", "N·s");
        for (Side side : Side.values()) {
            ObjectNode arm = node.putObject(side.word());
            numbers(arm.putArray("grip"), work.arm(side).grip());
            numbers(arm.putArray("shoulder"), work.arm(side).shoulder());
        }
        node.put("patterns_not_read", work.unread());
    }

    private static void numbers(ArrayNode into, List<Double> numbers) {
        numbers.forEach(number -> into.add(rounded(number)));
    }
}
