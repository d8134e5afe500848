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
import org.jspecify.annotations.Nullable;

/**
 * Goes along a phrase's tokens: words by their longest spelling, numbers, sizes with their units.
 */
final class Reader {
    private static final int LONGEST = 6;
    private static final List<String> COUNTS =
            List.of(
                    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine",
                    "ten", "eleven", "twelve");
    // Larger numbers are said in figures; whoever says one in words is shown how.
    private static final Map<String, Integer> LARGER =
            Map.of(
                    "fifteen", 15, "twenty", 20, "thirty", 30, "forty", 40, "fifty", 50, "sixty",
                    60, "seventy", 70, "eighty", 80, "ninety", 90, "hundred", 100);
    private static final Map<String, Integer> TIMES =
            Map.of("single", 1, "double", 2, "triple", 3, "quad", 4, "quadruple", 4);
    private static final Map<String, Double> SHARES =
            Map.of("half", 0.5, "third", 1.0 / 3, "quarter", 0.25);
    private final String text;
    private final Lexicon lexicon;
    private final List<Token> tokens;
    private final Optional<Ratio> ratio;
    private int at;

    /** "3:2", "3 against 2": cycles of the first hand and of the second. */
    record Ratio(double first, double second, Spot spot) {}

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
        this.ratio = takeRatio();
    }

    /** The cycles of the two hands, where they are said as a ratio; it is no longer ahead. */
    Optional<Ratio> ratio() {
        return ratio;
    }

    private Optional<Ratio> takeRatio() {
        for (int i = 0; i + 2 < tokens.size(); i++) {
            String between = Spelling.key(tokens.get(i + 1).text());
            boolean joins =
                    tokens.get(i + 1).kind() == Token.Kind.COLON
                            || between.equals("against")
                            || between.equals("over");
            OptionalDouble first = count(tokens.get(i));
            OptionalDouble second = count(tokens.get(i + 2));
            if (joins && first.isPresent() && second.isPresent() && !sizeAt(i - 1) && free(i + 3)) {
                Spot spot = tokens.get(i).spot().to(tokens.get(i + 2).spot());
                tokens.subList(i, i + 3).clear();
                return Optional.of(new Ratio(first.getAsDouble(), second.getAsDouble(), spot));
            }
        }
        return Optional.empty();
    }

    private static OptionalDouble count(Token token) {
        if (token.kind() == Token.Kind.NUMBER) {
            return OptionalDouble.of(token.number());
        }
        int count = COUNTS.indexOf(Spelling.key(token.text()));
        return count < 0 ? OptionalDouble.empty() : OptionalDouble.of(count);
    }

    private boolean sizeAt(int token) {
        return token >= 0 && measures(token);
    }

    // Whether a number before it is not its size.
    private boolean free(int token) {
        return token >= tokens.size()
                || (!measures(token) && Unit.spelt(tokens.get(token).text()).isEmpty());
    }

    private boolean measures(int token) {
        return Word.spelt(Spelling.full(tokens.get(token).text()))
                .filter(
                        w ->
                                w.measured() != Word.Measured.NOTHING
                                        || w == Word.ANTISPIN
                                        || w == Word.IN_SPIN)
                .isPresent();
    }

    /** Whether hands are named after what they do: "isolation (left) extension (right)". */
    boolean labelsTrail() {
        int comma = 0;
        while (comma < tokens.size() && tokens.get(comma).kind() != Token.Kind.COMMA) {
            comma++;
        }
        return comma > 1 && !owner(0) && (owner(comma - 1) || owner(tokens.size() - 1));
    }

    private boolean owner(int token) {
        return Word.spelt(Spelling.full(tokens.get(token).text()))
                .filter(w -> w.kind() == Word.Kind.OWNER)
                .isPresent();
    }

    /** Whether that word stood just before, a word of no weight between forgiven. */
    boolean after(String word) {
        int last = at - 1;
        while (last > 0 && List.of("a", "the").contains(Spelling.key(tokens.get(last).text()))) {
            last--;
        }
        return last >= 0 && Spelling.key(tokens.get(last).text()).equals(word);
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
        if (next(Token.Kind.LETTERS) && token().text().equalsIgnoreCase("v") && joined()) {
            return Optional.of(
                    new Found(Optional.empty(), Optional.of(Word.VERTICAL), token().spot(), 1));
        }
        StringBuilder key = new StringBuilder();
        StringBuilder full = new StringBuilder();
        Found best = null;
        for (int i = at; i < Math.min(at + LONGEST, tokens.size()); i++) {
            Token token = tokens.get(i);
            if (token.kind() != Token.Kind.LETTERS
                    && (i == at || token.kind() != Token.Kind.NUMBER)) {
                break;
            }
            key.append(Spelling.key(token.text()));
            full.append(Spelling.full(token.text()));
            Spot spot = tokens.get(at).spot().to(token.spot());
            Found known = known(key.toString(), spot, i + 1 - at);
            if (known == null && !full.toString().contentEquals(key)) {
                known = known(full.toString(), spot, i + 1 - at);
            }
            best = known == null ? best : known;
        }
        return Optional.ofNullable(best);
    }

    // Whether nothing is said before it that "v" could join to what follows.
    private boolean joined() {
        return at == 0
                || Word.spelt(Spelling.key(tokens.get(at - 1).text()))
                        .filter(w -> w.kind() == Word.Kind.JOIN)
                        .isPresent();
    }

    private @Nullable Found known(String key, Spot spot, int length) {
        Optional<TradeMotion> motion = lexicon.spelt(key);
        Optional<Word> word = motion.isPresent() ? Optional.empty() : Word.spelt(key);
        return motion.isPresent() || word.isPresent()
                ? new Found(motion, word, spot, length)
                : null;
    }

    /** Whether the word of a plane stands just before. */
    boolean afterPlane() {
        return at > 0
                && List.of("plane", "wheel", "wall", "floor")
                        .contains(Spelling.key(tokens.get(at - 1).text()));
    }

    void skipToComma() {
        while (more() && !next(Token.Kind.COMMA)) {
            at++;
        }
    }

    /** Whether a unit of length stands just before, as in "centre 10 cm left". */
    boolean afterLength() {
        return at > 0 && Unit.spelt(tokens.get(at - 1).text()).filter(Unit::length).isPresent();
    }

    /** Whether the stroke of a fraction comes next. */
    boolean inFraction() {
        return next(Token.Kind.SLASH)
                && at > 0
                && at + 1 < tokens.size()
                && tokens.get(at - 1).kind() == Token.Kind.NUMBER
                && tokens.get(at + 1).kind() == Token.Kind.NUMBER;
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

    /** Whether a way stands next in which a centre may lie. */
    boolean wayNext() {
        return next(Token.Kind.LETTERS)
                && List.of("left", "right", "up", "down", "forward", "back")
                        .contains(Spelling.key(token().text()));
    }

    /** Takes "out" or "out of phase", where it stands next. */
    boolean takeOut() {
        if (!take("out")) {
            return false;
        }
        int out = at;
        if (!take("of") || !take("phase", "sync")) {
            at = out;
        }
        return true;
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
                || (next(Token.Kind.LETTERS) && named(Spelling.key(token().text())).isPresent());
    }

    private static OptionalDouble named(String key) {
        int count = COUNTS.indexOf(key);
        Integer times = TIMES.get(key);
        return count >= 0
                ? OptionalDouble.of(count)
                : times == null ? OptionalDouble.empty() : OptionalDouble.of(times);
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
            OptionalDouble named = named(key);
            if (named.isPresent() || share != null) {
                at++;
                return new Unit.Figure(
                        share != null ? share : named.getAsDouble(), Optional.empty());
            }
        }
        throw mendable(
                spot(),
                more() ? "\"" + token().text() + "\" is no number" : "the number is missing",
                "a number " + whatFor,
                more() ? inFigures() : List.of());
    }

    /** Figures in the place of a word for a number, or of one that is spelt much the same. */
    private List<Edit> inFigures() {
        List<String> all = new ArrayList<>(COUNTS);
        all.addAll(LARGER.keySet());
        return Spelling.nearest(token().text(), all).stream()
                .limit(1)
                .map(word -> LARGER.containsKey(word) ? LARGER.get(word) : COUNTS.indexOf(word))
                .map(number -> new Edit(spot(), Integer.toString(number), Edit.RESPELT))
                .toList();
    }

    /** Takes the share that stands next, as in "three quarter time". */
    OptionalDouble share() {
        Double share = next(Token.Kind.LETTERS) ? SHARES.get(Spelling.full(token().text())) : null;
        at += share == null ? 0 : 1;
        return share == null ? OptionalDouble.empty() : OptionalDouble.of(share);
    }

    /** Numbers in words, for whoever looks for a word spelt much the same. */
    static List<String> counts() {
        return COUNTS;
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
        // Spinners say degrees, and say so mostly by saying nothing.
        Unit said = unit.orElse(Unit.DEGREES);
        OptionalDouble radians = said.radians(value);
        if (radians.isEmpty() || (unit.isEmpty() && strangeUnit())) {
            throw badUnit(from, of, unit, "an angle with degrees, rad or turns");
        }
        try {
            Refusal.angle(radians.getAsDouble(), "\"" + of.said() + "\"");
        } catch (Refusal beyond) {
            Refusal told = said.said(beyond, 1);
            throw error(since(from), told.where() + " " + told.what(), Sizing.expected(told));
        }
        return new Amount.Angle(radians.getAsDouble(), said);
    }

    // One letter or two after a number, of no meaning here, were meant as its unit.
    private boolean strangeUnit() {
        return strange() && token().text().length() <= 2;
    }

    private PhraseError badUnit(Spot from, Word of, Optional<Unit> unit, String expected) {
        if (unit.isPresent()) {
            return error(since(from), "\"" + of.said() + "\" is not measured so", expected);
        }
        if (strange()) {
            return error(spot(), "\"" + token().text() + "\" is not a known unit", expected);
        }
        Spot number = since(from);
        List<Edit> edits = new ArrayList<>();
        String bare = text.substring(number.start(), number.end());
        for (String length : List.of("cm", "in", "ft", "m")) {
            double metres = likely(bare, length);
            if (metres >= 0.1 && metres <= 1.5) {
                edits.add(new Edit(number, bare + " " + length, Edit.OFFERED));
            }
        }
        return new PhraseError(
                text,
                number,
                "\"" + of.said() + "\" has a number without a unit",
                expected,
                List.of(),
                edits);
    }

    // Metres of a bare number in that unit; 0 of what is no plain number.
    private static double likely(String bare, String unit) {
        return bare.matches("[0-9]*\\.?[0-9]+")
                ? Unit.spelt(unit).orElseThrow().metres(bare(bare))
                : 0;
    }

    private static Unit.Figure bare(String bare) {
        return new Unit.Figure(Double.parseDouble(bare), Optional.empty());
    }

    PhraseError error(Spot spot, String what, String expected) {
        return error(spot, what, expected, List.of());
    }

    PhraseError error(Spot spot, String what, String expected, List<String> nearest) {
        return new PhraseError(text, spot, what, expected, nearest, List.of());
    }

    /** The error, with changes that might mend it. */
    PhraseError mendable(Spot spot, String what, String expected, List<Edit> edits) {
        return new PhraseError(text, spot, what, expected, List.of(), edits);
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
                "\""
                        + token.text()
                        + (near.isEmpty() && token.text().length() > 3
                                ? "\" is no word of the trade known here; a motion of your own can be"
                                        + " given that name on your shelf, and is then said like any"
                                : "\" is not a known word"),
                expected,
                near.stream().distinct().limit(3).toList());
    }
}
