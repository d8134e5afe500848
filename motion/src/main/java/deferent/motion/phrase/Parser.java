package deferent.motion.phrase;

import static deferent.motion.trade.Word.*;

import deferent.motion.trade.Amount;
import deferent.motion.trade.Trade;
import deferent.motion.trade.TradeMotion;
import deferent.motion.trade.Unit;
import deferent.motion.trade.Word;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Reads a phrase by recursive descent:
 *
 * <pre>
 * phrase = hand, ("vs" | "riding"), hand, {",", said of both} ;
 * hand   = {filler | motion | qualifier | size} ;
 * size   = word, amount | amount, word ;
 * </pre>
 *
 * Timing, direction, sense and tempo may stand anywhere, because they are the pairing's.
 */
final class Parser {
    private final String text;
    private final Lexicon lexicon;
    private final Reader reader;
    private final Hand first = new Hand("first");
    private final Hand second = new Hand("second");
    private final Hand tail = new Hand("");
    private final Hand shared = new Hand("");

    Parser(String text, Lexicon lexicon) {
        this.text = text;
        this.lexicon = lexicon;
        this.reader = new Reader(text, lexicon);
    }

    Phrase phrase() {
        boolean versus = saysVersus();
        hand(first, versus);
        if (!reader.more()) {
            throw missing(first, versus);
        }
        reader.skip(reader.word().orElseThrow());
        hand(second, true);
        if (!second.done()) {
            throw reader.error(
                    reader.spot(),
                    "the second hand does nothing",
                    "a motion, such as triquetra",
                    List.of());
        }
        while (reader.more()) {
            both();
        }
        return new Phrase(text, said(first), said(second), shared.remarks());
    }

    /** Reads words that say one hand alone, to their end. */
    Said hand() {
        hand(first, true);
        if (reader.more() || !first.done()) {
            throw missing(first, true);
        }
        return said(first);
    }

    private PhraseError missing(Hand hand, boolean versus) {
        return hand.done()
                ? reader.error(
                        reader.spot(),
                        "the second hand is missing",
                        "\"vs\" and what the other hand does, as in \"isolation vs triquetra\"")
                : reader.error(
                        reader.spot(),
                        "no motion is said",
                        versus
                                ? "a motion before \"vs\""
                                : "a motion, \"vs\" and another, as in \"isolation vs triquetra\"");
    }

    private boolean saysVersus() {
        int mark = reader.mark();
        boolean found = false;
        while (reader.more() && !found) {
            Optional<Reader.Found> word = reader.word();
            found = word.filter(w -> w.is(Word.Kind.JOIN)).isPresent();
            if (word.isPresent()) {
                reader.skip(word.get());
            } else {
                reader.skip();
            }
        }
        reader.back(mark);
        return found;
    }

    // Up to what joins the hands, or for the second hand to the comma after it.
    private void hand(Hand hand, boolean versus) {
        while (reader.more()) {
            if (reader.next(Token.Kind.COMMA)) {
                if (hand == second && hand.done()) {
                    return;
                }
                reader.skip();
                continue;
            }
            Optional<Reader.Found> next = reader.word();
            if (next.isPresent() && next.get().is(Word.Kind.JOIN)) {
                if (hand == second) {
                    throw reader.error(
                            next.get().spot(),
                            "a third hand",
                            "two motions with one \"vs\" between them");
                }
                if (!hand.done()) {
                    throw reader.error(
                            next.get().spot(),
                            "the first hand does nothing",
                            "a motion before \"vs\"");
                }
                return;
            }
            if (!versus
                    && hand.done()
                    && next.flatMap(Reader.Found::word).equals(Optional.of(RIDING))) {
                remark(hand, RIDING, new Amount.Plain(), next.get().spot());
                return;
            }
            if (next.isPresent() && next.get().is(Word.Kind.OWNER)) {
                Word owner = next.get().word().orElseThrow();
                if (owner != (hand == first ? LEFT : RIGHT)) {
                    throw reader.error(
                            next.get().spot(),
                            "\""
                                    + owner.said()
                                    + "\" among the words of the "
                                    + hand.name()
                                    + " hand",
                            "sizes of both or of one hand after a comma at the end");
                }
                reader.skip(next.get());
                continue;
            }
            item(hand);
        }
    }

    // After the comma: sizes of both hands, or of the hand that is named.
    private void both() {
        reader.skip();
        Hand owner = tail;
        tail.remarks().clear();
        while (reader.more() && !reader.next(Token.Kind.COMMA)) {
            Optional<Reader.Found> next = reader.word();
            if (next.isPresent() && next.get().is(Word.Kind.JOIN)) {
                throw reader.error(
                        next.get().spot(),
                        "a third hand",
                        "two motions with one \"vs\" between them");
            }
            if (next.isPresent() && next.get().is(Word.Kind.OWNER)) {
                Word whose = next.get().word().orElseThrow();
                owner = whose == LEFT ? first : whose == RIGHT ? second : tail;
                reader.skip(next.get());
                continue;
            }
            item(owner);
        }
        tail.remarks().forEach(this::share);
    }

    private void share(Word word, Said.Remark remark) {
        boolean taken = false;
        boolean fits = false;
        for (Hand hand : word == RIDING ? List.of(second) : List.of(first, second)) {
            boolean takes = hand.takes(word);
            fits |= takes;
            if (takes && hand.clash(word).isEmpty()) {
                hand.remarks().put(word, remark);
                taken = true;
            }
        }
        if (!taken) {
            throw reader.error(
                    remark.spot(),
                    fits
                            ? "both hands have said that already"
                            : "neither motion takes \"" + word.said() + "\"",
                    fits ? "each said once" : "a size of one of the two motions");
        }
    }

