package deferent.record.fuzz;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.MirrorImage;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import deferent.motion.phrase.Lexicon;
import deferent.motion.shared.Side;
import deferent.reading.tether.Kit;
import deferent.reading.worked.Detail;
import deferent.search.whole.Readings;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A pairing changed in a way of which it is known what becomes of every reading.
 *
 * @param swaps whether what the left hand did the right one does now, and the other way
 * @param shifted whether it begins at another moment of the same movement
 * @param scale how many times as long every length is
 */
record Changed(Pairing pairing, Kit kit, boolean swaps, boolean shifted, double scale) {
    private static final double TURN = 0.7;
    private static final double LATER = 0.137;
    private static final double SCALE = 1.44;

    /** Whose that side's readings are now. */
    Side side(Side side) {
        return swaps ? side.other() : side;
    }

    Readings live(Whole whole) {
        return Readings.of(pairing, whole.asked().performer(), kit, Detail.LIVE, Lexicon.EMPTY);
    }

    // A change that leads out of what a pairing may be is none.
    static Function<Whole, Optional<Changed>> by(Function<Whole, Optional<Changed>> change) {
        return whole -> {
            try {
                return change.apply(whole);
            } catch (Refusal beyond) {
                return Optional.empty();
            }
        };
    }

    private static Optional<Changed> same(
            Whole whole, Pairing pairing, boolean swaps, boolean shifted) {
        return Optional.of(new Changed(pairing, whole.asked().kit(), swaps, shifted, 1));
    }

    static Optional<Changed> mirrored(Whole whole) {
        return same(whole, MirrorImage.of(whole.pairing()), true, true);
    }

    /** Each hand does where it was what the other did, which is only begun where that stood. */
    static Optional<Changed> swapped(Whole whole) {
        Pairing here = whole.pairing();
        Pairing there =
                new Pairing(
                        here.right(),
                        here.left(),
                        Timing.of(
                                -here.timing().ahead()
                                        * here.left().cycles()
                                        / here.right().cycles()),
                        here.direction(),
                        here.direction() == Direction.SAME ? here.sense() : here.sense().reversed(),
                        OptionalDouble.empty());
        // A minute counts the cycles of whichever hand moves first; the pace stays.
        return same(
                whole,
                there.setsOwnTempo()
                        ? there
                        : there.withTempo(
                                OptionalDouble.of(there.tempo() * there.period() / here.period())),
                true,
                true);
    }

    static Optional<Changed> turned(Whole whole) {
        Pairing about = whole.pairing();
        double cos = Math.cos(TURN);
        double sin = Math.sin(TURN);
        for (Side side : Whole.sides()) {
            Part part = about.part(side);
            Plane plane = part.place().plane();
            Vector3D c = part.place().centre();
            double swivel = Math.IEEEremainder(plane.swivel() + TURN, 2 * Math.PI);
            Vector3D centre =
                    new Vector3D(
                            cos * c.getX() + sin * c.getZ(),
                            c.getY(),
                            cos * c.getZ() - sin * c.getX());
            about =
                    about.with(
                            side,
                            part.with(
                                    new Place(
                                            new Plane(plane.kind(), plane.tip(), swivel),
                                            part.place().turn(),
                                            centre)));
        }
        return same(whole, about, false, false);
    }

    static Optional<Changed> scaled(Whole whole) {
        Kit kit = whole.asked().kit();
        if (kit.air()) {
            return Optional.empty();
        }
        Pairing larger = whole.pairing().withTempo(OptionalDouble.empty());
        for (Side side : Whole.sides()) {
            Part part = larger.part(side);
            Vector3D centre = part.place().centre().scalarMultiply(SCALE);
            larger =
                    larger.with(
                            side,
                            new Part(
                                    part.motion().withPath(part.motion().path().scaled(SCALE)),
                                    Tether.of(SCALE * part.tether().length()),
                                    part.place().withCentre(centre),
                                    part.cycles()));
        }
        if (!larger.setsOwnTempo()) {
            larger =
                    larger.withTempo(OptionalDouble.of(whole.pairing().tempo() / Math.sqrt(SCALE)));
        }
        return Optional.of(
                new Changed(larger, kit.withCordMass(kit.cordMass() / SCALE), false, false, SCALE));
    }

    static Optional<Changed> later(Whole whole) {
        Pairing later = whole.pairing();
        for (Side side : Whole.sides()) {
            Part part = later.part(side);
            if (!(part.motion().path() instanceof Series series)
                    || !(part.motion().spin() instanceof Turns even)
                    || part.place().turn().turns() != 0) {
                return Optional.empty();
            }
            double by = 2 * Math.PI * LATER * part.cycles();
            Series path =
                    new Series(
                            series.terms().stream()
                                    .map(
                                            t ->
                                                    new Series.Term(
                                                            t.k(),
                                                            t.radius(),
                                                            t.angle() + t.k() * by))
                                    .toList());
            Turns spin = new Turns(even.turns(), even.start() + even.turns() * by);
            later = later.with(side, part.with(new Motion(path, spin)));
        }
        return same(whole, later, false, true);
    }
}
