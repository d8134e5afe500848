package deferent.motion.phrase;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import deferent.motion.pairing.AnyPairing;
import deferent.motion.pairing.Drawn;
import deferent.motion.pairing.Facing;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import java.util.List;
import java.util.Optional;

/** What is written reads back as the very same pairing, to the last bit of every size. */
class PhraseWriterProperties {

    @Property(tries = 1000)
    void everyPairingWithoutADrawnPathHasAPhraseThatReadsBackAsItself(Any any) {
        // Body turns are a set's; a phrase has a word for those of the fountain alone.
        Pairing pairing = any.from(AnyPairing::wide).with(Facing.AUDIENCE);
        assumeFalse(pairing.left().motion().path() instanceof Drawn);
        assumeFalse(pairing.right().motion().path() instanceof Drawn);
        Optional<String> phrase = Phrase.write(pairing);
        assertThat(phrase).as("%s", pairing).isPresent();
        assertThat(Phrase.parse(phrase.orElseThrow()).pairing()).isEqualTo(pairing);
    }

    @Property(tries = 1000)
    void everyPhraseWritesBackAsAPhraseForTheSamePairing(Any any) {
        String phrase = any.from(PhraseWriterProperties::phrase);
        Pairing pairing;
        try {
            pairing = Phrase.parse(phrase).pairing();
        } catch (PhraseError impossible) {
            assertThat(impossible.what())
                    .containsAnyOf("said that already", "swing at two tempos", "tempo is");
            return;
        }
        String written = Phrase.write(pairing).orElseThrow();
        assertThat(Phrase.parse(written).pairing()).as(written).isEqualTo(pairing);
        assertThat(written.length()).as("%s for %s", written, phrase).isLessThan(240);
    }

    @Property(tries = 50)
    void aDrawnPathHasNoPhraseUntilItHasAName(Any any) {
        double across = any.from(AnyPairing::length);
        Motion drawn =
                new Motion(
                        new Drawn(
                                List.of(
                                        Drawn.Cubic.line(0, 0, across, 0),
                                        Drawn.Cubic.line(across, 0, 0, across),
                                        Drawn.Cubic.line(0, across, 0, 0))),
                        new Turns(1, 0));
        Pairing pairing =
                Pairing.of(usual(Side.LEFT, drawn), usual(Side.RIGHT, Motion.flower(0.6, -2, 0)));
        assertThat(Phrase.write(pairing)).isEmpty();
        Lexicon named = Lexicon.EMPTY.with("paper dart", drawn, Tether.USUAL);
        assertThat(Phrase.write(pairing, named)).contains("paper dart vs triquetra");
        assertThat(Phrase.parse("paper dart vs triquetra", named).pairing()).isEqualTo(pairing);
    }

    private static Part usual(Side side, Motion motion) {
        return new Part(motion, Tether.USUAL, Place.usual(side, Plane.WALL), 1);
    }

    private static final List<String> MOTIONS =
            List.of(
                    "static spin",
                    "static spin turns -2",
                    "extension",
                    "Extensions, hand radius 45 cm",
                    "isolation",
                    "isolation hand radius 10cm",
                    "cat eye",
                    "vertical cateye",
                    "cat-eye tilt 30°",
                    "cat-eye tilt 1/3 rad hand radius 40 cm",
                    "linear extension",
                    "vertical linear extension",
                    "linear isolation",
                    "linear isolation tilt -20 deg",
                    "triquetra",
                    "triquetra tilt 90°",
                    "box antispin flower",
                    "diamond four-petal in-spin",
                    "5 petal anti-spin tilt 7 degrees",
                    "one-petal inspin",
                    "flower turns -7",
                    "half-and-half flower",
                    "six-petal half and half",
                    "half-and-half flower ease 0",
                    "half-and-half flower stalling ease 1/16",
                    "stall amplitude 50° ease 0.3",
                    "CAP stretches 0.5 of 1 turns then 0.5 of 2 turns ease 1/3",
                    "static spin turns 1.5 out -0.5 back ease 0",
                    "point isolation",
                    "figure eight tilt 20°",
                    "pentagram hand radius 40 cm",
                    "cardioid tilt 30°",
                    "diagonal cat-eye",
                    "stall",
                    "stall amplitude 50°",
                    "CAP",
                    "CAP turns 1.5 out 0.5 back",
                    "CAP with 7 petals tilt 20°",
                    "CAP turns -2",
                    "CAP turns -3 sweep 50°",
                    "CAP turns 0.7 out 2.3 back",
                    "CAP start 33° way out 0.3",
                    "triquetra CAP",
                    "cat-eye CAP tilt 90°",
                    "arc way out 1/3 turns 3",
                    "CAP tilt 45° turns 3 hand radius 50 cm",
                    "CAP turns 1.75 out 0.25 back stalling sweep 60°",
                    "toroid",
                    "toroid of a triquetra plane turns 3 about level",
                    "toroid of an isolation poi alone",
                    "triangle turns -2",
                    "7-corner polygon hand start 12°",
                    "ellipse axes 50 cm by 20 cm tilt 10°",
                    "line vertical turns 2",
                    "arc sweep 40° turns -1",
                    "circle swinging amplitude 20°",
                    "isolation hand start 77°",
                    "loops 1 of 30 cm plus -3 of 10 cm 45° turns 2",
                    "square stretches 0.25 of 1.5 turns then 0.75 of -0.5 turns resting");

    private static final List<String> SIZES =
            List.of(
                    "",
                    "",
                    " tether 50 cm",
                    " tether 555 mm",
                    " wheel plane",
                    " floor plane tip 10°",
                    " swivel -30°",
                    " centre 10 cm left 20 cm up",
                    " centre at 0.1 m 0.2 m 0.4 m",
                    " depth 50 cm",
                    " at the shoulder",
                    " cycles 3");

    private static final List<String> JOINTS = List.of(" vs ", " VS. ", " versus ", " against ");

    private static final List<String> SHARED =
            List.of(
                    "",
                    ", split time",
                    ", quarter-time, opposites",
                    ", same time",
                    ", stacked",
                    ", SO, reversed",
                    ", mirrored",
                    ", timing 1/3 opposite direction",
                    ", tempo 90 counter-clockwise",
                    ", timing 0.123 tempo 61.5",
                    ", tether 70 cm");

    private static String phrase(Any any) {
        return any.of(MOTIONS)
                + any.of(SIZES)
                + any.of(JOINTS)
                + any.of(MOTIONS)
                + any.of(SIZES)
                + any.of(SHARED);
    }
}
