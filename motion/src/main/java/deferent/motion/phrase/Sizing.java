package deferent.motion.phrase;

import static deferent.motion.trade.Word.*;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Facing;
import deferent.motion.pairing.MirrorImage;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Sense;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.shared.Side;
import deferent.motion.trade.Amount;
import deferent.motion.trade.Sizes;
import deferent.motion.trade.Unit;
import deferent.motion.trade.Word;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** Gives what was said its sizes: a phrase and a usual tether become a pairing. */
final class Sizing {
    // Which word a refusal by the pairing's values is about, by a word of its own.
    private static final List<Map.Entry<String, Word>> ABOUT =
            List.of(
                    Map.entry("tether", TETHER),
                    Map.entry("half axis", AXES),
                    Map.entry("radius", HAND_RADIUS),
                    Map.entry("amplitude", AMPLITUDE),
                    Map.entry("plane turns", PLANE_TURNS),
                    Map.entry("poi turns", TURNS),
                    Map.entry("poi turns", PETALS),
                    Map.entry("petals", PETALS),
                    Map.entry("ease", EASE),
                    Map.entry("stretch", STRETCHES),
                    Map.entry("stretch", TURNS),
                    Map.entry("cycles", CYCLES),
                    Map.entry("centre", CENTRE),
                    Map.entry("centre z", DEPTH),
                    Map.entry("tip", TIP),
                    Map.entry("swivel", SWIVEL),
                    Map.entry("start", START),
                    Map.entry("start", HAND_START),
                    Map.entry("start", TILT),
                    Map.entry("angle", HAND_START),
                    Map.entry("rest", REST),
                    Map.entry("rest", TILT),
                    Map.entry("middle", TILT),
                    Map.entry("turning plane", TOROID),
                    Map.entry("turning plane", PLANE_TURNS),
                    Map.entry("plane of a pendulum", TIP),
                    Map.entry("plane of a pendulum", FLOOR));

    /** What "turning about" says: half round to the left, and back. */
    static final Facing TURNED_ABOUT =
            Facing.of(new Facing.Turn(0.25, 0.25, 2), new Facing.Turn(0.75, 0.25, -2));

    private final String text;
    private final Said left;
    private final Said right;
    private final Map<Word, Said.Remark> shared;

    Sizing(String text, Said left, Said right, Map<Word, Said.Remark> shared) {
        this.text = text;
        this.left = left;
        this.right = right;
        this.shared = shared;
    }

    Pairing pairing(Tether usual) {
        boolean opposite = opposite();
        Sense said = sense(opposite);
        Sense sense = shared.containsKey(REVERSED) ? said.reversed() : said;
        boolean leftMirrored = sense == Sense.COUNTER_CLOCKWISE;
        Part first = part(left, Side.LEFT, leftMirrored, usual);
        Part second = part(right, Side.RIGHT, leftMirrored ^ opposite, usual);
        try {
            Pairing pairing =
                    new Pairing(
                            first,
                            second,
                            timing(),
                            opposite ? Direction.OPPOSITE : Direction.SAME,
                            sense,
                            Said.sizes(shared, 0).number(TEMPO));
            Pairing faced =
                    shared.containsKey(TURNING_ABOUT) ? pairing.with(TURNED_ABOUT) : pairing;
            return shared.containsKey(MIRRORED) ? MirrorImage.of(faced) : faced;
        } catch (Refusal refusal) {
            throw error(refusal, about(refusal), List.of());
        }
    }

    // Two senses said say the direction too.
    private boolean opposite() {
        Optional<Sense> first = sense(left.remarks());
        Optional<Sense> second = sense(right.remarks());
        if (first.isEmpty() || second.isEmpty()) {
            return shared.containsKey(OPPOSITE);
        }
        boolean differ = !first.equals(second);
        Said.Remark against = shared.get(differ ? SAME : OPPOSITE);
        if (against != null) {
            throw new PhraseError(
                    text,
                    against.spot(),
                    "the hands were said to turn " + (differ ? "against each other" : "one way"),
                    "one of the two, senses or direction",
                    List.of(),
                    List.of());
        }
        return differ;
    }

    private Sense sense(boolean opposite) {
        Optional<Sense> first = sense(left.remarks()).or(() -> sense(shared));
        Optional<Sense> second = sense(right.remarks());
        return first.or(() -> opposite ? second.map(Sense::reversed) : second)
                .orElse(Sense.CLOCKWISE);
    }

    private static Optional<Sense> sense(Map<Word, Said.Remark> said) {
        return said.containsKey(CLOCKWISE)
                ? Optional.of(Sense.CLOCKWISE)
                : said.containsKey(COUNTER_CLOCKWISE)
                        ? Optional.of(Sense.COUNTER_CLOCKWISE)
                        : Optional.empty();
    }

    /** What would be right, as a phrase's error says it. */
    static String expected(Refusal refusal) {
        return refusal.right().replaceFirst("^give ", "");
    }

