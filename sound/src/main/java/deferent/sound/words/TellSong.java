package deferent.sound.words;

import deferent.motion.song.Beats;
import deferent.sound.SongReading;
import deferent.sound.SongReading.Sure;
import deferent.tell.Told;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What was found in a song, in sentences. */
public final class TellSong {
    /** Tempi that are no farther apart are told as one, a share. */
    private static final double STEADY = 0.015;

    private static final List<String> NUMBERS =
            List.of("one", "two", "three", "four", "five", "six", "seven", "eight");

    private TellSong() {}

    /** All of it, the tempo first. */
    public static List<Told> of(SongReading song) {
        List<Told> told = new ArrayList<>();
        told.add(tempo(song));
        if (song.level() == Sure.GUESSED) {
            told.add(level(song));
        }
        told.add(bars(song));
        return List.copyOf(told);
    }

    private static Told tempo(SongReading song) {
        double tempo = song.beats().tempo();
        boolean steady = song.quickest() - song.slowest() < STEADY * tempo;
        String drift =
                steady
                        ? " all along"
                        : ", drifting from %s at its slowest to %s at its quickest"
                                .formatted(number(song.slowest()), number(song.quickest()));
        return new Told(
                "song.tempo",
                Tone.NOTE,
                "%s beats a minute%s; a hand that goes round once a bar makes %s cycles a minute."
                        .formatted(number(tempo), drift, number(tempo / song.beats().beatsABar())),
                ("beats by dynamic programming (Ellis 2007); slowest and quickest are means over"
                                + " eight beats; it repeats from beat to beat by %.2f, where 1 is"
                                + " wholly and noise is below 0.1")
                        .formatted(song.clear()));
    }

    private static Told level(SongReading song) {
        double tempo = song.beats().tempo();
        return new Told(
                "song.level",
                Tone.WARN,
                "It might as well be %s or %s beats a minute: tap two beats, or say double or half."
                        .formatted(number(tempo / 2), number(tempo * 2)),
                "the next best tempo repeats nearly as well");
    }

    private static Told bars(SongReading song) {
        Beats beats = song.beats();
        String bars =
                "Bars of %s, the first at %s s%s"
                        .formatted(
                                count(beats.beatsABar()),
                                String.format(
                                        Locale.ROOT, "%.2f", beats.times().get(beats.firstBar())),
                                song.bars() == Sure.GUESSED
                                        ? ", but that is a guess: listen, and set it right."
                                        : ".");
        return new Told(
                "song.bars",
                song.bars() == Sure.GUESSED ? Tone.WARN : Tone.NOTE,
                bars,
                "on which beats more begins, the harmony changes and it is louder (after Goto"
                        + " 2001); bars of two are told as bars of four");
    }

    private static String count(int beats) {
        String number = beats <= NUMBERS.size() ? NUMBERS.get(beats - 1) : Integer.toString(beats);
        return number + (beats == 1 ? " beat" : " beats");
    }

    private static String number(double tempo) {
        String number = String.format(Locale.ROOT, tempo < 40 ? "%.1f" : "%.0f", tempo);
        return number.endsWith(".0") ? number.substring(0, number.length() - 2) : number;
    }
}
