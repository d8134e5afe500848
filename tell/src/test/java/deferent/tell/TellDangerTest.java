package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Size;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.reading.worked.Detail;
import deferent.search.whole.Readings;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class TellDangerTest {
    private static List<Told> told(Pairing pairing, Kit kit, Detail detail) {
        return Telling.of(Readings.of(pairing, Performer.USUAL, kit, detail, Lexicon.EMPTY));
    }

    private static Pairing said(String phrase) {
        return Phrase.parse(phrase).pairing();
    }

    private static Pairing at(Pairing pairing, Side side, Size.Kind kind, double value) {
        return Size.of(side, kind).set(pairing, value);
    }

    private static final Pairing FAST =
            said("static spin vs triquetra").withTempo(OptionalDouble.of(180));

    @Test
    void aDangerIsSaidAloneBeforeAllElse() {
        List<Told> told = told(FAST, Kit.USUAL.withHeadMass(0.3), Detail.PRINTED);
        assertThat(told.get(0).tone()).isEqualTo(Told.Tone.DANGER);
        assertThat(told.get(0).text()).isEqualTo("Danger: too much force or speed.");
        assertThat(told.get(1).key()).isEqualTo("danger.tempo");
        assertThat(told.get(1).tone()).isEqualTo(Told.Tone.DANGER);
    }

    /** The figures are by hand: m(ω²R + n²ω²L + g), ω(R + 2L), ½mv². */
    @Test
    void itSaysHowMuchAndAtWhichTempoItEnds() {
        List<Told> told = told(FAST, Kit.USUAL.withHeadMass(0.3), Detail.PRINTED);
        assertThat(told.get(1).text())
                .startsWith("Danger: the right hand holds 322 N, the weight of 33 kg, ")
                .contains("the right head goes at 33.9 m/s with 173 J.")
                .endsWith(" The danger ends at 65.6 a minute or slower.");
        assertThat(told.get(1).why())
                .startsWith("With soft heads: ")
                .contains("Mathiowetz")
                .endsWith("no permission.");
    }

    @Test
    void whileItIsDraggedADangerIsSaidWithoutItsEnd() {
        List<Told> told = told(FAST, Kit.USUAL.withHeadMass(0.3), Detail.LIVE);
        assertThat(told.get(0).text()).isEqualTo("Danger: too much force or speed.");
        assertThat(told.get(1).text()).startsWith("Danger: ").doesNotContain("ends");
    }

    @Test
    void aHandBeforeTheFaceIsSaidWithTheWayThatItHasToGo() {
        Pairing near = said("static spin vs static spin");
        near = at(near, Side.LEFT, Size.Kind.CENTRE_Y, (0.935 - 0.769) * 1.70);
        near = at(near, Side.LEFT, Size.Kind.CENTRE_Z, 0.12 + 0.005 * 1.70);
        List<Told> told = told(near, Kit.USUAL, Detail.PRINTED);
        assertThat(told.get(0).text()).isEqualTo("Danger: too near the body.");
        assertThat(told.get(1).text())
                .startsWith("Danger: the left head, cord or hand comes within 12 cm of the face")
                .contains("No tempo ends it; moving everything ")
                .endsWith(" forward does.");
    }

    @Test
    void headsAndCordsInEachOthersWayAreSaid() {
        Pairing spins = said("static spin vs static spin, opposites");
        Pairing meet = at(spins, Side.RIGHT, Size.Kind.CENTRE_Z, 0.34);
        assertThat(told(meet, Kit.USUAL, Detail.PRINTED).get(1).text())
                .startsWith(
                        "Danger: the heads hit each other at 7.5 m/s. No tempo ends it; planes ")
                .endsWith(" further apart do.");
        Pairing through = at(meet, Side.RIGHT, Size.Kind.CENTRE_X, 0.5);
        assertThat(told(through, Kit.USUAL, Detail.PRINTED))
                .extracting(Told::text)
                .anyMatch(t -> t.startsWith("Danger: the cords go through one another."));
    }

    @Test
    void aCordThroughTheBodyIsSaid() {
        Pairing in = at(said("static spin vs static spin"), Side.LEFT, Size.Kind.CENTRE_Z, -0.1);
        assertThat(told(in, Kit.USUAL, Detail.PRINTED).get(1).text())
                .startsWith("Danger: the left head, cord or hand goes through the body.");
    }

    @Test
    void bothSidesAreSaidAtOnceWhereTheyAreAlike() {
        Pairing fast = said("static spin vs static spin").withTempo(OptionalDouble.of(300));
        assertThat(told(fast, Kit.USUAL, Detail.PRINTED).get(1).text())
                .contains("the two heads go at 18.8 m/s");
    }

    @Test
    void withFireItIsSaidEarlierAndForFire() {
        Pairing brisk = said("isolation vs triquetra").withTempo(OptionalDouble.of(55));
        assertThat(told(brisk, Kit.USUAL, Detail.LIVE))
                .noneMatch(t -> t.tone() == Told.Tone.DANGER);
        assertThat(told(brisk, Kit.USUAL.withHeads(Kit.Heads.FIRE), Detail.LIVE).get(1).why())
                .startsWith("With fire: ");
    }

    @Test
    void whatAsksForCareStandsBehindTheLink() {
        List<Told> told =
                told(said("four-petal antispin vs static spin"), Kit.USUAL, Detail.PRINTED);
        assertThat(told).noneMatch(t -> t.tone() == Told.Tone.DANGER);
        Told care =
                told.stream().filter(t -> t.key().equals("care.tempo")).findFirst().orElseThrow();
        assertThat(care.tone()).isEqualTo(Told.Tone.WARN);
        assertThat(care.text())
                .isEqualTo(
                        "The left head goes at 15.1 m/s with 14 J. It is calm at 44.5 a minute or slower.");
    }

    @Test
    void theUsualCautionsNameWhatHasToBeMinded() {
        assertThat(String.join(" ", Telling.cautions()))
                .contains("space", "soft heads", "hard")
                .contains("cords, knots and handles", "hair and loose clothes", "professional")
                .contains("seizures", "photosensitive epilepsy")
                .contains("qualified practice", "safety person", "fuel", "local rules")
                .contains("Nothing here permits it.");
    }
}
