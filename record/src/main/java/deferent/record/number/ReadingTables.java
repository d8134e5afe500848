package deferent.record.number;

import deferent.motion.pairing.Part;
import deferent.motion.pairing.Plane;
import deferent.motion.shared.Side;
import deferent.motion.trace.Figure;
import deferent.motion.trace.Interval;
import deferent.reading.body.ArmThrough;
import deferent.reading.body.ArmThrough.What;
import deferent.reading.body.Bend;
import deferent.reading.body.BodyOutline;
import deferent.reading.body.HandReach;
import deferent.reading.body.Lying;
import deferent.reading.body.Pass;
import deferent.reading.body.Pass.Kind;
import deferent.reading.body.Pass.Thing;
import deferent.reading.body.Passes;
import deferent.reading.body.Passing;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.reading.body.Room;
import deferent.reading.body.SideRoom;
import deferent.reading.body.TrunkTurn;
import deferent.reading.link.LinkReading;
import deferent.reading.link.MirroredHands;
import deferent.reading.shared.LinkKind;
import deferent.reading.tether.LinkedTruth;
import deferent.reading.worked.Worked;
import deferent.search.whole.Advice;
import deferent.search.whole.Readings;
import deferent.tell.Telling;
import deferent.tell.Told;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** What is read of a pairing: a table a reading, and {@link #READINGS} for the whole. */
public final class ReadingTables {
    private ReadingTables() {}

    /** One hand of a pairing, and the head on its cord. */
    public record OneSide(Readings readings, Side side) {
        /** By side. */
        public static Function<Side, Worked<OneSide>> of(Readings readings) {
            return side -> new Worked.Out<>(new OneSide(readings, side));
        }

        private Part part() {
            return readings.pairing().part(side);
        }

        private Worked<LinkReading> link() {
            return readings.link(side);
        }

        /** A rider's path has no size of its own: it is the carrier's head path. */
        private Worked<Double> radius() {
            return part().motion().riding()
                    ? readings.link(side.other()).as("hand radius", LinkReading::handRadius)
                    : new Worked.Out<>(part().motion().path().radius());
        }
    }

    private static final Written<Double> METRES = Written.number("_m");

    private static final Written<Vector3D> VECTOR =
            METRES.listed(3).from(v -> List.of(v.getX(), v.getY(), v.getZ()));

    private static final Written<Interval> FROM_TO =
            Written.number("_s").listed(2).from(spell -> List.of(spell.start(), spell.end()));

    public static final Table<Figure> FIGURE =
            Table.<Figure>named("figure")
                    .number("width_m", "figure's width", Figure::width)
                    .number("height_m", "figure's height", Figure::height)
                    .number("signed_area_m2", "area, signed", Figure::signedArea)
                    .number("union_area_m2", "area gone round", Figure::unionArea)
                    .number("length_m", "figure's length", Figure::length)
                    .number("outer_radius_m", "farthest out", Figure::outerRadius)
                    .whole("petals", "petals", Figure::petals)
                    .whole("cusps", "cusps", Figure::cusps)
                    .whole("symmetry_order", "symmetry order", Figure::symmetryOrder)
                    .whole("self_crossings", "crosses itself", Figure::selfCrossings)
                    .telling("width_m", "height_m", "outer_radius_m", "length_m", "petals");

    public static final Table<OneSide> HAND =
            Table.<OneSide>named("hand")
                    .text("motion", "motion", one -> one.readings().hand(one.side()).motion())
                    .number("tether_m", "tether", one -> one.part().tether().length())
                    .value("hand_radius_m", "hand radius", METRES.worked(), OneSide::radius)
                    .maybe("eased_m", "eased off its ideal", one -> one.part().eased())
                    .worked("figure", FIGURE, one -> one.readings().figure(one.side()));

    public static final Table<LinkReading> LINK =
            Table.<LinkReading>named("link")
                    .word("head", "", Side.class, LinkReading::carrier)
                    .word("hand", "", Side.class, link -> link.carrier().other())
                    .word("kind", "kind", LinkKind.class, LinkReading::kind)
                    .number("tolerance_m", "links within", LinkReading::tolerance)
                    .number("shape_gap_m", "at best, as shapes", LinkReading::shapeGap)
                    .maybe("shape_gap_error_m", "its error at most", ReadingTables::error)
                    .number("shape_gap_at_least_m", "surely at least", LinkReading::shapeGapAtLeast)
                    .yes("shape_gap_is_estimate", "an estimate", LinkReading::quick)
                    .number("clock_gap_m", "at best, in time", LinkReading::clockGap)
                    .number("lag_cycles", "lag", LinkReading::lag)
                    .number("placed_gap_m", "apart now, at most", LinkReading::placedGap)
                    .number("inplane_gap_m", "apart now, in plane", LinkReading::inPlaneGap)
                    .number("depth_gap_m", "apart now, across it", LinkReading::depthGap)
                    .value("offset_m", "hand from head, mean", VECTOR, LinkReading::offset)
                    .number("worst_time_s", "farthest apart at", LinkReading::worstTime)
                    .number("share_of_figure", "best, share of width", LinkReading::shareOfFigure)
                    .number("hands_breadths", "best, hands' breadths", LinkReading::handsBreadths)
                    .telling(
                            "kind",
                            "placed_gap_m",
                            "inplane_gap_m",
                            "depth_gap_m",
                            "shape_gap_m",
                            "shape_gap_error_m",
                            "clock_gap_m",
                            "lag_cycles");

    /** An estimate makes no promise of its error. */
    private static OptionalDouble error(LinkReading link) {
        return link.quick() ? OptionalDouble.empty() : OptionalDouble.of(link.shapeGapError());
    }

    private static final Table<OneSide> NO_LINK =
            Table.<OneSide>named("link_not_worked_out")
                    .word("head", "", Side.class, OneSide::side)
                    .word("hand", "", Side.class, one -> one.side().other())
                    .text(
                            "not_worked_out",
                            "why it could not be worked out",
                            one -> one.link().failure().orElseThrow().reason());

    private static final Written<OneSide> EITHER_LINK =
            LINK.written()
                    .from((OneSide one) -> one.link().reading().orElseThrow())
                    .unless(one -> one.link().failure().isPresent(), NO_LINK.written());

    private static final Table<Lying> LYING =
            Table.<Lying>named("lying")
                    .word("nearest", "plane of the trade", Plane.Kind.class, Lying::nearest)
                    .number("off_deg", "how far it leans from it", l -> Math.toDegrees(l.off()));

    private static final Table<Passing> PASSING =
            Table.<Passing>named("passing")
                    .spell(Passing::spell)
                    .number("depth_between_m", "depth between them", Passing::depthBetween)
                    .value("in_front", "in front", Written.word(Side.class).maybe(), Passing::front)
                    .part("left_plane", LYING, Passing::leftLies)
                    .part("right_plane", LYING, Passing::rightLies);

    private static final Table<SideRoom> SIDE_ROOM =
            Table.<SideRoom>named("side_room")
                    .near("head_to_other_hand", "head to other hand", SideRoom::headToOtherHand)
                    .near("head_to_body", "head to body", SideRoom::headToBody)
                    .near("hand_to_body", "hand to body", SideRoom::handToBody)
                    .near("tether_to_body", "tether to body", SideRoom::tetherToBody)
                    .word(
                            "nearest_part",
                            "nearest of the body",
                            BodyOutline.Part.class,
                            SideRoom::nearestPart);

    private static final Table<Room> ROOM =
            Table.<Room>named("room")
                    .near("head_to_head", "head to head", Room::headToHead)
                    .near("tether_to_tether", "tether to tether", Room::tetherToTether)
                    .sides(SIDE_ROOM.written(), Room::side)
                    .list("tethers_cross_in_view", "passings", PASSING.written(), Room::passings);

    private static final Table<Performer> PERFORMER =
            Table.<Performer>named("performer")
                    .number("stature_m", "stature", Performer::stature)
                    .yes("stature_is_assumed", "whether nobody said it", Performer::assumed)
                    .number("arm_m", "arm from shoulder to grip", Performer::arm)
                    .number("shoulder_width_m", "shoulder width", Performer::shoulderWidth);

    public static final Table<HandReach> HAND_REACH =
            Table.<HandReach>named("hand_reach")
                    .yes("everywhere", "in reach everywhere", HandReach::everywhere)
                    .number("farthest_m", "farthest from shoulder", HandReach::farthest)
                    .number("farthest_time_s", "when", HandReach::farthestTime)
                    .number("nearest_m", "nearest to shoulder", HandReach::nearest)
                    .number("nearest_time_s", "when", HandReach::nearestTime)
                    .number("too_far_m", "arm too short by", HandReach::tooFar)
                    .number("too_near_m", "too near by", HandReach::tooNear)
                    .list("out_of_reach_s", "times out of reach", FROM_TO, HandReach::missing)
                    .value(
                            "largest_hand_radius_m",
                            "largest in reach",
                            METRES.maybe("none"),
                            reach -> reach.largestRadius().stream().boxed().findFirst());

    private static final Table<Reach> HANDS =
            Table.<Reach>named("hands_reach")
                    .near("least_distance", "hand to hand", Reach::hands)
                    .yes("meet", "whether the hands meet", Reach::handsMeet);

    private static final Table<TrunkTurn> TRUNK =
            Table.<TrunkTurn>named("trunk_turn")
                    .yes("reached", "in reach with the trunk turned", TrunkTurn::reached)
                    .number("turn_deg", "trunk turned by", t -> Math.toDegrees(t.greatest()))
                    .number("turn_time_s", "when", TrunkTurn::greatestTime)
                    .word("turned_to", "to its", Side.class, TrunkTurn::toThe)
                    .number("too_far_m", "an arm still too short by", TrunkTurn::tooFar)
                    .word("too_far_hand", "whose", Side.class, TrunkTurn::tooFarSide)
                    .number("too_far_time_s", "when", TrunkTurn::tooFarTime);

    private static final Table<Bend> BEND =
            Table.<Bend>named("bend")
                    .yes("reached", "in reach with the body bent", Bend::reached)
                    .number("shoulders_forward_m", "shoulders forward by", Bend::forward)
                    .number("shoulders_raised_m", "shoulders raised by", Bend::raised)
                    .number("lean_deg", "leans forward by", b -> Math.toDegrees(b.lean()))
                    .number("aside_deg", "leans to the left by", b -> Math.toDegrees(b.aside()))
                    .part("trunk", TRUNK, Bend::trunk);

    private static final Table<Reach> REACH =
            Table.<Reach>named("reach")
                    .part("performer", PERFORMER, Reach::performer)
                    .sides(HAND_REACH.written(), Reach::hand)
                    .part("hands", HANDS, reach -> reach)
                    .part("trunk", TRUNK, Reach::trunk)
                    .value(
                            "bend",
                            "bent beside, where turning alone falls short",
                            BEND.written().maybe(),
                            Reach::bend);

    private static final Table<ArmThrough> ARM_THROUGH =
            Table.<ArmThrough>named("arm_in_the_way")
                    .word("arm", "whose arm", Side.class, ArmThrough::side)
                    .yes("forearm", "whether it is the forearm", ArmThrough::forearm)
                    .word(
                            "of",
                            "of the other's cord or arm, or the body",
                            What.class,
                            ArmThrough::what)
                    .number("time_s", "when first", ArmThrough::time);

    private static final Table<Pass.Thing> THING =
            Table.<Pass.Thing>named("passing_thing")
                    .word("what", "cord, part of an arm or of the body", Kind.class, Thing::kind)
                    .value("side", "whose", Written.word(Side.class).maybe(), Thing::side);

    private static final Table<Pass> PASS =
            Table.<Pass>named("pass")
                    .part("one", THING, Pass::one)
                    .word("way", "seen from the audience or above", Pass.Way.class, Pass::way)
                    .part("other", THING, Pass::other)
                    .spell(Pass::spell)
                    .number("time_s", "the middle of it", Pass::time)
                    .number("by_m", "how far apart then, along the view", Pass::by);

    private static final Table<Passes> PASSES =
            Table.<Passes>named("passes")
                    .yes(
                            "left_arm",
                            "whether the left arm is in reach and compared",
                            Passes::leftArm)
                    .yes("right_arm", "the same of the right one", Passes::rightArm)
                    .list("all", "by time", PASS.written(), Passes::all);

    /** Sentences, as an object each. */
    public static final Table<Told> TOLD =
            Table.<Told>named("told")
                    .text("key", "which reading it says", Told::key)
                    .word("tone", "how to take it", Told.Tone.class, Told::tone)
                    .text("text", "the sentence", Told::text)
                    .text("why", "where it comes from", Told::why);

    /** What binds the hands of a weave. */
    private static final Table<MirroredHands> MIRRORED =
            Table.<MirroredHands>named("hands_mirrored")
                    .number("gap_m", "hands in a mirror, apart at most", MirroredHands::gap)
                    .number("lag_cycles", "the right hand later by", MirroredHands::lag);

    public static final Table<Readings> READINGS =
            Table.<Readings>named("readings")
                    .value("phrase", "in trade words", Written.text().maybe(), Readings::phrase)
                    .number("tempo_cycles_per_min", "tempo", all -> all.pairing().tempo())
                    .number("period_s", "one cycle", all -> all.pairing().period())
                    .value(
                            "danger_level",
                            "the gravest level of what can hurt",
                            DangerTables.LEVEL,
                            DangerTables::level)
                    .value(
                            "dangers",
                            "what asks for care or is a danger",
                            DangerTables.ALL,
                            DangerTables::all)
                    .value(
                            "dangers_not_looked_at",
                            "readings that were not there to be looked at",
                            DangerTables.UNKNOWN,
                            DangerTables::unknown)
                    .value(
                            "dangers_for_heads",
                            "for which heads",
                            DangerTables.HEADS,
                            DangerTables::heads)
                    .sides("hands", HAND.written(), OneSide::new)
                    .value(
                            "links",
                            "the left head's, then the right head's",
                            EITHER_LINK.listed(2),
                            a -> List.of(new OneSide(a, Side.LEFT), new OneSide(a, Side.RIGHT)))
                    .maybe("hands_mirrored", MIRRORED, all -> MirroredHands.of(all.trace()))
                    .worked("room", ROOM, Readings::room)
                    .worked("reach", REACH, Readings::reach)
                    .value(
                            "arms_in_the_way",
                            "arms that no way of holding the elbows clears",
                            ARM_THROUGH.written().listed().worked().whereAsked(),
                            ReadingTables::arms)
                    .value(
                            "passes",
                            "what passes before or over what",
                            PASSES.written().worked().whereAsked(),
                            ReadingTables::passes)
                    .sides("pull", CordTables.PULL.written().worked(), (a, s) -> a.cord(s).pull())
                    .sides("figure_kept", CordTables.FIGURE_KEPT, (a, s) -> a.cord(s).figureKept())
                    .sides(
                            "closest_figure",
                            CordTables.CLOSEST_FIGURE,
                            (all, side) -> all.cord(side).closestFigure())
                    .sides(
                            "hand_path_kept",
                            CordTables.HAND_PATH_KEPT,
                            (all, side) -> all.cord(side).handPathKept())
                    .sides("steadiness", CordTables.STEADINESS.written(), Readings::cord)
                    .sides("correction", CordTables.CORRECTED, (a, s) -> a.cord(s).correction())
                    .sides("slowest", CordTables.SLOWEST, (all, side) -> all.cord(side).slowest())
                    .value("linked", "", CordTables.LINKED, ReadingTables::truth)
                    .list("told", "the readings in sentences", TOLD.written(), Telling::of)
                    .list("cautions", "what to mind", Written.text(), all -> Telling.cautions());

    private static Worked<List<ArmThrough>> arms(Readings all) {
        return all.advice().map(Advice::arms).orElseGet(Worked::unasked);
    }

    private static Worked<Passes> passes(Readings all) {
        return all.advice().map(Advice::passes).orElseGet(Worked::unasked);
    }

    private static Worked<LinkedTruth> truth(Readings all) {
        return all.advice().map(Advice::truth).orElseGet(Worked::unasked);
    }
}