    private Spot about(Refusal refusal) {
        Word word =
                switch (refusal.where()) {
                    case "tempo" -> TEMPO;
                    case "timing" -> TIMING;
                    default -> RIDING;
                };
        return Optional.ofNullable(shared.get(word))
                .or(() -> Optional.ofNullable(right.remarks().get(word)))
                .map(Said.Remark::spot)
                .orElse(left.spot().to(right.spot()));
    }

    private Timing timing() {
        OptionalDouble cycles = Said.sizes(shared, 0).number(TIMING);
        if (cycles.isPresent()) {
            return Timing.of(cycles.getAsDouble());
        }
        return shared.containsKey(SPLIT)
                ? Timing.SPLIT
                : shared.containsKey(QUARTER) ? Timing.QUARTER : Timing.TOGETHER;
    }

    private Part part(Said said, Side side, boolean mirrored, Tether usual) {
        double length = said.sizes(0).length(TETHER, usual.length());
        Sizes sizes = said.sizes(length);
        try {
            Tether tether = sizes.has(TETHER) ? Tether.of(length) : usual;
            Motion motion = said.motion(length, mirrored);
            Place place = place(sizes, side, motion);
            return new Part(
                    motion,
                    tether,
                    shared.containsKey(STACKED) ? KnownPlaces.stacked(place, side, tether) : place,
                    sizes.whole(CYCLES, 1));
        } catch (Refusal refusal) {
            Optional<Said.Remark> about = about(said, refusal);
            // Of a size unsaid, lengths are told as the trade says them.
            Unit unit = about.flatMap(r -> r.amount().unit()).orElse(Unit.CENTIMETRES);
            throw error(
                    unit.said(refusal, length),
                    about.map(Said.Remark::spot).orElse(said.spot()),
                    about.map(remark -> mending(said, remark, refusal)).orElse(List.of()));
        }
    }

    // Of a pendulum that gravity does not swing so: without that word, or an arc that is driven.
    private static List<Edit> mending(Said said, Said.Remark wrong, Refusal refusal) {
        return refusal.where().matches("(rest|plane|turning plane) of a pendulum")
                ? List.of(
                        new Edit(wrong.spot(), "", Edit.OFFERED),
                        new Edit(said.spot(), "stall", Edit.ADDED))
                : List.of();
    }

    private static Place place(Sizes sizes, Side side, Motion motion) {
        Optional<KnownPlaces> known = KnownPlaces.said(sizes::has);
        Plane.Kind unsaid =
                known.map(KnownPlaces::plane)
                        .or(() -> motion.weave().map(weave -> weave.between().plane()))
                        .orElse(Plane.Kind.WALL);
        Plane.Kind kind =
                sizes.has(WALL)
                        ? Plane.Kind.WALL
                        : sizes.has(WHEEL)
                                ? Plane.Kind.WHEEL
                                : sizes.has(FLOOR) ? Plane.Kind.FLOOR : unsaid;
        Plane plane = new Plane(kind, sizes.angle(TIP, 0), sizes.angle(SWIVEL, 0));
        Place usual = Place.usual(side, plane, motion);
        Vector3D centre =
                known.map(place -> place.centre(side, sizes.tether())).orElse(usual.centre());
        Optional<Amount.Shift> shift = sizes.shift();
        if (shift.isPresent()) {
            Vector3D to =
                    new Vector3D(
                            shift.get().left().value(),
                            shift.get().up().value(),
                            shift.get().forward().value());
            centre = shift.get().fromUsual() ? centre.add(to) : to;
        }
        if (sizes.has(DEPTH)) {
            centre = new Vector3D(centre.getX(), centre.getY(), sizes.length(DEPTH, 0));
        }
        return new Place(
                usual.plane(),
                new PlaneTurn(
                        sizes.whole(PLANE_TURNS, sizes.has(TOROID) ? 1 : 0),
                        sizes.has(LEVEL) ? PlaneTurn.Axis.LEVEL : PlaneTurn.Axis.UPRIGHT,
                        sizes.has(POI_ALONE) ? PlaneTurn.Carries.POI : PlaneTurn.Carries.FIGURE),
                centre);
    }

    private static Optional<Said.Remark> about(Said said, Refusal refusal) {
        Stream<Word> listed =
                ABOUT.stream()
                        .filter(e -> refusal.where().contains(e.getKey()))
                        .map(Map.Entry::getValue)
                        .filter(said::has);
        // A size that only one form of hand path has goes by its own word.
        Stream<Word> spelt =
                said.remarks().keySet().stream()
                        .filter(w -> w.ofForm() && refusal.where().contains(w.said()));
        return Stream.concat(spelt, listed).map(said.remarks()::get).findFirst();
    }

    private PhraseError error(Refusal refusal, Spot spot, List<Edit> edits) {
        return new PhraseError(
                text,
                spot,
                refusal.where() + " " + refusal.what(),
                expected(refusal),
                List.of(),
                edits);
    }
}
