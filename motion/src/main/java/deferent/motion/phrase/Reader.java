package deferent.motion.phrase;

import deferent.motion.pairing.Refusal;
import deferent.motion.trade.Amount;
import deferent.motion.trade.Spelling;
import deferent.motion.trade.TradeMotion;
import deferent.motion.trade.Unit;
import deferent.motion.trade.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Goes along a phrase's tokens: words by their longest spelling, numbers, sizes with their units.
 */
final class Reader {
    private static final int LONGEST = 6;
    private static final List<String> NUMBERS =
            List.of(
                    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine",
                    "ten", "eleven", "twelve");
    private static final Map<String, Double> SHARES =
            Map.of("half", 0.5, "third", 1.0 / 3, "quarter", 0.25);
    private final String text;
    private final Lexicon lexicon;
    private final List<Token> tokens;
    private int at;

    /** A motion or another word, and where it stands. */
    record Found(Optional<TradeMotion> motion, Optional<Word> word, Spot spot, int tokens) {
        boolean is(Word.Kind kind) {
            return word.filter(w -> w.kind() == kind).isPresent();
        }
    }

    Reader(String text, Lexicon lexicon) {
        this.text = text;
        this.lexicon = lexicon;
        this.tokens = Token.of(text);
    }

    boolean more() {
        return at < tokens.size();
    }

    Token token() {
        return tokens.get(at);
    }

    boolean next(Token.Kind kind) {
        return more() && token().kind() == kind;
    }

    void skip() {
        at++;
    }

    void skip(Found found) {
        at += found.tokens();
    }

    int mark() {
        return at;
    }

    void back(int mark) {
        at = mark;
    }

    /** Where the next token stands, or the end of the phrase. */
    Spot spot() {
        return more() ? token().spot() : new Spot(text.length(), text.length());
    }

    /** From where {@code from} begins to where the last token taken ends. */
    Spot since(Spot from) {
        return at == 0 ? from : from.to(tokens.get(at - 1).spot());
    }

    /** The longest known word that starts at the next token. */
    Optional<Found> word() {
        StringBuilder key = new StringBuilder();
        Found best = null;
        for (int i = at; i < Math.min(at + LONGEST, tokens.size()); i++) {
            Token token = tokens.get(i);
            if (token.kind() != Token.Kind.LETTERS
                    && (i == at || token.kind() != Token.Kind.NUMBER)) {
                break;
            }
            key.append(Spelling.key(token.text()));
            Spot spot = tokens.get(at).spot().to(token.spot());
            Optional<TradeMotion> motion = lexicon.spelt(key.toString());
            Optional<Word> word =
                    motion.isPresent() ? Optional.empty() : Word.spelt(key.toString());
            if (motion.isPresent() || word.isPresent()) {
                best = new Found(motion, word, spot, i + 1 - at);
            }
        }
        return Optional.ofNullable(best);
    }

    /** Takes the next word if it is that one. */
    boolean take(Word word) {
        Optional<Found> found = word().filter(f -> f.word().equals(Optional.of(word)));
        found.ifPresent(this::skip);
        return found.isPresent();
    }

    /** Takes the next token if it is one of these bare words. */
    boolean take(String... words) {
        if (next(Token.Kind.LETTERS)) {
            String key = Spelling.key(token().text());
            for (String word : words) {
                if (key.equals(word)) {
                    at++;
                    return true;
                }
            }
        }
        return false;
    }

    void skipFillers() {
        for (Optional<Found> f = word();
                f.isPresent() && f.get().is(Word.Kind.FILLER);
                f = word()) {
            skip(f.get());
        }
    }

    /** Whether a number starts here, in figures or as a word from one on. */
    boolean numberNext() {
        return next(Token.Kind.NUMBER)
                || (next(Token.Kind.LETTERS) && NUMBERS.contains(Spelling.key(token().text())));
    }

    /** A number in figures, as a fraction, or in words; what for is said in the error. */
    double number(String whatFor) {
        return figure(whatFor).value();
    }

