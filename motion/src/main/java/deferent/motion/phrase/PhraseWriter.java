package deferent.motion.phrase;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Sense;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Weave;
import deferent.motion.shared.Side;
import deferent.motion.trade.Amounts;
import deferent.motion.trade.Seen;
import deferent.motion.trade.Sizes;
import deferent.motion.trade.Trade;
import deferent.motion.trade.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Says a pairing: each hand's motion in its shortest words, its place and tether where they are not
 * the usual ones, then what both share. A phrase is given only when it reads back as the very same
 * pairing.
 */
final class PhraseWriter {
    private final Pairing pairing;
    private final Lexicon lexicon;

    PhraseWriter(Pairing pairing, Lexicon lexicon) {
        this.pairing = pairing;
        this.lexicon = lexicon;
    }

    Optional<String> phrase() {
        Optional<String> left = motion(Side.LEFT);
        Optional<String> right = motion(Side.RIGHT);
        if (left.isEmpty() || right.isEmpty()) {
            return Optional.empty();
        }
        return ofBoth(left.get()).or(() -> phrase(left, right));
    }

    /** In the one word that the trade has for what both hands do. */
    private Optional<String> ofBoth(String left) {
        Part part = pairing.left();
        if (!part.motion().equals(pairing.right().motion())) {
            return Optional.empty();
        }
        Sizes unsaid = new Sizes(Map.of(), part.tether().length());
        return Trade.motions().stream()
                .filter(row -> row.both().isPresent())
                .filter(
                        row ->
                                left.startsWith(row.said())
                                        || row.motion(unsaid, false).equals(part.motion()))
                .flatMap(row -> ofBothIn(left.startsWith(row.said()) ? left : row.said()).stream())
                .findFirst();
    }

    private Optional<String> ofBothIn(String words) {
        List<String> said = sizes(Side.LEFT, false);
        said.retainAll(sizes(Side.RIGHT, false));
        said.addAll(shared());
        if (!readsBack(joined(words, said))) {
            return Optional.empty();
        }
        for (String word : List.copyOf(said)) {
            List<String> less = new ArrayList<>(said);
            less.remove(word);
            if (readsBack(joined(words, less))) {
                said.remove(word);
            }
        }
        return Optional.of(joined(words, said));
    }

    private static String joined(String words, List<String> said) {
        return said.isEmpty() ? words : words + ", " + String.join(", ", said);
    }

    private Optional<String> phrase(Optional<String> left, Optional<String> right) {
        boolean stacked = KnownPlaces.stacked(pairing);
        List<String> first = sizes(Side.LEFT, stacked);
        List<String> second = sizes(Side.RIGHT, stacked);
        List<String> both = new ArrayList<>(first);
        both.retainAll(second);
        first.removeAll(both);
        second.removeAll(both);
        boolean firstRides = pairing.left().motion().riding();
        boolean secondRides = pairing.right().motion().riding();
        String line =
                spaced(left.get(), first)
                        + (firstRides ? " riding " : " vs ")
                        + spaced(right.get() + (secondRides ? " riding" : ""), second);
        both.addAll(shared());
        if (stacked) {
            both.add(Word.STACKED.said());
        }
        for (String said : both) {
            line += ", " + said;
        }
        return readsBack(line) ? Optional.of(line) : Optional.empty();
    }

    private boolean readsBack(String line) {
        try {
            return new Parser(line, lexicon).phrase().sized(Tether.USUAL).equals(pairing);
        } catch (PhraseError unreadable) {
            return false;
        }
    }

    private static String spaced(String motion, List<String> sizes) {
        return sizes.isEmpty() ? motion : motion + " " + String.join(" ", sizes);
    }

    private Optional<String> motion(Side side) {
        Part part = pairing.part(side);
        Optional<String> words = new MotionWriter(Seen.of(pairing, side), lexicon).words();
        return toroid(part.place().turn()) ? words.map(w -> "toroid of " + w) : words;
    }

    private static boolean toroid(PlaneTurn turn) {
        return turn.turns() != 0;
    }

