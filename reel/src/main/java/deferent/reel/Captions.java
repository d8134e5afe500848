package deferent.reel;

import deferent.motion.trace.Count;
import deferent.motion.trace.Counts;
import deferent.motion.trace.Trace;
import deferent.page.Chapters;
import java.util.ArrayList;
import java.util.List;

/** The counts of a clip, each until the next falls. */
final class Captions {
    private Captions() {}

    /** What is said below chapters, each until the next is. */
    static List<Cue> of(Chapters chapters, Loop loop) {
        List<Chapters.Said> said = chapters.said();
        List<Cue> cues = new ArrayList<>();
        for (int i = 0; i < said.size(); i++) {
            double from = loop.seen(said.get(i).starts(), 0);
            double to =
                    i + 1 < said.size() ? loop.seen(said.get(i + 1).starts(), 0) : loop.seconds();
            if (to > from) {
                cues.add(new Cue(from, to, String.join(", ", said.get(i).lines())));
            }
        }
        return cues;
    }

    static List<Cue> of(Trace trace, Loop loop) {
        double start = trace.interval().start();
        double cycle = trace.pairing().period();
        List<Count> counts = Counts.of(trace);
        List<Double> times = new ArrayList<>();
        List<String> said = new ArrayList<>();
        // What is not periodic is counted on, cycle after cycle, as long as it lasts.
        int cycles = loop.seamless() ? loop.cycles() : (int) Math.ceil(loop.period() / cycle);
        for (int i = 0; i < cycles; i++) {
            for (Count count : counts) {
                double moment = count.time() - start;
                times.add(
                        loop.seamless() ? loop.seen(moment, i) : loop.seen(moment + i * cycle, 0));
                said.add(count.said());
            }
        }
        List<Cue> cues = new ArrayList<>();
        for (int i = 0; i < times.size(); i++) {
            double from = times.get(i);
            double to =
                    Math.min(loop.seconds(), i + 1 < times.size() ? times.get(i + 1) : from + 60);
            if (to > from) {
                cues.add(new Cue(from, to, said.get(i)));
            }
        }
        return cues;
    }
}
