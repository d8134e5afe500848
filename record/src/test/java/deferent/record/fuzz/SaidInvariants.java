package deferent.record.fuzz;

import deferent.motion.phrase.Phrase;
import deferent.tell.Telling;
import deferent.tell.Told;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** What holds of numbers and words, whatever they are about. */
final class SaidInvariants {
    /** A processor's seconds that no answer may take. */
    static final double MOST_SECONDS = 2;

    private static final Pattern NO_WORD =
            Pattern.compile(
                    "NaN|Infinity|∞|-0 |\\bnull\\b|1\\.8E308|Optional|\\d[eE][-+]?\\d|\\{\\}|  ");

    static final List<Invariant> ALL =
            List.of(
                    new Invariant(
                            "every number is finite",
                            "a motion of finite sizes has finite readings, and what has none is left"
                                    + " out with its reason",
                            1,
                            SaidInvariants::finite),
                    new Invariant(
                            "every sentence is words and plain numbers",
                            "a reader knows no exponents, and no number is written where there is"
                                    + " none",
                            1,
                            SaidInvariants::sentences),
                    new Invariant(
                            "no answer takes over two seconds of a processor",
                            "somebody waits for it; said of a program that has read a few phrases"
                                    + " before, whose code is compiled",
                            1,
                            (whole, broken) ->
                                    broken.when(
                                            whole.cpuSeconds() > MOST_SECONDS,
                                            "it took %.2f s",
                                            whole.cpuSeconds())),
                    new Invariant(
                            "a phrase written back is the same pairing",
                            "readings are of the pairing alone, so the same pairing reads the same",
                            1,
                            SaidInvariants::writtenBack),
                    new Invariant(
                            "the JSON says the sentences that the page says",
                            "both come from one telling",
                            1,
                            SaidInvariants::sameWords));

    private SaidInvariants() {}

    private static void finite(Whole whole, Invariant.Broken broken) {
        List<String> found = new ArrayList<>(Numbers.notFinite(whole.readings()));
        found.addAll(Numbers.notFinite(whole.json()));
        broken.when(
                !found.isEmpty(),
                "%d, first %s",
                found.size(),
                found.isEmpty() ? "" : found.get(0));
    }

    private static void sentences(Whole whole, Invariant.Broken broken) {
        List<String> all = new ArrayList<>(Telling.cautions());
        for (Told told : whole.told()) {
            all.add(told.text());
            all.add(told.why());
        }
        for (String sentence : all) {
            broken.when(sentence.isBlank() || NO_WORD.matcher(sentence).find(), "\"%s\"", sentence);
        }
    }

    private static void writtenBack(Whole whole, Invariant.Broken broken) {
        whole.readings()
                .phrase()
                .ifPresent(
                        phrase ->
                                broken.when(
                                        !Phrase.parse(phrase).pairing().equals(whole.pairing()),
                                        "\"%s\"",
                                        phrase));
    }

    private static void sameWords(Whole whole, Invariant.Broken broken) {
        List<String> page = whole.told().stream().map(Told::text).toList();
        List<String> json = new ArrayList<>();
        whole.json().get("told").forEach(t -> json.add(t.get("text").asString()));
        broken.when(!page.equals(json), "%s against %s", page, json);
    }
}
