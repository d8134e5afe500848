package deferent.record.cue;

import deferent.motion.song.Beats;
import deferent.motion.song.SongClock;
import deferent.reading.danger.Level;
import deferent.record.PatternDocument;
import deferent.record.SetPlaces;
import deferent.record.SetReading;
import deferent.search.set.InSong;
import deferent.search.set.Joint;
import deferent.search.set.Stay;
import deferent.search.set.TurnLoad;
import deferent.tell.TellSet;
import deferent.tell.Told;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What whoever calls a set has to say, and when: its patterns, transitions and turns of the body in
 * order. Cue sheets, captions and markers all come from here.
 *
 * @param name of the set
 * @param song what its song is called; empty for none
 * @param cues in order of time, the last is the end
 * @param cautions what can hurt in it, and what is wrong with it, each said once
 */
public record SetCues(
        String name, Optional<String> song, List<SetCue> cues, List<String> cautions) {
    public SetCues {
        cues = List.copyOf(cues);
        cautions = List.copyOf(cautions);
    }

    /** Of a set without a song, by its plan's clock. */
    public static SetCues of(SetReading reading) {
        return of(reading, Optional.empty());
    }

    /** Of a set to a song, by the song's clock. */
    public static SetCues of(SungSet sung) {
        return of(sung.reading(), Optional.of(sung));
    }

    private static SetCues of(SetReading reading, Optional<SungSet> sung) {
        List<SetCue> cues = new ArrayList<>();
        for (int i = 0; i < reading.places().size(); i++) {
            Optional<Stay> there = reading.plan().stays().get(i);
            if (there.isPresent()) {
                pattern(reading, i, there.get(), sung).forEach(cues::add);
            }
        }
        cues.sort(Comparator.comparingDouble(SetCue::plan));
        cues.add(
                cue(sung, SetCue.Kind.END, reading.plan().seconds(), reading.places().size())
                        .called("End", "", 0, List.of(), List.of()));
        List<String> cautions =
                Stream.concat(
                                reading.faults().stream().map(Told::text),
                                cues.stream()
                                        .flatMap(
                                                cue ->
                                                        cue.cautions().stream()
                                                                .map(
                                                                        c ->
                                                                                cue.pattern()
                                                                                        + ": "
                                                                                        + c)))
                        .distinct()
                        .toList();
        return new SetCues(reading.name(), sung.map(SungSet::song), cues, cautions);
    }

    /** What is known of a cue before it is said. */
    private record When(
            SetCue.Kind kind, double plan, double time, Optional<SetCue.Place> place, int step) {
        SetCue called(
                String call,
                String pattern,
                double counts,
                List<String> more,
                List<String> cautions) {
            return new SetCue(kind, plan, time, place, step, call, pattern, counts, more, cautions);
        }
    }

    private static When cue(Optional<SungSet> sung, SetCue.Kind kind, double plan, int step) {
        return new When(
                kind,
                plan,
                sung.map(s -> s.clock().time(plan)).orElse(plan),
                sung.map(s -> place(s.beats(), s.clock().beat(plan))),
                step);
    }

    /** Where a beat stands in the bars, to the hundredth of a beat. */
    public static SetCue.Place place(Beats beats, double beat) {
        double since = Math.rint(100 * (beat - beats.firstBar())) / 100;
        double bar = Math.floor(since / beats.beatsABar());
        return new SetCue.Place((int) bar + 1, since - bar * beats.beatsABar() + 1);
    }

    private static List<SetCue> pattern(
            SetReading reading, int i, Stay stay, Optional<SungSet> sung) {
        List<SetCue> cues = new ArrayList<>();
        SetPlaces.Place place = reading.places().get(i);
        String name = place.name();
        List<String> more =
                sung.isPresent()
                        ? List.of(tempo(stay, sung.get().clock()))
                        : place
                                .pattern()
                                .flatMap(PatternDocument::phrase)
                                .filter(phrase -> !phrase.equals(name))
                                .stream()
                                .toList();
        // To a song it is called where it is counted from 1, on a beat, and its counts go on until
        // the next one's begin.
        double first = sung.isPresent() ? stay.one() : stay.starts();
        double counts = reading.inSong(i).map(InSong::counts).orElseGet(stay::counts);
        cues.add(
                cue(sung, SetCue.Kind.PATTERN, first, i)
                        .called(
                                name + ", " + TellSet.counts(counts),
                                name,
                                counts,
                                more,
                                cautions(reading, i, stay)));
        Optional<TurnLoad> turn = reading.turn(i);
        if (turn.isPresent()) {
            String turned = TellSet.turned(turn.get().turning().quarters());
            cues.add(
                    cue(sung, SetCue.Kind.TURN, turn.get().turning().starts(), i)
                            .called(
                                    capital(turned),
                                    name,
                                    0,
                                    TellSet.turn(turn.get()).stream().map(Told::text).toList(),
                                    List.of()));
        }
        if (i < reading.plan().joints().size()) {
            Joint joint = reading.plan().joints().get(i);
            int next = (i + 1) % reading.places().size();
            String into = reading.names().get(next);
            String told = TellSet.joint(joint, name, into).text();
            if (joint.way() == Joint.Way.LED) {
                cues.add(
                        cue(sung, SetCue.Kind.TRANSITION, joint.starts(), next)
                                .called("Into " + into, into, 0, List.of(told), List.of()));
            } else if (joint.way() == Joint.Way.NONE) {
                cues.add(
                        cue(sung, SetCue.Kind.TRANSITION, joint.starts(), next)
                                .called("Stop, then " + into, into, 0, List.of(), List.of(told)));
            }
        }
        return cues;
    }

    /** "4 beats a cycle: 30 cycles a minute at 120 beats a minute." */
    private static String tempo(Stay stay, SongClock clock) {
        double cycles = stay.wanted().pairing().tempo();
        double beats = clock.beatsAMinute();
        return CueTable.trimmed(beats / cycles)
                + (Math.abs(beats / cycles - 1) < 0.005 ? " beat" : " beats")
                + " a cycle: "
                + CueTable.trimmed(Math.rint(10 * cycles) / 10)
                + " cycles a minute at "
                + CueTable.trimmed(Math.rint(10 * beats) / 10)
                + " beats a minute.";
    }

    private static List<String> cautions(SetReading reading, int i, Stay stay) {
        List<String> cautions = new ArrayList<>();
        if (reading.level(i) == Level.DANGER) {
            reading.danger(i).map(Told::text).ifPresent(cautions::add);
        }
        if (!TellSet.reached(stay)) {
            cautions.add(TellSet.reach(stay).text());
        }
        return cautions;
    }

    private static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    /** Minutes, seconds and thousandths: "1:02.345". */
    public static String clock(double seconds) {
        long millis = Math.round(1000 * Math.abs(seconds));
        return String.format(
                Locale.ROOT,
                "%s%d:%02d.%03d",
                seconds < 0 && millis > 0 ? "-" : "",
                millis / 60_000,
                millis / 1000 % 60,
                millis % 1000);
    }
}
