package deferent.search.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.closest.Closely;
import deferent.reading.tether.Kit;
import deferent.reading.worked.CordReading;
import deferent.reading.worked.Detail;
import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;

class LatestTest {
    private static final Pairing PAIRING =
            Phrase.parse("static spin vs triquetra, tempo 47").pairing();

    @Test
    void whoeverComesBackToAPairingHasItsCordsAtOnce() {
        CordReading first = read(PAIRING, Side.RIGHT, Detail.SETTLED);
        assertThat(
                        read(
                                Phrase.parse("static spin vs triquetra, tempo 47").pairing(),
                                Side.RIGHT,
                                Detail.SETTLED))
                .isSameAs(first);
        CordReading anew =
                CordReading.of(
                        Trace.of(PAIRING), Side.RIGHT, Kit.USUAL, Detail.SETTLED, Closely.USUAL);
        assertThat(anew.slowest()).usingRecursiveComparison().isEqualTo(first.slowest());
    }

    @Test
    void anotherHandAnotherTempoAndMoreDetailAreOtherQuestions() {
        CordReading right = read(PAIRING, Side.RIGHT, Detail.PRINTED);
        assertThat(read(PAIRING, Side.LEFT, Detail.PRINTED)).isNotSameAs(right);
        assertThat(read(at(48), Side.RIGHT, Detail.PRINTED)).isNotSameAs(right);
        assertThat(read(PAIRING, Side.RIGHT, Detail.SETTLED)).isNotSameAs(right);
        assertThat(read(PAIRING, Side.RIGHT, Detail.LIVE))
                .isNotSameAs(read(PAIRING, Side.RIGHT, Detail.LIVE));
    }

    @Test
    void whatWasCalledOffIsWorkedOutWhenItIsAskedForAgain() {
        Pairing pairing = at(49);
        AtomicBoolean off = new AtomicBoolean(true);
        Closely closely = Closely.USUAL.until(off::get);
        assertThatThrownBy(
                        () ->
                                LatestCords.of(
                                        Trace.of(pairing),
                                        Side.RIGHT,
                                        Kit.USUAL,
                                        Detail.SETTLED,
                                        closely))
                .isInstanceOf(CancellationException.class);
        off.set(false);
        assertThat(
                        LatestCords.of(
                                        Trace.of(pairing),
                                        Side.RIGHT,
                                        Kit.USUAL,
                                        Detail.SETTLED,
                                        closely)
                                .closestFigure()
                                .reading())
                .isPresent();
    }

    @Test
    void whoeverComesBackToAPairingHasItsLinksAndAdviceAtOnce() {
        Readings first = Readings.of(PAIRING, Performer.USUAL, Detail.SETTLED);
        Readings again = Readings.of(PAIRING, Performer.USUAL, Detail.SETTLED);
        assertThat(again.advice().orElseThrow()).isSameAs(first.advice().orElseThrow());
        for (Side side : Side.values()) {
            assertThat(again.link(side).reading().orElseThrow())
                    .isSameAs(first.link(side).reading().orElseThrow());
        }
        assertThat(first.link(Side.LEFT).reading().orElseThrow().carrier()).isEqualTo(Side.LEFT);
        assertThat(first.link(Side.RIGHT).reading().orElseThrow().carrier()).isEqualTo(Side.RIGHT);
    }

    @Test
    void anotherBodyAnotherKitAndLessDetailAreAdvisedAnew() {
        Performer small = Performer.of(1.5);
        Advice usual = advice(Performer.USUAL, Kit.USUAL, Detail.SETTLED);
        assertThat(advice(small, Kit.USUAL, Detail.SETTLED)).isNotSameAs(usual);
        assertThat(advice(Performer.USUAL, Kit.USUAL.withAir(true), Detail.SETTLED))
                .isNotSameAs(usual);
        assertThat(advice(Performer.USUAL, Kit.USUAL, Detail.PRINTED)).isNotSameAs(usual);
    }

    private static Advice advice(Performer performer, Kit kit, Detail detail) {
        return Readings.of(PAIRING, performer, kit, detail, Lexicon.EMPTY).advice().orElseThrow();
    }

    private static Pairing at(double tempo) {
        return PAIRING.withTempo(OptionalDouble.of(tempo));
    }

    private static CordReading read(Pairing pairing, Side side, Detail detail) {
        return LatestCords.of(Trace.of(pairing), side, Kit.USUAL, detail, Closely.USUAL);
    }
}
