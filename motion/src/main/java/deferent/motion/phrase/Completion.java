package deferent.motion.phrase;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Refused;
import deferent.motion.trade.Spelling;
import deferent.motion.trade.Trade;
import deferent.motion.trade.TradeMotion;
import deferent.motion.trade.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What could be written at one place of a phrase: a word of the trade that begins as what stands
 * there, and with which the phrase can be read. Whether it can be read is asked of the phrase's own
 * reader, with another hand's motion put in where none is said yet; so nothing is offered that
 * would then be refused.
 *
 * @param says the word that is offered
 * @param means what it means, without a full stop
 * @param start where what it takes the place of begins in the text
 * @param end where that ends
 * @param text the whole text once it is taken
 * @param caret where one goes on writing in that
 * @param shows a phrase that shows what it would be
 * @param alone whether of that only the left hand is said yet
 */
public record Completion(
        String says,
        String means,
        int start,
        int end,
        String text,
        int caret,
        String shows,
        boolean alone) {
    private static final Pattern WORD = Pattern.compile("[^\\s,]+|,");
    private static final String OTHER = Trade.motions().get(0).said();
    private static final Set<Word.Kind> SAID =
            Set.of(Word.Kind.FLAG, Word.Kind.SIZE, Word.Kind.SHARED, Word.Kind.JOIN);
    private static final String AGAINST = " " + Word.VS.said() + " " + OTHER;

    // What may still be missing after a word before the phrase can be read.
    private static final List<String> RESTS = List.of("", " " + OTHER, AGAINST);
    private static final List<String> BESIDE =
            Stream.of("", " cat-eye", " four-petal antispin")
                    .flatMap(motion -> Stream.of(motion, motion + AGAINST))
                    .toList();
    private static final int MOST_PETALS = 8;

    /** A word with whatever it may be found under. */
    private record Offer(String says, List<String> spellings, String means, Word.Kind kind) {}

    /**
     * What could stand at a place, most likely first.
     *
     * @param caret how much of the text stands before the place
     * @param most how many at most
     */
    public static List<Completion> at(String text, int caret, Lexicon lexicon, int most) {
        List<int[]> words = words(text.substring(0, caret));
        boolean begun = !words.isEmpty() && words.get(words.size() - 1)[1] == caret;
        int first = 0;
        boolean comma = false;
        for (int i = 0; i < words.size(); i++) {
            String word = text.substring(words.get(i)[0], words.get(i)[1]);
            boolean whole = i < words.size() - 1 || !begun;
            if (word.equals(",") || whole && joins(word)) {
                first = i + 1;
                comma = word.equals(",");
            }
        }
        List<Offer> offers = offers(lexicon, comma);
        for (int i = first; i < words.size(); i++) {
            int start = words.get(i)[0];
            String said = plain(text.substring(start, caret));
            List<Completion> found =
                    offered(beginning(offers, said), text, start, caret, lexicon, most);
            if (!found.isEmpty()) {
                return found;
            }
            if (offers.stream().anyMatch(o -> o.spellings().stream().anyMatch(said::equals))) {
                return List.of();
            }
        }
        if (begun && first < words.size()) {
            return List.of();
        }
        // Where something stands already, no second motion is offered.
        List<Offer> next =
                first < words.size()
                        ? offers.stream().filter(o -> o.kind() != Word.Kind.OWN).toList()
                        : offers;
        return offered(next, text, caret, caret, lexicon, most);
    }

    private static List<Offer> beginning(List<Offer> offers, String said) {
        Stream<Offer> whole = offers.stream().filter(o -> starts(o, said, ""));
        Stream<Offer> within = offers.stream().filter(o -> starts(o, said, " "));
        return Stream.concat(whole, within)
                .filter(o -> !plain(o.says()).equals(said))
                .distinct()
                .toList();
    }

    private static boolean starts(Offer offer, String said, String before) {
        return offer.spellings().stream()
                .anyMatch(s -> before.isEmpty() ? s.startsWith(said) : s.contains(before + said));
    }

    private static List<Completion> offered(
            List<Offer> offers, String text, int start, int caret, Lexicon lexicon, int most) {
        int end = caret;
        while (end < text.length()
                && start < caret
                && !Character.isWhitespace(text.charAt(end))
                && text.charAt(end) != ',') {
            end++;
        }
        List<Completion> found = new ArrayList<>();
        for (Offer offer : offers) {
            if (found.size() < most) {
                taken(offer, text, start, end, lexicon).ifPresent(found::add);
            }
        }
        return found;
    }

    private static Optional<Completion> taken(
            Offer offer, String text, int start, int end, Lexicon lexicon) {
        String before = text.substring(0, start);
        String gap = before.isEmpty() || before.endsWith(" ") ? "" : " ";
        String after = text.substring(end);
        String number = number(offer);
        String written = before + gap + offer.says();
        String next = after.isEmpty() || !number.isEmpty() ? " " : "";
        for (String rest : offer.kind() == Word.Kind.FLAG ? BESIDE : RESTS) {
            String whole = written + number + rest + after.stripTrailing();
            if (read(whole, lexicon).isPresent()) {
                return Optional.of(
                        new Completion(
                                offer.says(),
                                offer.means(),
                                start,
                                end,
                                written + next + after,
                                (written + next).length(),
                                whole,
                                !rest.isEmpty()));
            }
        }
        return Optional.empty();
    }

    private static String number(Offer offer) {
        return offer.kind() == Word.Kind.SIZE || offer.kind() == Word.Kind.SHARED
                ? Word.spelt(Spelling.key(offer.says())).map(Completion::example).orElse("")
                : "";
    }

    /** A number that may stand with a word, and the blank before it. */
    static String example(Word word) {
        return switch (word.measured()) {
            case COUNT -> " 4";
            case LENGTH, TETHERS -> " 40 cm";
            case ANGLE -> " 45°";
            case TURNS -> " 2";
            case TEMPO -> " 40";
            case CENTRE -> " 15 cm right";
            case NOTHING, STRETCHES, AXES, LOOPS -> "";
        };
    }

    static Optional<Pairing> read(String phrase, Lexicon lexicon) {
        try {
            return Optional.of(Phrase.parse(phrase, lexicon).pairing());
        } catch (Refused impossible) {
            return Optional.empty();
        }
    }

    private static List<Offer> offers(Lexicon lexicon, boolean comma) {
        Stream<Offer> motions =
                Stream.concat(Trade.motions().stream(), lexicon.motions().stream())
                        .filter(m -> m.follows().isEmpty())
                        .map(Completion::offer);
        List<Offer> hands = Stream.concat(motions, flowers()).toList();
        List<Offer> words =
                Word.all().stream()
                        .filter(w -> SAID.contains(w.kind()))
                        .map(
                                w ->
                                        new Offer(
                                                w.said(),
                                                w.spellings().stream()
                                                        .map(Completion::plain)
                                                        .toList(),
                                                w.means(),
                                                w.kind()))
                        .toList();
        Stream<Offer> joins = words.stream().filter(o -> o.kind() == Word.Kind.JOIN);
        Stream<Offer> shared = words.stream().filter(o -> o.kind() == Word.Kind.SHARED);
        Stream<Offer> others =
                words.stream()
                        .filter(o -> o.kind() == Word.Kind.FLAG || o.kind() == Word.Kind.SIZE);
        return (comma
                        ? Stream.of(shared, others, hands.stream())
                        : Stream.of(joins, hands.stream(), others, shared))
                .flatMap(o -> o)
                .toList();
    }

    private static Offer offer(TradeMotion motion) {
        return new Offer(
                motion.said(),
                motion.spellings().stream().map(Completion::plain).toList(),
                motion.means(),
                Word.Kind.OWN);
    }

    // A flower is said with its petals before it; these are the ones that are spun.
    private static Stream<Offer> flowers() {
        return IntStream.rangeClosed(2, MOST_PETALS)
                .boxed()
                .flatMap(
                        petals ->
                                Stream.of(
                                        flower(petals, 1 - petals, Word.ANTISPIN),
                                        flower(petals, 1 + petals, Word.IN_SPIN)));
    }

    private static Offer flower(int petals, int turns, Word way) {
        String says = Trade.flower(turns);
        String counted = petals + says.substring(says.indexOf('-'));
        return new Offer(
                says,
                List.of(plain(says), plain(counted)),
                "a flower of " + petals + " petals; " + way.means(),
                Word.Kind.OWN);
    }

    private static boolean joins(String word) {
        String said = word.toLowerCase(Locale.ROOT).replace(".", "");
        return Word.VS.spellings().contains(said)
                || Word.AND.spellings().contains(said)
                || said.equals("/")
                || said.equals("&")
                || said.endsWith(":");
    }

    private static String plain(String text) {
        return text.toLowerCase(Locale.ROOT).replace('-', ' ').replaceAll("\\s+", " ");
    }

    private static List<int[]> words(String text) {
        List<int[]> words = new ArrayList<>();
        Matcher matcher = WORD.matcher(text);
        while (matcher.find()) {
            words.add(new int[] {matcher.start(), matcher.end()});
        }
        return words;
    }
}
