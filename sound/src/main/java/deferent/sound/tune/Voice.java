package deferent.sound.tune;

/** What a note of a tune is played on. All are made by arithmetic; no recording is in them. */
enum Voice {
    /** A drum struck low: a tone that falls from 140 to 45 Hz while it dies away. */
    KICK {
        @Override
        void play(float[] into, int from, int rate, double pitch, double loud, Dice dice) {
            int length = length(into, from, 0.3 * rate);
            double phase = 0;
            double above = 95;
            double left = loud;
            for (int i = 0; i < length; i++) {
                phase += 2 * Math.PI * (45 + above) / rate;
                into[from + i] += (float) (left * StrictMath.sin(phase));
                above *= fade(0.03, rate);
                left *= fade(0.09, rate);
            }
        }
    },
    /** A drum with wires: a short tone under noise. */
    SNARE {
        @Override
        void play(float[] into, int from, int rate, double pitch, double loud, Dice dice) {
            int length = length(into, from, 0.25 * rate);
            double tone = 0.5 * loud;
            double wires = 0.6 * loud;
            for (int i = 0; i < length; i++) {
                double round = StrictMath.sin(2 * Math.PI * 190 * i / rate);
                into[from + i] += (float) (tone * round + wires * dice.between(-1, 1));
                tone *= fade(0.05, rate);
                wires *= fade(0.07, rate);
            }
        }
    },
    /** A small cymbal: noise of which only the quick part is left. */
    HAT {
        @Override
        void play(float[] into, int from, int rate, double pitch, double loud, Dice dice) {
            int length = length(into, from, 0.12 * rate);
            double before = 0;
            double left = 0.35 * loud;
            for (int i = 0; i < length; i++) {
                double noise = dice.between(-1, 1);
                into[from + i] += (float) (left * (noise - before));
                before = noise;
                left *= fade(0.025, rate);
            }
        }
    },
    /** A low string: four partials. */
    BASS {
        @Override
        void play(float[] into, int from, int rate, double pitch, double loud, Dice dice) {
            partials(into, from, rate, pitch, 0.6 * loud, 0.004, 0.35, 4);
        }
    },
    /**
     * A plucked string (Karplus and Strong 1983): a burst of noise that goes round and is smoothed.
     */
    PLUCK {
        @Override
        void play(float[] into, int from, int rate, double pitch, double loud, Dice dice) {
            int length = length(into, from, rate);
            double[] string = new double[Math.max(2, (int) Math.round(rate / pitch))];
            for (int i = 0; i < string.length; i++) {
                string[i] = dice.between(-1, 1);
            }
            int at = 0;
            for (int i = 0; i < length; i++) {
                int next = at + 1 == string.length ? 0 : at + 1;
                into[from + i] += (float) (0.5 * loud * string[at]);
                string[at] = 0.497 * (string[at] + string[next]);
                at = next;
            }
        }
    },
    /** Bowed or blown: swells for a tenth of a second, so that its beginning is hard to hear. */
    SWELL {
        @Override
        void play(float[] into, int from, int rate, double pitch, double loud, Dice dice) {
            partials(into, from, rate, pitch, 0.35 * loud, 0.1, 0.9, 5);
        }
    };

    /**
     * Adds a note.
     *
     * @param from at which sample it begins
     * @param rate samples a second
     * @param pitch in Hz, of those that have one
     * @param loud 1 is usual
     */
    abstract void play(float[] into, int from, int rate, double pitch, double loud, Dice dice);

    /** What is left after a sample of what dies away in so many seconds to a third. */
    private static double fade(double seconds, int rate) {
        return 1 - 1 / (seconds * rate);
    }

    private static int length(float[] into, int from, double wanted) {
        return Math.max(0, Math.min((int) wanted, into.length - from));
    }

    /** A tone with overtones that rises for so long, then dies away, seconds. */
    private static void partials(
            float[] into,
            int from,
            int rate,
            double pitch,
            double loud,
            double rises,
            double dies,
            int count) {
        int length = length(into, from, 3 * dies * rate);
        for (int k = 1; k <= count && k * pitch < rate / 2.2; k++) {
            // The sine of i + 1 from those of i and i - 1.
            double step = 2 * StrictMath.cos(2 * Math.PI * k * pitch / rate);
            double last = -StrictMath.sin(2 * Math.PI * k * pitch / rate);
            double now = 0;
            double left = loud / k;
            double fade = fade(dies / Math.sqrt(k), rate);
            double rise = 0;
            for (int i = 0; i < length; i++) {
                into[from + i] += (float) (rise * left * now);
                double next = step * now - last;
                last = now;
                now = next;
                left *= fade;
                rise = Math.min(1, rise + 1 / (rises * rate));
            }
        }
    }
}
