package deferent.sound.tune;

import deferent.motion.song.Beats;
import java.util.ArrayList;
import java.util.List;

/**
 * An invented tune, composed by chance from a seed in the manner that was asked for. The same seed
 * gives the same tune on every machine, to the last bit ({@link StrictMath}).
 *
 * @param manner how it is
 * @param beats when its beats fall, whether somebody plays on them or not
 * @param notes what is played, by no order
 * @param seed of what chance decides while it sounds
 */
public record Tune(Manner manner, Beats beats, List<Note> notes, long seed) {
    /**
     * A note.
     *
     * @param time when it begins, seconds
     * @param pitch in Hz
     * @param loud 1 is usual
     */
    record Note(double time, Voice voice, double pitch, double loud) {}

    private static final double[] SCALE = {0, 2, 4, 5, 7, 9, 11};
    private static final int[][] CHORDS = {{0, 5, 3, 4}, {0, 3, 0, 4}, {0, 4, 5, 3}};

    /** Quiet is a tenth of what follows. */
    private static final double QUIET = 0.1;

    public Tune {
        notes = List.copyOf(notes);
    }

    public static Tune of(Manner manner, long seed) {
        Dice dice = new Dice(seed);
        Beats beats = beats(manner, dice);
        return new Tune(manner, beats, new Composing(manner, beats, dice).notes(), seed);
    }

    private static Beats beats(Manner manner, Dice dice) {
        double phase = dice.share();
        double round = dice.between(14, 30);
        List<Double> times = new ArrayList<>();
        double time = manner.lead();
        // The last note dies away before the end.
        while (time < manner.seconds() - 0.4) {
            times.add(time);
            double through = Math.min(1, time / manner.seconds());
            double off =
                    switch (manner.drift()) {
                        case STEADY -> 0;
                        case WANDERS ->
                                StrictMath.sin(2 * Math.PI * (phase + times.size() / round));
                        case QUICKENS -> 2 * through - 1;
                        case SLOWS -> 1 - 2 * through;
                    };
            time += 60 / (manner.tempo() * (1 + manner.drifts() * off));
        }
        return new Beats(times, manner.beatsABar(), 0);
    }

    /** Chance and habit while one tune is written down. */
    private static final class Composing {
        private final Manner manner;
        private final Beats beats;
        private final Dice dice;
        private final List<Note> notes = new ArrayList<>();
        private final double key;
        private final int[] chords;
        private final int drumming;
        private final int bassing;
        private final double busy;

        Composing(Manner manner, Beats beats, Dice dice) {
            this.manner = manner;
            this.beats = beats;
            this.dice = dice;
            key = dice.whole(12);
            chords = CHORDS[dice.whole(CHORDS.length)];
            drumming = dice.whole(3);
            bassing = dice.whole(3);
            busy = dice.between(0.2, 0.6);
        }

        List<Note> notes() {
            for (int beat = 0; beat < beats.times().size(); beat++) {
                boolean missing = beat > 3 && dice.happens(manner.missing());
                int inBar = beats.inBar(beat) - 1;
                int chord = chords[beat / manner.beatsABar() % chords.length];
                if (manner.band().drums()) {
                    drums(beat, inBar, missing);
                }
                if (manner.band().bass()) {
                    bass(beat, inBar, chord, missing);
                }
                if (manner.band().strings()) {
                    strings(beat, inBar, chord, missing);
                }
            }
            return notes;
        }

        private void drums(int beat, int inBar, boolean missing) {
            boolean three = manner.beatsABar() == 3;
            if (!missing) {
                boolean kick =
                        switch (drumming) {
                            case 0 -> inBar == 0 || !three && inBar == 2;
                            case 1 -> !three || inBar == 0;
                            default -> inBar == 0;
                        };
                boolean snare =
                        switch (drumming) {
                            case 0, 1 -> three ? inBar > 0 : inBar % 2 == 1;
                            default -> inBar == 2;
                        };
                if (kick) {
                    at(beat, Voice.KICK, 0, inBar == 0 ? 1.1 : 0.9);
                }
                if (snare) {
                    at(beat, Voice.SNARE, 0, three ? 0.5 : 0.8);
                }
                at(beat, Voice.HAT, 0, 0.7);
            }
            if (drumming != 1 || dice.happens(0.7)) {
                at(beat + half(), Voice.HAT, 0, 0.5);
            }
            if (dice.happens(0.08)) {
                at(beat + half(), Voice.KICK, 0, 0.7);
            }
        }