    private List<String> sizes(Side side, boolean stacked) {
        Part part = pairing.part(side);
        List<String> said = new ArrayList<>();
        Place place = part.place();
        Plane plane = place.plane();
        PlaneTurn turn = place.turn();
        Optional<KnownPlaces> known = KnownPlaces.of(side, part);
        Plane.Kind unsaid =
                known.map(KnownPlaces::plane)
                        .or(() -> part.motion().weave().map(weave -> weave.between().plane()))
                        .orElse(Plane.Kind.WALL);
        if (plane.kind() != unsaid) {
            said.add(
                    switch (plane.kind()) {
                        case WALL -> "wall plane";
                        case WHEEL -> "wheel plane";
                        case FLOOR -> "floor plane";
                    });
        }
        if (differ(plane.tip(), 0)) {
            said.add("tip " + Amounts.angle(plane.tip()));
        }
        if (differ(plane.swivel(), 0)) {
            said.add("swivel " + Amounts.angle(plane.swivel()));
        }
        if (toroid(turn) && turn.turns() != 1) {
            said.add("plane turns " + turn.turns());
        }
        if (turn.axis() == PlaneTurn.Axis.LEVEL) {
            said.add("about level");
        }
        if (turn.carries() == PlaneTurn.Carries.POI) {
            said.add("poi alone");
        }
        if (known.isPresent()) {
            said.add(known.get().word().said());
        } else if (!stacked) {
            centre(side, part).ifPresent(said::add);
        }
        if (part.cycles() != 1) {
            said.add("cycles " + part.cycles());
        }
        boolean usual =
                pairing.left().tether().equals(Tether.USUAL)
                        && pairing.right().tether().equals(Tether.USUAL);
        if (!usual) {
            said.add("tether " + Amounts.length(part.tether().length()));
        }
        return said;
    }

    private static boolean differ(double a, double b) {
        return Double.compare(a, b) != 0;
    }

    private static Optional<String> centre(Side side, Part part) {
        Vector3D usual = Place.usual(side, part.place().plane(), part.motion()).centre();
        Vector3D centre = part.place().centre();
        if (centre.equals(usual)) {
            return Optional.empty();
        }
        double left = millimetres(centre.getX() - usual.getX());
        double up = millimetres(centre.getY() - usual.getY());
        double forward = millimetres(centre.getZ() - usual.getZ());
        if (usual.add(new Vector3D(left, up, forward)).equals(centre)) {
            return Optional.of(
                    "centre"
                            + way(left, "left", "right")
                            + way(up, "up", "down")
                            + way(forward, "forward", "back"));
        }
        return Optional.of(
                "centre at "
                        + Amounts.length(centre.getX())
                        + " "
                        + Amounts.length(centre.getY())
                        + " "
                        + Amounts.length(centre.getZ()));
    }

    private static double millimetres(double metres) {
        return Math.rint(metres * 1000) / 1000;
    }

    private static String way(double length, String more, String less) {
        return length == 0
                ? ""
                : " " + Amounts.length(Math.abs(length)) + " " + (length > 0 ? more : less);
    }

    private List<String> shared() {
        List<String> said = new ArrayList<>(MotionWords.together(pairing));
        if (pairing.sense() == Sense.COUNTER_CLOCKWISE) {
            // Beside the body there is no clock to go against.
            boolean weaves = pairing.left().motion().weave().filter(Weave::mirrorsUp).isPresent();
            said.add(weaves ? Word.REVERSED.said() : "counter-clockwise");
        }
        if (pairing.facing().equals(Sizing.TURNED_ABOUT)) {
            said.add(Word.TURNING_ABOUT.said());
        }
        pairing.tempoSaid().ifPresent(t -> said.add("tempo " + Amounts.number(t)));
        return said;
    }

    /** Whether these words, said of a hand, make that motion. */
    static boolean makes(String words, Seen seen, Lexicon lexicon) {
        return made(words, seen, lexicon).filter(seen.motion()::equals).isPresent();
    }

    /** The motion that these words make, said of the hand that is seen. */
    static Optional<Motion> made(String words, Seen seen, Lexicon lexicon) {
        try {
            Said said = new Parser(words, lexicon).hand();
            return Optional.of(said.motion(seen.tether(), seen.mirrored()));
        } catch (PhraseError | Refusal unsayable) {
            return Optional.empty();
        }
    }
}
