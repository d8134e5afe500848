package deferent.studio;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Sense;
import deferent.motion.pairing.Size;
import deferent.motion.pairing.Timing;
import deferent.motion.shared.Side;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** One step from a pairing to another: a size set, a drag, or one of the single keys. */
sealed interface Change {
    Pairing applied(Pairing pairing);

    /**
     * A size set to a value in SI units; a tempo may be unsaid.
     *
     * @param typedIn the unit of length that a refusal is told in, m or cm
     */
    record Set(Size size, OptionalDouble to, String typedIn) implements Change {
        @Override
        public Pairing applied(Pairing pairing) {
            if (to.isEmpty()) {
                if (size.kind() != Size.Kind.TEMPO) {
                    throw new Refusal(
                            "is unsaid", size.key(), "only a tempo can be; give a number");
                }
                return pairing.withTempo(OptionalDouble.empty());
            }
            try {
                return size.set(pairing, to.getAsDouble());
            } catch (Refusal refused) {
                boolean cm = typedIn.equals("cm") && size.kind().length();
                throw cm ? refused.in("cm", 0.01) : refused;
            }
        }
    }

    /** A drag on the stage. */
    record Dragged(Grab grab) implements Change {
        @Override
        public Pairing applied(Pairing pairing) {
            return grab.applied(pairing);
        }
    }

    /** The single keys. */
    enum Key implements Change {
        /**
         * Each hand does what the other did. Motion, tether and turning sense go over; each hand
         * keeps to its own of the two neighbouring planes.
         */
        SWAP {
            @Override
            public Pairing applied(Pairing pairing) {
                Part left = over(pairing.right(), Side.RIGHT);
                Part right = over(pairing.left(), Side.LEFT);
                double ahead =
                        -pairing.timing().ahead()
                                * pairing.left().cycles()
                                / pairing.right().cycles();
                return new Pairing(
                        left,
                        right,
                        Timing.of(ahead),
                        pairing.direction(),
                        pairing.mirrored(Side.RIGHT) ? Sense.COUNTER_CLOCKWISE : Sense.CLOCKWISE,
                        pairing.tempoSaid(),
                        pairing.facing()
                                .startingAt(-pairing.timing().ahead() / pairing.right().cycles()));
            }
        },
        /** Both hands go round the other way. */
        REVERSE {
            @Override
            public Pairing applied(Pairing pairing) {
                return pairing.with(pairing.sense().reversed());
            }
        },
        STEP_TIMING {
            @Override
            public Pairing applied(Pairing pairing) {
                return pairing.with(pairing.timing().stepped());
            }
        },
        STEP_DIRECTION {
            @Override
            public Pairing applied(Pairing pairing) {
                return pairing.with(
                        pairing.direction() == Direction.SAME
                                ? Direction.OPPOSITE
                                : Direction.SAME);
            }
        };

        private static Part over(Part part, Side from) {
            Place place = part.place();
            Vector3D own = Place.usual(from.other(), place.plane()).centre();
            Vector3D others = Place.usual(from, place.plane()).centre();
            return part.with(place.withCentre(place.centre().subtract(others).add(own)));
        }
    }
}