        private void bass(int beat, int inBar, int chord, boolean missing) {
            double root = pitch(chord, -2);
            if (!missing && (bassing == 0 || inBar == 0 || bassing == 1 && inBar == 2)) {
                int step = bassing == 0 && inBar > 0 ? chord + 2 * inBar : chord;
                at(beat, Voice.BASS, inBar == 0 ? root : pitch(step, -2), inBar == 0 ? 1.1 : 0.9);
            }
            if (bassing == 2 && dice.happens(0.4)) {
                at(beat + half(), Voice.BASS, root, 0.8);
            }
        }

        private void strings(int beat, int inBar, int chord, boolean missing) {
            if (inBar == 0 && dice.happens(0.4)) {
                at(beat, Voice.SWELL, pitch(chord + 4, -1), 0.8);
            }
            boolean alone = manner.band() == Manner.Band.STRINGS;
            if (!missing && (alone || dice.happens(0.8))) {
                double loud = inBar == 0 ? 1.1 : 0.8;
                at(beat, Voice.PLUCK, pitch(chord + 2 * dice.whole(3), 0), loud);
                if (inBar == 0) {
                    at(beat, Voice.PLUCK, pitch(chord, -1), loud);
                }
            }
            if (dice.happens(busy)) {
                at(beat + half(), Voice.PLUCK, pitch(chord + dice.whole(7), 0), 0.7);
            }
            if (dice.happens(busy / 4)) {
                at(beat + 0.75, Voice.PLUCK, pitch(chord + dice.whole(7), 0), 0.6);
            }
        }

        private double half() {
            return manner.swing();
        }

        private double pitch(int step, int octave) {
            double half = key + SCALE[Math.floorMod(step, 7)] + 12 * Math.floorDiv(step, 7);
            return 220 * StrictMath.pow(2, half / 12 + octave);
        }

        private void at(double beat, Voice voice, double pitch, double loud) {
            double time = beats.time(beat) + manner.loose() * dice.around();
            double struck = loud * dice.between(0.8, 1.1);
            notes.add(new Note(time, voice, pitch, struck));
            if (dice.happens(manner.ornaments())) {
                notes.add(
                        new Note(time - dice.between(0.05, 0.1), voice, pitch * 1.12, struck / 2));
            }
        }
    }

    /** What it sounds like: samples of one channel within 1 either way, so many a second. */
    public float[] sound(int rate) {
        float[] sound = new float[(int) Math.round(manner.seconds() * rate)];
        Dice dice = new Dice(seed + 1);
        for (Note note : notes) {
            int from = (int) Math.round(note.time() * rate);
            if (from >= 0 && from < sound.length) {
                note.voice().play(sound, from, rate, note.pitch(), note.loud(), dice.another());
            }
        }
        double peak = 1e-9;
        double power = 0;
        for (int i = 0; i < sound.length; i++) {
            peak = Math.max(peak, Math.abs(sound[i]));
            power += sound[i] * (double) sound[i];
        }
        double noise = manner.noise() * Math.sqrt(power / sound.length);
        double loud = 0.8 / (peak + 3 * noise);
        for (int i = 0; i < sound.length; i++) {
            double rises = (i / (double) rate - manner.quiet()) / 1.0;
            double gain =
                    manner.quiet() == 0 ? 1 : QUIET + (1 - QUIET) * Math.max(0, Math.min(1, rises));
            double hiss = noise == 0 ? 0 : noise * dice.between(-1.732, 1.732);
            sound[i] = (float) (loud * (gain * sound[i] + hiss));
        }
        return sound;
    }
}