    private void item(Hand hand) {
        if (reader.numberNext()) {
            amountFirst(hand);
            return;
        }
        Optional<Reader.Found> next = reader.word();
        if (next.isEmpty()) {
            throw reader.unknown(expected(hand), candidates());
        }
        Reader.Found found = next.get();
        if (found.motion().isPresent()) {
            motion(hand, found.motion().get(), found);
            return;
        }
        Word word = found.word().orElseThrow();
        switch (word.kind()) {
            case FILLER -> reader.skip(found);
            case FLAG, SIZE, SHARED -> {
                reader.skip(found);
                Amount amount = new AmountReader(reader).of(word);
                Hand whose = word.kind() == Word.Kind.SHARED ? shared : hand;
                remark(whose, word, amount, reader.since(found.spot()));
            }
            case EXPLAINED ->
                    throw reader.error(
                            found.spot(),
                            "\"" + word.said() + "\" is explained, not said: " + word.means(),
                            expected(hand));
            default -> throw reader.error(found.spot(), "is out of place here", expected(hand));
        }
    }

    private void motion(Hand hand, TradeMotion motion, Reader.Found found) {
        reader.skip(found);
        if (hand == tail || hand.motion().isPresent()) {
            throw reader.error(
                    found.spot(),
                    hand == tail
                            ? "both hands have their motions already"
                            : "a second motion for the " + hand.name() + " hand",
                    hand == first ? "\"vs\" or \"riding\" before it" : "a size, timing or plane");
        }
        hand.does(motion, found.spot());
        Optional<Word> follows = motion.follows();
        if (follows.isPresent()) {
            Amount amount = new AmountReader(reader).of(follows.get());
            hand.remarks().put(follows.get(), new Said.Remark(amount, reader.since(found.spot())));
        }
    }

    // "4 petals", "60 cm tether", "30° tilt", "60 bpm".
    private void amountFirst(Hand hand) {
        Spot from = reader.spot();
        double value = reader.number("");
        int afterNumber = reader.mark();
        Optional<Unit> unit = reader.unit();
        String unitText = text.substring(from.start(), reader.since(from).end());
        Optional<Word> word = sizeNext();
        if (word.isEmpty() && unit.isPresent() && unit.get() != Unit.A_MINUTE) {
            reader.back(afterNumber);
            Optional<Word> bare = sizeNext();
            if (bare.filter(w -> w != TETHER).isPresent()) {
                word = bare;
                unit = Optional.empty();
            } else {
                unit.ifPresent(u -> reader.unit());
            }
        }
        if (unit.equals(Optional.of(Unit.A_MINUTE))) {
            word.filter(w -> w == TEMPO).ifPresent(w -> reader.take(w));
            remark(shared, TEMPO, new Amount.Count(value), reader.since(from));
            return;
        }
        Optional<Word> named = word;
        Optional<Amount> amount = named.flatMap(w -> AmountReader.before(w, value, unitText));
        if (named.isEmpty() && unit.isEmpty() && reader.strange()) {
            throw reader.unknown("a unit, or the word of a size such as petals", candidates());
        }
        if (named.isEmpty() || amount.isEmpty()) {
            throw reader.error(
                    reader.since(from),
                    "\"" + unitText.strip() + "\" does not say what it is the size of",
                    "a size's word beside it, such as petals, tether, hand radius or tilt");
        }
        reader.take(named.get());
        remark(
                named.get().kind() == Word.Kind.SHARED ? shared : hand,
                named.get(),
                amount.get(),
                reader.since(from));
    }

    private Optional<Word> sizeNext() {
        return reader.word()
                .flatMap(Reader.Found::word)
                .filter(w -> w.measured() != Word.Measured.NOTHING);
    }

    private void remark(Hand hand, Word word, Amount amount, Spot spot) {
        Optional<Word> clash = hand.clash(word);
        if (clash.isPresent()) {
            Word other = clash.get();
            throw reader.error(
                    spot,
                    other == word
                            ? "a second " + word.said()
                            : "\"" + word.said() + "\" after \"" + other.said() + "\"",
                    "only one of them");
        }
        hand.remarks().put(word, new Said.Remark(amount, spot));
    }

    private Said said(Hand hand) {
        Optional<Word> stray = hand.stray();
        if (stray.isPresent()) {
            throw reader.error(
                    hand.spotOf(stray.get()),
                    "\"" + stray.get().said() + "\" does not go with \"" + hand.motionName() + "\"",
                    hand.takesInWords());
        }
        return hand.said();
    }

    private String expected(Hand hand) {
        if (hand == tail) {
            return "timing, direction, tempo, or a size of both hands";
        }
        if (!hand.done()) {
            return "a motion, or a word that goes with one";
        }
        return hand == first
                ? "\"vs\", \"riding\", or a size of the first hand"
                : "a size of the second hand, timing, direction, tempo, or the end";
    }

    private List<String> candidates() {
        Set<Word.Kind> said =
                Set.of(Word.Kind.FLAG, Word.Kind.SIZE, Word.Kind.SHARED, Word.Kind.JOIN);
        Stream<List<String>> trade = Trade.motions().stream().map(TradeMotion::spellings);
        Stream<List<String>> words =
                Word.all().stream().filter(w -> said.contains(w.kind())).map(Word::spellings);
        Stream<List<String>> own = lexicon.motions().stream().map(TradeMotion::spellings);
        return Stream.of(trade, words, own).flatMap(s -> s).flatMap(List::stream).toList();
    }
}
