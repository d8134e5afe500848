package deferent.record;

import deferent.motion.pairing.Side;
import deferent.motion.trace.Interval;
import deferent.reading.tether.Away;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.KeepTheHandPath;
import deferent.reading.tether.LinkedTruth;
import deferent.reading.tether.Pull;
import deferent.reading.tether.SlowestTempo;
import deferent.reading.tether.Steadiness;
import deferent.reading.worked.CordReading;
import deferent.search.whole.Readings;
import java.util.List;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * What a cord makes of both hands, as part of the readings' object: pull, what the hand or the head
 * does where figure or hand path is kept, steadiness, slowest tempo.
 *
 * <p>Turns and growth of a kept hand path count over one of that hand's own cycles, of which the
 * common one may hold several. A slowest tempo has a fastest beside it where faster it works no
 * longer.
 */
final class CordJson {
    private CordJson() {}

    static void put(ObjectNode node, Readings readings) {
        ObjectNode pull = node.putObject("pull");
        ObjectNode figureKept = node.putObject("figure_kept");
        ObjectNode handPathKept = node.putObject("hand_path_kept");
        ObjectNode steadiness = node.putObject("steadiness");
        ObjectNode slowest = node.putObject("slowest");
        readings.advice()
                .ifPresent(
                        advice ->
                                ReadingsJson.put(node, "linked", advice.truth(), CordJson::truth));
        for (Side side : Side.values()) {
            CordReading cord = readings.cord(side);
            ReadingsJson.put(pull, side.word(), cord.pull(), CordJson::pull);
            ReadingsJson.put(figureKept, side.word(), cord.figureKept(), CordJson::figureKept);
            ReadingsJson.put(
                    handPathKept, side.word(), cord.handPathKept(), CordJson::handPathKept);
            ObjectNode held = steadiness.putObject(side.word());
            ReadingsJson.put(
                    held, "hand_path_kept", cord.handPathSteadiness(), CordJson::steadiness);
            ReadingsJson.put(held, "figure_kept", cord.figureSteadiness(), CordJson::steadiness);
            ReadingsJson.put(slowest, side.word(), cord.slowest(), CordJson::slowest);
        }
    }

    /** Whether a link of the ideal survives real cords. */
    private static void truth(ObjectNode node, LinkedTruth truth) {
        node.put("head", truth.carrier().word());
        node.put("hand", truth.carrier().other().word());
        node.put("verdict", Keys.word(truth.verdict()));
        ReadingsJson.put(node, "tolerance_m", truth.tolerance());
        away(node.putObject("figure_kept"), truth.figureKept());
        truth.carriersHand().ifPresent(a -> away(node.putObject("carrier_keeps_hand_path"), a));
        truth.riding().ifPresent(r -> away(node.putObject("rider_gives"), r.away()));
    }

    private static void pull(ObjectNode node, Pull pull) {
        ReadingsJson.put(node, "head_weight_n", pull.headWeight());
        ReadingsJson.put(node, "least_n", pull.least());
        ReadingsJson.put(node, "least_weights", pull.least() / pull.headWeight());
        ReadingsJson.put(node, "least_time_s", pull.leastTime());
        ReadingsJson.put(node, "greatest_n", pull.greatest());
        ReadingsJson.put(node, "greatest_weights", pull.greatest() / pull.headWeight());
        ReadingsJson.put(node, "greatest_time_s", pull.greatestTime());
        ReadingsJson.put(node, "mean_n", pull.mean());
        ReadingsJson.put(node, "sideways_n", pull.sideways());
        ReadingsJson.put(node, "hand_force_n", pull.handForce());
        ReadingsJson.put(node, "hand_power_w", pull.handPower());
        ReadingsJson.put(node, "hand_work_j", pull.handWork());
        ReadingsJson.put(node, "gravity_power_w", pull.gravityPower());
        ReadingsJson.put(node, "gravity_work_j", pull.gravityWork());
        intervals(node.putArray("gravity_helps"), pull.gravityHelps());
        ReadingsJson.put(node, "head_speed_m_per_s", pull.headSpeed());
        ReadingsJson.put(node, "head_energy_j", pull.energy());
        intervals(node.putArray("slack"), pull.slack());
        ArrayNode jerks = node.putArray("impulses");
        for (Pull.Jerk jerk : pull.jerks()) {
            ObjectNode one = jerks.addObject();
            ReadingsJson.put(one, "time_s", jerk.time());
            ReadingsJson.put(one, "along_n_s", jerk.along());
            ReadingsJson.put(one, "across_n_s", jerk.across());
            one.put("why", jerk.why());
        }
    }