    private Unit.Figure figure(String whatFor) {
        skipFillers();
        if (next(Token.Kind.NUMBER)) {
            Token above = token();
            at++;
            if (!next(Token.Kind.SLASH)) {
                return new Unit.Figure(above.number(), above.figures());
            }
            at++;
            if (!next(Token.Kind.NUMBER)) {
                throw error(spot(), "a fraction without its lower number", "a number");
            }
            double below = token().number();
            at++;
            return new Unit.Figure(above.number() / below, Optional.empty());
        }
        if (next(Token.Kind.LETTERS)) {
            String key = Spelling.key(token().text());
            Double share = SHARES.get(key);
            if (NUMBERS.contains(key) || share != null) {
                at++;
                return new Unit.Figure(
                        share != null ? share : NUMBERS.indexOf(key), Optional.empty());
            }
        }
        throw error(
                spot(),
                more() ? "\"" + token().text() + "\" is no number" : "the number is missing",
                "a number " + whatFor);
    }

    /** Whether a word comes next that is not known here. */
    boolean strange() {
        return next(Token.Kind.LETTERS) && word().isEmpty() && !numberNext();
    }

    /** Takes the unit that stands next, if one does. */
    Optional<Unit> unit() {
        Optional<Unit> unit =
                next(Token.Kind.LETTERS) ? Unit.spelt(token().text()) : Optional.empty();
        unit.ifPresent(u -> at++);
        return unit;
    }

    /** A length: a number and its unit, or, where the word takes them, tethers. */
    Amount.Length length(Word of) {
        boolean ofTether = of.measured() == Word.Measured.TETHERS || of == Word.AXES;
        Spot from = spot();
        Unit.Figure figure = figure("with a unit of length, such as 60 cm");
        Optional<Unit> unit = unit();
        if (unit.filter(Unit::length).isPresent()) {
            return new Amount.Length(unit.get().metres(figure), false, unit.get());
        }
        if (unit.equals(Optional.of(Unit.TETHERS)) && ofTether) {
            return new Amount.Length(figure.value(), true, unit.get());
        }
        throw badUnit(
                from,
                of,
                unit,
                "a length with " + Unit.LENGTHS + (ofTether ? ", or in tethers" : ""));
    }

    /** An angle: a number and degrees, rad or turns. */
    Amount.Angle angle(Word of) {
        Spot from = spot();
        double value = number("with a unit of angle, such as 30°");
        Optional<Unit> unit = unit();
        OptionalDouble radians = unit.map(u -> u.radians(value)).orElse(OptionalDouble.empty());
        if (unit.isEmpty() || radians.isEmpty()) {
            throw badUnit(from, of, unit, "an angle with degrees, rad or turns");
        }
        try {
            Refusal.angle(radians.getAsDouble(), "\"" + of.said() + "\"");
        } catch (Refusal beyond) {
            Refusal said = unit.get().said(beyond, 1);
            throw error(since(from), said.where() + " " + said.what(), Sizing.expected(said));
        }
        return new Amount.Angle(radians.getAsDouble(), unit.get());
    }

    private PhraseError badUnit(Spot from, Word of, Optional<Unit> unit, String expected) {
        if (unit.isPresent()) {
            return error(since(from), "\"" + of.said() + "\" is not measured so", expected);
        }
        return strange()
                ? error(spot(), "\"" + token().text() + "\" is no unit known here", expected)
                : error(since(from), "\"" + of.said() + "\" has a number without a unit", expected);
    }

    PhraseError error(Spot spot, String what, String expected) {
        return error(spot, what, expected, List.of());
    }

    PhraseError error(Spot spot, String what, String expected, List<String> nearest) {
        return new PhraseError(text, spot.start(), spot.end(), what, expected, nearest);
    }

    /** The error for a token that is no known word, with what was expected there. */
    PhraseError unknown(String expected, List<String> candidates) {
        Token token = token();
        if (token.kind() != Token.Kind.LETTERS) {
            return error(token.spot(), "\"" + token.text() + "\" says nothing here", expected);
        }
        List<String> near = new ArrayList<>();
        boolean pair = at + 1 < tokens.size() && tokens.get(at + 1).kind() == Token.Kind.LETTERS;
        if (pair) {
            near.addAll(Spelling.nearest(token.text() + tokens.get(at + 1).text(), candidates));
        }
        near.addAll(Spelling.nearest(token.text(), candidates));
        if (near.isEmpty()) {
            for (String candidate : candidates) {
                String first = candidate.replaceFirst("[ -].*", "");
                if (!first.equals(candidate)
                        && !Spelling.nearest(token.text(), List.of(first)).isEmpty()) {
                    near.add(candidate);
                }
            }
        }
        return error(
                token.spot(),
                "\"" + token.text() + "\" is no word known here",
                expected,
                near.stream().distinct().limit(3).toList());
    }
}
