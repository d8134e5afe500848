package deferent.record.number;

import deferent.motion.pairing.HandLimits;
import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import deferent.reading.body.HandPace;
import deferent.reading.closest.ClosestFigure;
import deferent.reading.closest.HandBound;
import deferent.reading.tether.Away;
import deferent.reading.tether.Correction;
import deferent.reading.tether.Correction.Once;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.KeepTheFigure.FreeFall;
import deferent.reading.tether.KeepTheHandPath;
import deferent.reading.tether.KeepTheHandPath.Solution;
import deferent.reading.tether.KeepTheHandPath.Tried;
import deferent.reading.tether.LinkedTruth;
import deferent.reading.tether.LinkedTruth.Verdict;
import deferent.reading.tether.Pull;
import deferent.reading.tether.Pull.Jerk;
import deferent.reading.tether.SlowestTempo;
import deferent.reading.tether.SlowestTempo.Limit;
import deferent.reading.tether.Steadiness;
import deferent.reading.worked.CordReading;
import deferent.reading.worked.Worked;
import java.util.OptionalDouble;

/**
 * What a cord makes of one hand: pull, what the hand or the head does where figure or hand path is
 * kept, steadiness, slowest tempo.
 *
 * <p>Turns and growth of a kept hand path count over one of that hand's own cycles, of which the
 * common one may hold several. A slowest tempo has a fastest beside it where faster it works no
 * longer.
 */
final class CordTables {
    private CordTables() {}

    private static final Table<Interval> SPELL = Table.<Interval>named("spell").spell(s -> s);

    private static final Table<Jerk> IMPULSE =
            Table.<Jerk>named("impulse")
                    .number("time_s", "when", Jerk::time)
                    .number("along_n_s", "impulse toward the hand", Jerk::along)
                    .number("across_n_s", "impulse across the cord", Jerk::across)
                    .text("why", "why", Jerk::why);

    static final Table<Pull> PULL =
            Table.<Pull>named("pull")
                    .number("head_weight_n", "one head weight", Pull::headWeight)
                    .number("least_n", "least pull", Pull::least)
                    .number("least_weights", "least pull", Pull::leastWeights)
                    .number("least_time_s", "when", Pull::leastTime)
                    .number("greatest_n", "greatest pull", Pull::greatest)
                    .number("greatest_weights", "greatest pull", Pull::greatestWeights)
                    .number("greatest_time_s", "when", Pull::greatestTime)
                    .number("mean_n", "mean pull", Pull::mean)
                    .number("sideways_n", "greatest force across the cord", Pull::sideways)
                    .number("hand_force_n", "greatest force on the hand", Pull::handForce)
                    .number("hand_power_w", "greatest power of the hand", Pull::handPower)
                    .number("hand_work_j", "work of the hand", Pull::handWork)
                    .number("gravity_power_w", "greatest power of gravity", Pull::gravityPower)
                    .number("gravity_work_j", "work of gravity, down", Pull::gravityWork)
                    .list("gravity_helps", "when", SPELL.written(), Pull::gravityHelps)
                    .number("head_speed_m_per_s", "head's greatest speed", Pull::headSpeed)
                    .number("head_energy_j", "its energy then", Pull::energy)
                    .list("slack", "when the cord is slack", SPELL.written(), Pull::slack)
                    .list("impulses", "infinite forces", IMPULSE.written(), Pull::jerks);

    private static final Table<Away> AWAY =
            Table.<Away>named("away")
                    .number("greatest_m", "farthest at one instant", Away::greatest)
                    .number("mean_m", "on average", Away::mean)
                    .number("from_path_greatest_m", "farthest from the path", Away::fromPath)
                    .number("from_path_mean_m", "on average from it", Away::fromPathMean)
                    .number("missed_m", "the path farthest from it", Away::missed);

    private static final Written<Double> JUMP = Written.number("jumps_s");
    private static final Written<FreeFall> FALL = JUMP.from(FreeFall::time);

    static final Written<Worked<KeepTheFigure>> FIGURE_KEPT =
            Table.<KeepTheFigure>named("figure_kept")
                    .part("from_ideal_hand", AWAY, KeepTheFigure::away)
                    .number("least_weights", "least pull", KeepTheFigure::leastPullWeights)
                    .number("hand_speed_m_per_s", "hand's greatest speed", KeepTheFigure::handSpeed)
                    .maybe(
                            "hand_acceleration_m_per_s2",
                            "hand's greatest acceleration",
                            CordTables::handAcceleration)
                    .whole("turns", "turns of the cord", KeepTheFigure::turns)
                    .whole("ideal_turns", "its turns in the ideal", KeepTheFigure::idealTurns)
                    .list("free_falls_s", "free falls", FALL, KeepTheFigure::freeFalls)
                    .list("jumps_s", "the hand would jump", JUMP, KeepTheFigure::jumps)
                    .whereAsked();

    private static final Table<HandLimits> LIMITS =
            Table.<HandLimits>named("hand_limits")
                    .number("speed_m_per_s", "a hand's speed at most", HandLimits::speed)
                    .number(
                            "acceleration_m_per_s2",
                            "its acceleration at most",
                            HandLimits::acceleration)
                    .maybe("jerk_m_per_s3", "its jerk at most", HandLimits::jerk)
                    .number("pull_weights", "pull at least", HandLimits::leastPull)
                    .maybe("leave_m", "from its path at most", HandLimits::leave);

