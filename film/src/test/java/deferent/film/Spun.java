package deferent.film;

import deferent.film.held.Fault;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Timing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.motion.trial.TwelveClassics;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * What a film shows: a classic of some size and tempo as a cord lets it be spun, every third time
 * with something off.
 *
 * @param name of it, in words
 * @param meant what was to be spun
 * @param trace what was spun
 * @param tether metres
 * @param figure whether the figure was kept; else the hand path was
 * @param fault what is off, if anything is
 * @param faulty whose it is
 */
record Spun(
        String name,
        Pairing meant,
        Trace trace,
        double tether,
        boolean figure,
        Optional<Fault> fault,
        Side faulty) {
    private static final double SLOWEST = 40; // poi turns a minute
    private static final double QUICKEST = 120;
    private static final double FIGURES = 0.7; // share of films in which figures are kept
    private static final double LATE = 0.06; // cycles
    private static final double SMALL = 0.75; // of the hand path's size
    private static final double HIGH = 0.1; // metres

    static Spun of(String phrase, Random random) {
        double poi = SLOWEST + (QUICKEST - SLOWEST) * random.nextDouble();
        long tether = Math.round(45 + 30 * random.nextDouble());
        boolean figure = random.nextDouble() < FIGURES;
        boolean off = random.nextDouble() < 1 / 3.0;
        List<Fault> faults = new ArrayList<>(List.of(Fault.LATE, Fault.SIZE, Fault.CENTRE_UP));
        Collections.shuffle(faults, random);
        String sized = phrase + ", tether " + tether + " cm";
        // The slower of those tempos at which a cord can do it, and what is off.
        for (boolean keeps : List.of(figure, !figure)) {
            for (double turns = poi; turns <= QUICKEST + 10; turns += 10) {
                Pairing meant = TwelveClassics.turning(sized, turns);
                for (Fault fault : off ? faults : List.<Fault>of()) {
                    for (Side side : List.of(Side.RIGHT, Side.LEFT)) {
                        Optional<Spun> spun =
                                faulty(meant, fault, side)
                                        .flatMap(p -> Classics.corded(p, keeps))
                                        .map(
                                                t ->
                                                        new Spun(
                                                                name(sized, meant, keeps)
                                                                        + ", off: "
                                                                        + side.word()
                                                                        + " "
                                                                        + fault.key(),
                                                                meant,
                                                                t,
                                                                tether / 100.0,
                                                                keeps,
                                                                Optional.of(fault),
                                                                side));
                        if (spun.isPresent()) {
                            return spun.get();
                        }
                    }
                }
                Optional<Trace> trace = off ? Optional.empty() : Classics.corded(meant, keeps);
                if (trace.isPresent()) {
                    return new Spun(
                            name(sized, meant, keeps),
                            meant,
                            trace.get(),
                            tether / 100.0,
                            keeps,
                            Optional.empty(),
                            Side.RIGHT);
                }
            }
        }
        throw new AssertionError("no cord can do " + sized);
    }

    private static String name(String sized, Pairing meant, boolean figure) {
        return sized
                + String.format(Locale.ROOT, " at %.0f", meant.tempo())
                + (figure ? "" : ", hand path kept");
    }

    private static Optional<Pairing> faulty(Pairing meant, Fault fault, Side side) {
        Part part = meant.part(side);
        boolean rides = meant.left().motion().riding() || meant.right().motion().riding();
        return switch (fault) {
            case SIZE ->
                    part.motion().riding() || part.motion().path().still()
                            ? Optional.empty()
                            : Optional.of(
                                    meant.with(
                                            side,
                                            part.with(
                                                    part.motion()
                                                            .withPath(
                                                                    part.motion()
                                                                            .path()
                                                                            .scaled(SMALL)))));
            case LATE -> side == Side.LEFT ? Optional.empty() : Optional.of(late(meant));
            case CENTRE_UP ->
                    rides || side == Side.LEFT
                            ? Optional.empty()
                            : Optional.of(
                                    meant.with(
                                            side,
                                            part.with(
                                                    part.place()
                                                            .withCentre(
                                                                    part.place()
                                                                            .centre()
                                                                            .add(
                                                                                    new Vector3D(
                                                                                            0, HIGH,
                                                                                            0))))));
            default -> Optional.empty();
        };
    }

    private static Pairing late(Pairing meant) {
        double ahead = meant.timing().ahead() - LATE;
        return meant.with(Timing.of(ahead - Math.floor(ahead)));
    }
}
