package deferent.sound.tune;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.song.Beats;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class TuneTest {
    private static final int RATE = 11_025;

    private static double strength(float[] sound, double from, double seconds) {
        double sum = 0;
        int first = Math.max(0, (int) (from * RATE));
        int last = Math.min(sound.length, (int) ((from + seconds) * RATE));
        for (int i = first; i < last; i++) {
            sum += sound[i] * (double) sound[i];
        }
        return sum / (last - first);
    }

    @Test
    void aDrumIsStruckOnEveryBeatOfAPlainTune() {
        Manner manner =
                new Manner(
                        100,
                        4,
                        12,
                        Manner.Drift.STEADY,
                        0,
                        0.5,
                        Manner.Band.DRUMS,
                        0,
                        0,
                        0,
                        0,
                        0,
                        0.5);
        Tune tune = Tune.of(manner, 3);
        float[] sound = tune.sound(RATE);
        assertThat(sound).hasSize(12 * RATE);
        assertThat(tune.beats().tempo()).isCloseTo(100, within(1e-6));
        for (double beat : tune.beats().times()) {
            assertThat(strength(sound, beat, 0.03))
                    .as("after and before " + beat)
                    .isGreaterThan(4 * strength(sound, beat - 0.035, 0.03));
        }
    }

    @Test
    void aTuneDriftsAsFarAsItIsToldTo() {
        Manner plain = Manner.plain(120, 3, 60);
        Manner quickens =
                new Manner(
                        120,
                        3,
                        60,
                        Manner.Drift.QUICKENS,
                        0.05,
                        0.5,
                        plain.band(),
                        0,
                        0,
                        0,
                        0,
                        0,
                        0.5);
        Beats beats = Tune.of(quickens, 4).beats();
        int last = beats.times().size() - 1;
        assertThat(beats.tempo(0, 4)).isCloseTo(114, within(1.0));
        assertThat(beats.tempo(last - 4, last)).isCloseTo(126, within(1.0));
        assertThat(beats.beatsABar()).isEqualTo(3);
    }

    @Test
    void theSameSeedIsTheSameTuneAndNoPieceThatIsHeldBackWasTunedOn() {
        List<Tune> held = Pieces.held(15);
        assertThat(held).hasSizeGreaterThanOrEqualTo(100);
        assertThat(held.get(7).sound(RATE)).isEqualTo(Pieces.held(15).get(7).sound(RATE));
        assertThat(held.get(0).beats().tempo()).isBetween(55.0, 65.0);
        assertThat(held.get(held.size() - 1).beats().tempo()).isBetween(170.0, 190.0);
        Set<Tune> all = new HashSet<>(held);
        all.addAll(Pieces.forTuning(15));
        assertThat(all).hasSize(held.size() + Pieces.forTuning(15).size());
        // What the manners are to have in them is in some.
        for (Manner.Drift drift : Manner.Drift.values()) {
            assertThat(held).anyMatch(t -> t.manner().drift() == drift);
        }
        for (Manner.Band band : Manner.Band.values()) {
            assertThat(held).anyMatch(t -> t.manner().band() == band);
        }
        assertThat(held).anyMatch(t -> t.manner().swing() > 0.6);
        assertThat(held).anyMatch(t -> t.manner().noise() > 0.2);
        assertThat(held).anyMatch(t -> t.manner().quiet() > 3);
        assertThat(held).anyMatch(t -> t.manner().missing() > 0.1);
        assertThat(held).anyMatch(t -> t.manner().ornaments() > 0.1);
        assertThat(held).anyMatch(t -> t.manner().beatsABar() == 3);
    }

    @Test
    void beatsAgreeWithinAWindowAndEachOnlyOnce() {
        List<Double> known = List.of(1.0, 2.0, 3.0, 4.0);
        assertThat(Agreement.of(known, known).f()).isEqualTo(1);
        assertThat(Agreement.of(List.of(1.069, 1.931, 3.071, 3.929), known))
                .isEqualTo(new Agreement(2, 4, 4));
        assertThat(Agreement.of(List.of(1.0, 1.01, 1.02), known)).isEqualTo(new Agreement(1, 3, 4));
        // Half and double time each find two thirds.
        assertThat(Agreement.of(List.of(1.0, 3.0), known).f()).isCloseTo(2 / 3.0, within(1e-9));
        assertThat(Agreement.of(List.of(3.5, 4.0), known, 3.2)).isEqualTo(new Agreement(1, 2, 1));
        assertThat(Agreement.of(List.of(), known).f()).isZero();
    }
}