    static final Written<Worked<ClosestFigure>> CLOSEST_FIGURE =
            Table.<ClosestFigure>named("closest_figure")
                    .part("from_ideal_head", AWAY, ClosestFigure::figure)
                    .part("from_ideal_hand", AWAY, ClosestFigure::path)
                    .number("hand_speed_m_per_s", "hand's greatest speed", ClosestFigure::handSpeed)
                    .number(
                            "hand_acceleration_m_per_s2",
                            "hand's greatest acceleration",
                            ClosestFigure::handAcceleration)
                    .number("hand_jerk_m_per_s3", "hand's greatest jerk", ClosestFigure::handJerk)
                    .number("least_weights", "least pull", ClosestFigure::leastPull)
                    .number("least_time_s", "when", ClosestFigure::leastPullTime)
                    .whole("turns", "turns of the cord", ClosestFigure::turns)
                    .list(
                            "binding",
                            "bounds it comes up to",
                            Written.word(HandBound.class),
                            ClosestFigure::binding)
                    .yes("limits_met", "all bounds kept", ClosestFigure::met)
                    .part("limits", LIMITS, ClosestFigure::limits)
                    .whereAsked();

    private static final Table<Solution> SOLUTION =
            Table.<Solution>named("solution")
                    .part("from_ideal_head", AWAY, Solution::away)
                    .number("least_weights", "least pull", Solution::leastPullWeights)
                    .number("growth_a_cycle", "growth in a cycle", Solution::growth)
                    .yes("pulls", "pulls throughout", Solution::pulls)
                    .yes("as_meant", "the motion that was said", Solution::asMeant);

    private static final Table<Tried> TRIED =
            Table.<Tried>named("tried")
                    .whole("starts", "starts tried", Tried::starts)
                    .whole("settled", "that came to a motion", Tried::settled)
                    .whole("other_turns", "of other turns", Tried::otherTurns);

    static final Written<Worked<KeepTheHandPath>> HAND_PATH_KEPT =
            Table.<KeepTheHandPath>named("hand_path_kept")
                    .whole("turns", "turns of the cord", KeepTheHandPath::turns)
                    .list("solutions", "best first", SOLUTION.written(), KeepTheHandPath::solutions)
                    .part("tried", TRIED, KeepTheHandPath::tried)
                    .whereAsked();

    private static final Written<Worked<Steadiness>> SLIP =
            Table.<Steadiness>named("slip")
                    .word("verdict", "of a slip", Steadiness.Verdict.class, Steadiness::verdict)
                    .number("growth_a_cycle", "growth in a cycle", Steadiness::growth)
                    .number("reaction_s", "reaction time", Steadiness::reaction)
                    .number("growth_in_reaction", "growth within it", Steadiness::growthInReaction)
                    .number("correct_at_s", "best corrected at", Steadiness::leverageTime)
                    .whereAsked();

    static final Table<CordReading> STEADINESS =
            Table.<CordReading>named("steadiness")
                    .value("hand_path_kept", "", SLIP, CordReading::handPathSteadiness)
                    .value("figure_kept", "", SLIP, CordReading::figureSteadiness);

    private static final Table<Once> ONCE =
            Table.<Once>named("once")
                    .yes("holds", "one stroke a cycle holds it", Once::holds)
                    .number("time_s", "when in the cycle", Once::time)
                    .number("left_a_cycle", "left of a slip a cycle later", Once::left);

    static final Written<Worked<Correction>> CORRECTED =
            Table.<Correction>named("correction")
                    .word("verdict", "who holds it", Correction.Verdict.class, Correction::verdict)
                    .number("reaction_s", "reaction time", Correction::reaction)
                    .number("left_a_cycle", "left of a slip a cycle later", Correction::left)
                    .number("longest_delay_s", "longest delay that holds", Correction::longest)
                    .number("recovers_m", "greatest slip that comes back", Correction::recovers)
                    .maybe("once", ONCE, Correction::once)
                    .whereAsked();

    private static final Table<Limit> LIMIT =
            Table.<Limit>named("limit")
                    .word("reason", "what gives way", SlowestTempo.Reason.class, Limit::reason)
                    .maybe("tempo_cycles_per_min", "slowest tempo", Limit::tempo)
                    .maybe("fastest_cycles_per_min", "fastest tempo", Limit::fastest)
                    .maybe("phase_cycles", "where it gives way", Limit::phase);

    static final Written<Worked<SlowestTempo>> SLOWEST =
            Table.<SlowestTempo>named("slowest")
                    .part("ideal", LIMIT, SlowestTempo::ideal)
                    .part("figure_kept", LIMIT, SlowestTempo::figureKept)
                    .part("hand_path_kept", LIMIT, SlowestTempo::handPathKept)
                    .maybe("gravity_alone_s", "gravity's own cycle", SlowestTempo::gravityAlone)
                    .whereAsked();

    /** Whether a link of the ideal survives real cords. */
    static final Written<Worked<LinkedTruth>> LINKED =
            Table.<LinkedTruth>named("linked")
                    .word("head", "", Side.class, LinkedTruth::carrier)
                    .word("hand", "", Side.class, truth -> truth.carrier().other())
                    .word("verdict", "on real cords", Verdict.class, LinkedTruth::verdict)
                    .number("tolerance_m", "links within", LinkedTruth::tolerance)
                    .part("figure_kept", AWAY, LinkedTruth::figureKept)
                    .maybe("carrier_keeps_hand_path", AWAY, LinkedTruth::carriersHand)
                    .maybe("rider_gives", AWAY, truth -> truth.riding().map(Solution::away))
                    .whereAsked();

    // Where the hand would have to jump or the cord has no direction, it has none.
    private static OptionalDouble handAcceleration(KeepTheFigure kept) {
        return kept.possible()
                ? OptionalDouble.of(HandPace.of(kept.hand(), kept.cuts()).acceleration())
                : OptionalDouble.empty();
    }
}
