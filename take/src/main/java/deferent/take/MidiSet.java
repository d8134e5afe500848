package deferent.take;

import deferent.motion.pairing.Refusal;
import deferent.motion.song.Beats;
import deferent.record.SetReading;
import deferent.record.cue.SetCue;
import deferent.record.cue.SetCues;
import deferent.record.cue.SungSet;
import deferent.search.set.InSong;
import deferent.search.set.SetPlan;
import deferent.search.set.Stay;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;

/**
 * A set as a standard MIDI file of format 1 (MIDI Association, Standard MIDI Files 1.0), to be laid
 * beside the song: its time 0 is the start of the sound. The first track holds the tempo of each
 * beat, the bars, and a marker for each cue; the second every count as a stroke of percussion, with
 * its number as a lyric.
 *
 * <p>A tempo is whole microseconds a beat; what is rounded off one is made up for by the next, so
 * that no beat is more than half a microsecond from where it is kept.
 */
final class MidiSet {
    /** Ticks a beat. */
    static final int TICKS = 960;

    private static final int MARKER = 0x06;
    private static final int LYRIC = 0x05;
    private static final int NAME = 0x03;
    private static final int TEMPO = 0x51;
    private static final int BARS = 0x58;

    /** What three bytes hold, microseconds. */
    private static final long SLOWEST = 0xFFFFFF;

    /**
     * The channel of percussion, from 0, and strokes on it by General MIDI: a high and a low wood
     * block.
     */
    private static final int PERCUSSION = 9;

    private static final int FIRST = 76;
    private static final int OTHER = 77;

    private final SungSet sung;
    private final Beats beats;

    /** So many beats lie between the start of the sound and the first that is kept. */
    private final int lead;

    private final Sequence sequence;

    private MidiSet(SungSet sung) throws InvalidMidiDataException {
        this.sung = sung;
        beats = sung.beats();
        double before = beats.time(0);
        if (before < 0 || sung.begins() < 0) {
            throw new Refusal(
                    "begins before its sound does",
                    "the song of the set",
                    "let the set begin on a later beat");
        }
        double usual = beats.time(1) - before;
        lead = before < 5e-7 ? 0 : (int) Math.max(1, Math.round(before / usual));
        sequence = new Sequence(Sequence.PPQ, TICKS);
    }

    static void write(SungSet sung, OutputStream out) throws IOException {
        try {
            MidiSet midi = new MidiSet(sung);
            midi.clock();
            midi.counts();
            MidiSystem.write(midi.sequence, 1, out);
        } catch (InvalidMidiDataException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Where a time of the song stands, ticks. */
    private long tick(double time) {
        double first = beats.time(0);
        double beat = time >= first ? lead + beats.beat(time) : lead * time / first;
        return Math.round(TICKS * beat);
    }

    private void clock() throws InvalidMidiDataException {
        Track track = sequence.createTrack();
        SetReading reading = sung.reading();
        text(track, NAME, 0, reading.name());
        tempi(track);
        bars(track);
        for (SetCue cue : SetCues.of(sung).cues()) {
            text(track, MARKER, tick(cue.time()), cue.call());
        }
    }

    private void tempi(Track track) throws InvalidMidiDataException {
        int last = (int) Math.ceil(Math.max(beats.beat(sung.ends()), beats.times().size() - 1.0));
        double from = 0;
        long said = 0;
        long before = -1;
        for (int i = -lead; i < last; i++) {
            double to = i < 0 ? beats.time(0) * (i + 1 + lead) / lead : beats.time(i + 1);
            long length = Math.max(1, Math.round(1e6 * to) - said);
            if (length > SLOWEST) {
                throw new Refusal(
                        "are " + Math.round(to - from) + " s apart at " + SetCues.clock(from),
                        "beats of the song",
                        "count it faster: at most 16 s from one to the next");
            }
            said += length;
            from = to;
            if (length != before) {
                meta(
                        track,
                        TEMPO,
                        (long) TICKS * (i + lead),
                        new byte[] {(byte) (length >> 16), (byte) (length >> 8), (byte) length});
                before = length;
            }
        }
    }

    /** The beats before the first bar make a bar of their own. */
    private void bars(Track track) throws InvalidMidiDataException {
        int before = Math.floorMod(lead + beats.firstBar(), beats.beatsABar());
        if (before > 0) {
            bar(track, 0, before);
        }
        bar(track, (long) TICKS * before, beats.beatsABar());
    }

    private static void bar(Track track, long at, int count) throws InvalidMidiDataException {
        // Quarters, 24 clocks of MIDI each, with eight 32nd notes in one.
        meta(track, BARS, at, new byte[] {(byte) count, 2, 24, 8});
    }

    private void counts() throws InvalidMidiDataException {
        Track track = sequence.createTrack();
        text(track, NAME, 0, "Counts");
        SetPlan plan = sung.reading().plan();
        for (int i = 0; i < plan.stays().size(); i++) {
            if (plan.stays().get(i).isPresent()) {
                int counts = Counted.whole(InSong.counts(plan, i));
                counts(track, plan.stays().get(i).get(), counts);
            }
        }
    }

    private void counts(Track track, Stay stay, int counts) throws InvalidMidiDataException {
        double count = stay.wanted().count();
        for (int k = 0; k < counts; k++) {
            long at = tick(sung.clock().time(stay.one() + k * count));
            int note = k == 0 ? FIRST : OTHER;
            text(track, LYRIC, at, Integer.toString(k + 1));
            track.add(
                    new MidiEvent(
                            new ShortMessage(ShortMessage.NOTE_ON, PERCUSSION, note, 100), at));
            track.add(
                    new MidiEvent(
                            new ShortMessage(ShortMessage.NOTE_OFF, PERCUSSION, note, 0),
                            at + TICKS / 8));
        }
    }

    private static void text(Track track, int type, long at, String words)
            throws InvalidMidiDataException {
        meta(track, type, at, words.getBytes(StandardCharsets.UTF_8));
    }

    private static void meta(Track track, int type, long at, byte[] bytes)
            throws InvalidMidiDataException {
        track.add(new MidiEvent(new MetaMessage(type, bytes, bytes.length), at));
    }
}
