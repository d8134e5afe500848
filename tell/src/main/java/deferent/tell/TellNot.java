package deferent.tell;

import deferent.reading.worked.Worked;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Says what was not worked out and why: readings that share a reason in one sentence, followed by
 * what rests on them.
 */
final class TellNot {
    private record Sentence(String key, Worked.Not<?> first, List<String> what, List<String> rest) {
        Told told() {
            String resting =
                    rest.isEmpty()
                            ? ""
                            : " Nor could "
                                    + Say.listed(rest, "and")
                                    + (rest.size() == 1 ? ", which rests" : ", which rest")
                                    + " on it.";
            return new Told(
                    key,
                    Tone.WARN,
                    Say.capital(Say.listed(what, "and"))
                            + " could not be worked out: "
                            + first.reason()
                            + "."
                            + resting,
                    first.why());
        }
    }

    private final String about;
    private final Map<String, Sentence> sentences = new LinkedHashMap<>();

    /**
     * @param about first part of the sentences' keys, such as "cord.left"
     */
    TellNot(String about) {
        this.about = about;
    }

    /** Of one reading alone; none where it was worked out or not asked for. */
    static List<Told> of(String key, Worked<?> reading) {
        return reading
                .failure()
                .map(not -> new Sentence(key, not, List.of(not.what()), List.of()).told())
                .stream()
                .toList();
    }

    /** Takes note of one reading where it was not worked out; of what it rests on, before it. */
    void add(String key, Worked<?> reading) {
        reading.failure().ifPresent(not -> add(key, not));
    }

    private void add(String key, Worked.Not<?> not) {
        for (Sentence sentence : sentences.values()) {
            if (not.restsOn().filter(sentence.what()::contains).isPresent()) {
                sentence.rest().add(not.what());
                return;
            }
        }
        sentences
                .computeIfAbsent(
                        not.reason() + not.why(),
                        reason ->
                                new Sentence(
                                        about + "." + key,
                                        not,
                                        new ArrayList<>(),
                                        new ArrayList<>()))
                .what()
                .add(not.what());
    }

    List<Told> told() {
        return sentences.values().stream().map(Sentence::told).toList();
    }
}
