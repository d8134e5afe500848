package deferent.record.fuzz;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Phrase;
import deferent.motion.phrase.PhraseError;
import deferent.reading.worked.Worked;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.atomic.AtomicInteger;

/** Reads phrases one after another and keeps count. */
final class Fuzz {
    private final long seed;
    private final AtomicInteger phrases = new AtomicInteger();
    private final AtomicInteger refused = new AtomicInteger();
    private final Queue<String> found = new ConcurrentLinkedQueue<>();
    private final Map<String, Integer> counts = new TreeMap<>();
    private final Map<String, Integer> without = new TreeMap<>();
    private final Map<String, Integer> asked = new ConcurrentSkipListMap<>();
    private double slowest;
    private String slowestAsked = "";
    private double seconds;

    Fuzz(long seed) {
        this.seed = seed;
    }

    /** Reads a few phrases for nothing, so that the first one counted is not read by cold code. */
    static void warm() {
        for (int number = -1; number >= -6; number--) {
            Asked asked = AnyPhrase.of(0, number);
            try {
                Whole.of(asked, Phrase.parse(asked.phrase()).pairing());
            } catch (PhraseError | Refusal refusal) {
                // The next one, then.
            }
        }
    }

    /** Reads phrase {@code number}, and holds its reading against every invariant. */
    void read(int number) {
        Asked asked = AnyPhrase.of(seed, number);
        phrases.incrementAndGet();
        Optional<Pairing> pairing = parsed(asked);
        if (pairing.isEmpty()) {
            return;
        }
        Whole whole;
        try {
            whole = Whole.of(asked, pairing.get());
        } catch (RuntimeException | Error crash) {
            broken("no reading takes all down: " + crash, asked, String.valueOf(first(crash)));
            return;
        }
        note(whole);
        for (Invariant invariant : Invariants.ALL) {
            if (invariant.askedOf(number)) {
                try {
                    Invariant.Broken broken = invariant.of(whole);
                    broken.found().forEach(one -> broken(invariant.name(), asked, one));
                    this.asked.merge(invariant.name(), broken.asked() ? 1 : 0, Integer::sum);
                } catch (RuntimeException | Error crash) {
                    broken(invariant.name() + ", which died", asked, crash + " at " + first(crash));
                }
            }
        }
    }

    private static String first(Throwable crash) {
        for (StackTraceElement at : crash.getStackTrace()) {
            if (at.getClassName().startsWith("deferent.")) {
                return at.toString();
            }
        }
        return "";
    }

    private Optional<Pairing> parsed(Asked asked) {
        try {
            return Optional.of(Phrase.parse(asked.phrase()).pairing());
        } catch (PhraseError | Refusal refusal) {
            refused.incrementAndGet();
            return Optional.empty();
        } catch (RuntimeException | Error crash) {
            broken("a phrase is read or refused", asked, crash.toString());
            return Optional.empty();
        }
    }

    private synchronized void note(Whole whole) {
        seconds += whole.cpuSeconds();
        if (whole.cpuSeconds() > slowest) {
            slowest = whole.cpuSeconds();
            slowestAsked = whole.asked().toString();
        }
        Numbers.notWorkedOut(whole.readings())
                .forEach(not -> without.merge(kind(not), 1, Integer::sum));
    }

    // Without its numbers.
    private static String kind(Worked.Not<?> not) {
        return (not.what() + ": " + not.reason())
                .replaceAll("left|right", "one")
                .replaceAll("\\(.*\\)", "")
                .replaceAll("\\d+(\\.\\d+)?", "#");
    }

    private synchronized void broken(String name, Asked asked, String what) {
        counts.merge(name, 1, Integer::sum);
        if (counts.get(name) <= 12) {
            found.add(name + ": " + what + "\n    " + asked);
        }
    }

    /**
     * What broke of the invariants that hold on every phrase tried so far; those still {@linkplain
     * Invariants#SOUGHT sought} are left out.
     */
    List<String> surprises() {
        return found.stream()
                .filter(one -> Invariants.SOUGHT.stream().noneMatch(one::startsWith))
                .toList();
    }

    /** What broke, each with its phrase; a dozen of a kind at most. */
    List<String> found() {
        return List.copyOf(found);
    }

    synchronized String counts() {
        return "seed %d: %d phrases, %d refused as phrases; not worked out %s; slowest answer %.2f s of a processor (%s), mean %.3f s; broken %s"
                .formatted(
                        seed,
                        phrases.get(),
                        refused.get(),
                        without,
                        slowest,
                        slowestAsked,
                        seconds / Math.max(1, phrases.get() - refused.get()),
                        counts);
    }

    /** Of how many phrases each invariant was asked: of those that it says anything of. */
    String asked() {
        StringBuilder lines = new StringBuilder();
        for (Invariant invariant : Invariants.ALL) {
            lines.append(
                    "%n%7d %s"
                            .formatted(asked.getOrDefault(invariant.name(), 0), invariant.name()));
        }
        return lines.toString();
    }

    /** Invariants that nothing was asked of, so that the run says nothing of them. */
    List<String> neverAsked() {
        return Invariants.ALL.stream()
                .map(Invariant::name)
                .filter(name -> asked.getOrDefault(name, 0) == 0)
                .toList();
    }
}
