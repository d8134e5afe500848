package deferent.sound;

import deferent.motion.pairing.Refusal;
import deferent.motion.song.Beats;
import deferent.sound.SongReading.Sure;
import java.util.ArrayList;
import java.util.List;

/** One thing that a person sets right in what was read from a song. Beats are numbered from 0. */
public sealed interface Mend {
    /**
     * The closest that two beats may come to each other by hand, seconds: 20 a second; our choice.
     */
    double CLOSEST = 0.05;

    /** What was read, set right. */
    SongReading in(SongReading song);

    /** What was read, set right by each in turn. */
    static SongReading all(SongReading heard, List<? extends Mend> mends) {
        SongReading song = heard;
        for (Mend mend : mends) {
            song = mend.in(song);
        }
        return song;
    }

    /** Twice as many beats. */
    record Doubled() implements Mend {
        @Override
        public SongReading in(SongReading song) {
            return song.with(song.beats().doubled(), Sure.SAID, song.bars());
        }
    }

    /** Half as many beats. */
    record Halved() implements Mend {
        @Override
        public SongReading in(SongReading song) {
            return song.with(song.beats().halved(), Sure.SAID, song.bars());
        }
    }

    /** Bars begin on this beat, and as before every so many from it. */
    record FirstBar(int beat) implements Mend {
        @Override
        public SongReading in(SongReading song) {
            Beats beats = song.beats();
            there(beat, beats);
            int first = beat % beats.beatsABar();
            return song.with(
                    new Beats(beats.times(), beats.beatsABar(), first), song.level(), Sure.SAID);
        }
    }

    /** One beat falls at another time, seconds; still between its neighbours. */
    record Moved(int beat, double to) implements Mend {
        @Override
        public SongReading in(SongReading song) {
            Beats beats = song.beats();
            there(beat, beats);
            List<Double> times = new ArrayList<>(beats.times());
            int last = times.size() - 1;
            double least = beat == 0 ? 0 : times.get(beat - 1) + CLOSEST;
            double most = beat == last ? song.seconds() : times.get(beat + 1) - CLOSEST;
            if (!(to >= least && to <= most)) {
                throw new Refusal(
                        "would fall at %.2f s".formatted(to),
                        "beat " + (beat + 1) + " of the song",
                        "leave it between its neighbours, %.2f s to %.2f s".formatted(least, most));
            }
            times.set(beat, to);
            return song.with(
                    new Beats(times, beats.beatsABar(), beats.firstBar()),
                    song.level(),
                    song.bars());
        }
    }

    private static void there(int beat, Beats beats) {
        if (beat < 0 || beat >= beats.times().size()) {
            throw new Refusal(
                    "is not there",
                    "beat " + (beat + 1) + " of the song",
                    "give 1 to " + beats.times().size());
        }
    }
}