    private static void figureKept(ObjectNode node, KeepTheFigure kept) {
        away(node.putObject("from_ideal_hand"), kept.away());
        ReadingsJson.put(node, "least_weights", kept.leastPull() / kept.cord().headWeight());
        ReadingsJson.put(node, "hand_speed_m_per_s", kept.handSpeed());
        node.put("turns", kept.turns());
        node.put("ideal_turns", kept.idealTurns());
        ArrayNode falls = node.putArray("free_falls_s");
        kept.freeFalls().forEach(f -> falls.add(ReadingsJson.rounded(f.time())));
        ArrayNode jumps = node.putArray("jumps_s");
        kept.jumps().forEach(t -> jumps.add(ReadingsJson.rounded(t)));
    }

    private static void handPathKept(ObjectNode node, KeepTheHandPath kept) {
        node.put("turns", kept.turns());
        ArrayNode solutions = node.putArray("solutions");
        for (KeepTheHandPath.Solution solution : kept.solutions()) {
            ObjectNode one = solutions.addObject();
            away(one.putObject("from_ideal_head"), solution.away());
            ReadingsJson.put(one, "least_weights", solution.leastPullWeights());
            ReadingsJson.put(one, "growth_a_cycle", solution.growth());
            one.put("pulls", solution.pulls());
            one.put("as_meant", solution.asMeant());
        }
        ObjectNode tried = node.putObject("tried");
        tried.put("starts", kept.tried().starts());
        tried.put("settled", kept.tried().settled());
        tried.put("other_turns", kept.tried().otherTurns());
    }

    private static void steadiness(ObjectNode node, Steadiness steadiness) {
        node.put("verdict", Keys.word(steadiness.verdict()));
        ReadingsJson.put(node, "growth_a_cycle", steadiness.growth());
        ReadingsJson.put(node, "reaction_s", steadiness.reaction());
        ReadingsJson.put(node, "growth_in_reaction", steadiness.growthInReaction());
        ReadingsJson.put(node, "correct_at_s", steadiness.leverageTime());
    }

    private static void slowest(ObjectNode node, SlowestTempo slowest) {
        limit(node.putObject("ideal"), slowest.ideal());
        limit(node.putObject("figure_kept"), slowest.figureKept());
        limit(node.putObject("hand_path_kept"), slowest.handPathKept());
        slowest.gravityAlone().ifPresent(s -> ReadingsJson.put(node, "gravity_alone_s", s));
    }

    private static void limit(ObjectNode node, SlowestTempo.Limit limit) {
        node.put("reason", Keys.word(limit.reason()));
        limit.tempo().ifPresent(t -> ReadingsJson.put(node, "tempo_cycles_per_min", t));
        limit.fastest().ifPresent(t -> ReadingsJson.put(node, "fastest_cycles_per_min", t));
        limit.phase().ifPresent(p -> ReadingsJson.put(node, "phase_cycles", p));
    }

    private static void away(ObjectNode node, Away away) {
        ReadingsJson.put(node, "greatest_m", away.greatest());
        ReadingsJson.put(node, "mean_m", away.mean());
        ReadingsJson.put(node, "from_path_greatest_m", away.fromPath());
        ReadingsJson.put(node, "from_path_mean_m", away.fromPathMean());
    }

    private static void intervals(ArrayNode array, List<Interval> intervals) {
        for (Interval interval : intervals) {
            ObjectNode one = array.addObject();
            ReadingsJson.put(one, "from_s", interval.start());
            ReadingsJson.put(one, "to_s", interval.end());
        }
    }
}
