package deferent.motion.phrase;

import static deferent.motion.trade.Word.*;

import deferent.motion.trade.Amount;
import deferent.motion.trade.Amounts;
import deferent.motion.trade.Both;
import deferent.motion.trade.Trade;
import deferent.motion.trade.TradeMotion;
import deferent.motion.trade.Unit;
import deferent.motion.trade.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Reads a phrase by recursive descent:
 *
 * <pre>
 * phrase = hand, [("vs" | "riding" | {@link Seam}), hand], {",", said of both} ;
 * hand   = {filler | label | motion | qualifier | size} ;
 * size   = word, amount | amount, word ;
 * </pre>
 *
 * One hand alone is both hands doing it. Timing, direction, sense and tempo may stand anywhere,
 * because they are the pairing's.
 */
final class Parser {
    private static final Amount PLAIN = new Amount.Plain();

    /** A number that "at" stands before and that is no less is a tempo; our choice. */
    private static final double SLOW = 20;

    private final String text;
    private final Lexicon lexicon;
    private final Reader reader;
    private final Hand first = new Hand("first");
    private final Hand second = new Hand("second");
    private final Hand tail = new Hand("");
    private final Hand shared = new Hand("");
    private int end = Integer.MAX_VALUE;
    private boolean swapped;
    // Whether "at" stood just before.
    private boolean at;

    Parser(String text, Lexicon lexicon) {
        this.text = text;
        this.lexicon = lexicon;
        this.reader = new Reader(text, lexicon);
    }

    Phrase phrase() {
        Optional<Seam> seam = Seam.of(reader);
        end = seam.map(Seam::before).orElse(Integer.MAX_VALUE);
        hand(first, seam.isPresent());
        boolean rides = seam.isEmpty() && reader.more() && !reader.next(Token.Kind.COMMA);
        end = Integer.MAX_VALUE;
        if (seam.isPresent() || rides) {
            seam.ifPresentOrElse(s -> reader.back(s.after()), () -> skipRiding());
            settle(first);
            second();
            settle(second);
            alone(first);
            alone(second);
        } else {
            alone();
        }
        label();
        while (reader.more()) {
            both();
        }
        reader.ratio().ifPresent(this::cycles);
        if (seam.isEmpty() && !rides) {
            first.motion().flatMap(TradeMotion::both).ifPresent(this::unsaid);
        }
        return new Phrase(text, said(left()), said(right()), shared.remarks(), lexicon);
    }

    private void skipRiding() {
        reader.skip(reader.word().orElseThrow());
    }

    private void second() {
        hand(second, true);
        if (!second.done()) {
            Spot spot = reader.spot();
            List<Edit> edits = new ArrayList<>();
            for (Hand.Bare bare : second.bare()) {
                edits.add(new Edit(bare.spot(), bare.said() + " petals", Edit.RESPELT));
            }
            edits.add(new Edit(at(spot), first.motionName(), Edit.ADDED));
            edits.add(new Edit(at(spot), "static spin", Edit.ADDED));
            throw reader.mendable(
                    spot, "the second hand does nothing", "a motion, such as triquetra", edits);
        }
    }

    private static Spot at(Spot spot) {
        return new Spot(spot.start(), spot.start());
    }

    // One motion: both hands do it.
    private void alone() {
        if (!first.done() && shared.remarks().containsKey(STACKED)) {
            first.does(Trade.spelt("staticspin").orElseThrow(), shared.spotOf(STACKED));
        }
        if (!first.done()) {
            throw missing(false);
        }
        boolean flower =
                first.motion().equals(Optional.of(Trade.FLOWER))
                        && first.bare().isEmpty()
                        && Stream.of(PETALS, IN_SPIN, ANTISPIN, TURNS)
                                .noneMatch(first.remarks()::containsKey);
        if (flower) {
            throw PhraseError.explaining(text, first.spot(), FLOWERS, OptionalDouble.empty());
        }
        settle(first);
        Optional<Word> whose = first.label().filter(w -> w != BOTH);
        if (whose.isPresent()) {
            throw reader.mendable(
                    reader.spot(),
                    "only the " + whose.get().said() + " hand does anything",
                    "what the other hand does",
                    List.of(
                            new Edit(at(reader.spot()), "vs " + first.motionName(), Edit.ADDED),
                            new Edit(at(reader.spot()), "vs static spin", Edit.ADDED)));
        }
        second.copy(first);
    }

    /** What goes without saying where one word is both hands'. */
    private void unsaid(Both both) {
        boolean round =
                shared.remarks().containsKey(REVERSED)
                        || shared.remarks().containsKey(COUNTER_CLOCKWISE);
        (round ? both.backwards() : both.unsaid())
                .forEach(
                        (word, amount) -> {
                            Said.Remark remark = new Said.Remark(amount, first.spot());
                            List<Hand> whose =
                                    word.kind() == Word.Kind.SHARED
                                            ? List.of(shared)
                                            : List.of(first, second);
                            whose.stream()
                                    .filter(hand -> hand.clash(word).isEmpty())
                                    .forEach(hand -> hand.remarks().put(word, remark));
                        });
    }

    private void alone(Hand hand) {
        Optional<TradeMotion> motion = hand.motion();
        if (motion.flatMap(TradeMotion::both).filter(Both::only).isPresent()) {
            String name = motion.get().said();
            throw reader.mendable(
                    hand.spot(),
                    "\"" + name + "\" is what both hands do",
                    "it alone, without \"vs\", or a motion of one hand",
                    List.of(
                            new Edit(new Spot(0, text.length()), name, Edit.RESPELT),
                            new Edit(hand.spot(), "static spin", Edit.OFFERED)));
        }
    }

    private void label() {
        Optional<Word> one = first.label();
        Optional<Word> other = second.label();
        if (one.isPresent() && one.equals(other)) {
            throw reader.mendable(
                    first.labelSpot().to(second.labelSpot()),
                    "both motions are the " + one.get().said() + " hand's",
                    "one for each hand",
                    List.of(
                            new Edit(first.labelSpot(), "", Edit.OFFERED),
                            new Edit(second.labelSpot(), "", Edit.OFFERED)));
        }
        swapped =
                one.equals(Optional.of(RIGHT))
                        || (one.isEmpty() && other.equals(Optional.of(LEFT)));
    }

    private Hand left() {
        return swapped ? second : first;
    }

    private Hand right() {
        return swapped ? first : second;
    }

    private void cycles(Reader.Ratio ratio) {
        remark(first, CYCLES, new Amount.Count(ratio.first()), ratio.spot());
        remark(second, CYCLES, new Amount.Count(ratio.second()), ratio.spot());
    }

    /** Reads words that say one hand alone, to their end. */
    Said hand() {
        hand(first, true);
        if (reader.more() || !first.done()) {
            throw missing(true);
        }
        settle(first);
        return said(first);
    }

    private PhraseError missing(boolean versus) {
        Spot spot = reader.spot();
        return reader.mendable(
                spot,
                "no motion is said",
                versus
                        ? "a motion before \"vs\""
                        : "a motion, or two with \"vs\" between them, as in \"isolation vs triquetra\"",
                List.of(
                        new Edit(at(spot), "isolation vs triquetra", Edit.ADDED),
                        new Edit(at(spot), "static spin vs triquetra", Edit.ADDED)));
    }

    // Up to what joins the hands, or for the second hand or both to the comma after it.
    private void hand(Hand hand, boolean joined) {
        while (reader.more() && reader.mark() < end) {
            if (reader.next(Token.Kind.COMMA)) {
                if (hand.done() && (hand == second || !joined)) {
                    return;
                }
                reader.skip();
                continue;
            }
            Optional<Reader.Found> next = reader.word();
            if (next.isPresent() && next.get().is(Word.Kind.JOIN)) {
                throw third(next.get().spot());
            }
            if (!joined
                    && hand.done()
                    && next.flatMap(Reader.Found::word).equals(Optional.of(RIDING))
                    && motionAfter(next.get())) {
                remark(hand, RIDING, new Amount.Plain(), next.get().spot());
                return;
            }
            if (next.isPresent() && next.get().is(Word.Kind.OWNER)) {
                if (hand == second && hand.done() && next.get().word().equals(Optional.of(BOTH))) {
                    ofBoth(next.get());
                    return;
                }
                owner(hand, next.get());
                continue;
            }
            item(hand);
        }
        if (joined && !hand.done() && hand == first) {
            Spot spot = reader.spot();
            throw reader.mendable(
                    spot,
                    "the first hand does nothing",
                    "a motion before \"vs\"",
                    List.of(
                            new Edit(at(spot), "static spin", Edit.ADDED),
                            new Edit(at(spot), "isolation", Edit.ADDED)));
        }
    }

    // "both" after the second motion is said of sizes of both, which it stands before.
    private void ofBoth(Reader.Found found) {
        Optional<Spot> size =
                second.remarks().entrySet().stream()
                        .filter(said -> said.getKey().measured() != Word.Measured.NOTHING)
                        .map(said -> said.getValue().spot())
                        .filter(spot -> spot.start() > second.spot().start())
                        .findFirst();
        int mark = reader.mark();
        reader.skip(found);
        boolean last = !reader.more() || reader.next(Token.Kind.COMMA);
        reader.back(mark);
        if (last && size.isPresent()) {
            throw reader.mendable(
                    found.spot(),
                    "\"both\" after a size that so far is the second hand's",
                    "sizes of both after a comma at the end",
                    List.of(
                            new Edit(at(size.get()), ",", Edit.RESPELT),
                            new Edit(found.spot(), "", Edit.OFFERED)));
        }
    }

    private boolean motionAfter(Reader.Found found) {
        int mark = reader.mark();
        reader.skip(found);
        while (reader.more() && reader.word().filter(Hand::saysMotion).isEmpty()) {
            reader.skip();
        }
        boolean motion = reader.more();
        reader.back(mark);
        return motion;
    }

    private PhraseError third(Spot spot) {
        Spot rest = new Spot(spot.start(), text.length());
        List<Edit> edits = new ArrayList<>(List.of(new Edit(rest, "", Edit.OFFERED)));
        return reader.mendable(
                spot,
                "a third hand; here are two, a partner's hands are another pair",
                "two motions with one \"vs\" between them",
                edits);
    }

    private void owner(Hand hand, Reader.Found found) {
        Word whose = found.word().orElseThrow();
        if (reader.afterPlane() && found.tokens() == 1 && whose != BOTH) {
            reader.skip(found);
            remark(hand, whose == LEFT ? LEFT_SIDE : RIGHT_SIDE, PLAIN, found.spot());
            return;
        }
        if (hand.label().filter(w -> w != whose).isPresent()) {
            throw reader.error(
                    found.spot(),
                    "\""
                            + whose.said()
                            + "\" among the words of the "
                            + hand.label().orElseThrow().said()
                            + " hand",
                    "sizes of both or of one hand after a comma at the end");
        }
        hand.label(whose, found.spot());
        reader.skip(found);
    }

    // After the comma: sizes of both hands, or of the hand that is named.
    private void both() {
        if (reader.next(Token.Kind.COMMA)) {
            reader.skip();
        }
        Hand owner = tail;
        tail.remarks().clear();
        while (reader.more() && !reader.next(Token.Kind.COMMA)) {
            Optional<Reader.Found> next = reader.word();
            if (next.isPresent() && next.get().is(Word.Kind.JOIN)) {
                throw third(next.get().spot());
            }
            if (next.isPresent() && next.get().is(Word.Kind.OWNER)) {
                Word whose = next.get().word().orElseThrow();
                owner = whose == LEFT ? left() : whose == RIGHT ? right() : tail;
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
        boolean said = at;
        read(hand);
        at = at && !said;
    }

    private void read(Hand hand) {
        if (reader.next(Token.Kind.MARK)
                || reader.next(Token.Kind.COLON)
                || reader.next(Token.Kind.SLASH)) {
            reader.skip();
            return;
        }
        if (reader.numberNext() && reader.word().isEmpty()) {
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
            case FILLER, AND, ASIDE -> {
                reader.skip(found);
                if (word.said().equals("in") && saysInSpin(hand)) {
                    remark(hand, IN_SPIN, PLAIN, found.spot());
                }
                at = word.said().equals("at");
                return;
            }
            case FLAG, SIZE, SHARED -> {
                reader.skip(found);
                if (word.said().equals("TO") && nextIsMotion()) {
                    throw explaining(found.spot(), TRANSITION);
                }
                if (word == MIRRORED && hand != tail && !hand.done()) {
                    throw mirrored(found.spot());
                }
                if (!word.both().isEmpty()) {
                    word.both().forEach(w -> remark(shared, w, PLAIN, found.spot()));
                    return;
                }
                Amount amount = new AmountReader(reader).of(word);
                remark(whose(hand, word), word, amount, reader.since(found.spot()));
            }
            case EXPLAINED -> throw explained(found, word);
            default -> throw reader.error(found.spot(), "is out of place here", expected(hand));
        }
    }

    // "4 petal in", "in 4": the last of a hand's words, where they are a flower's or there are no
    // others, or before a number.
    private boolean saysInSpin(Hand hand) {
        boolean flower = hand.remarks().containsKey(PETALS) || !hand.bare().isEmpty();
        boolean open = hand != tail && hand != shared && !hand.remarks().containsKey(ANTISPIN);
        boolean last =
                !reader.more()
                        || reader.mark() >= end
                        || reader.next(Token.Kind.COMMA)
                        || reader.word()
                                .filter(f -> f.is(Word.Kind.SHARED) || f.is(Word.Kind.JOIN))
                                .isPresent();
        return open && (last && (flower || !hand.done()) || !hand.done() && reader.numberNext());
    }

    // Before a motion it could be that hand's alone, which then goes the other way round.
    private PhraseError mirrored(Spot spot) {
        return reader.mendable(
                spot,
                "\""
                        + MIRRORED.said()
                        + "\" before one hand's motion could be that hand's or of all",
                "at the end for all of it; one hand against the other is opposites",
                List.of(
                        new Edit(spot, OPPOSITE.said(), Edit.RESPELT),
                        new Edit(
                                new Spot(spot.start(), text.length()),
                                text.substring(spot.end()).strip() + ", " + MIRRORED.said(),
                                Edit.RESPELT)));
    }

    private boolean nextIsMotion() {
        return reader.more() && reader.word().flatMap(Reader.Found::motion).isPresent();
    }

    // Which way round is a hand's own where it stands among its words.
    private Hand whose(Hand hand, Word word) {
        boolean sense = word == CLOCKWISE || word == COUNTER_CLOCKWISE;
        return word.kind() != Word.Kind.SHARED || (sense && hand != tail) ? hand : shared;
    }

    private PhraseError explaining(Spot spot, Word word) {
        return PhraseError.explaining(text, spot, word, OptionalDouble.empty());
    }

    private PhraseError explained(Reader.Found found, Word word) {
        reader.skip(found);
        if (word == LASTING) {
            reader.skipToComma();
            return explaining(reader.since(found.spot()), word);
        }
        if (word == THEN) {
            Spot before = new Spot(0, found.spot().end());
            Spot after = new Spot(found.spot().start(), text.length());
            return reader.mendable(
                    found.spot(),
                    "\"" + word.said() + "\" is " + word.means(),
                    "one pattern at a time",
                    List.of(new Edit(after, "", Edit.OFFERED), new Edit(before, "", Edit.OFFERED)));
        }
        if (word == PHASE && reader.numberNext()) {
            double number = reader.number("");
            reader.unit();
            return PhraseError.explaining(
                    text, reader.since(found.spot()), word, OptionalDouble.of(number));
        }
        return explaining(found.spot(), word);
    }

    // "triquetra on a pendulum" may ride it.
    private List<Edit> joins(Spot spot, Reader.Found found) {
        Edit vs = new Edit(at(spot), "vs", Edit.OFFERED);
        int mark = reader.mark();
        reader.back(mark - found.tokens());
        boolean on = reader.after("on");
        reader.back(mark);
        return on ? List.of(new Edit(at(spot), "riding", Edit.OFFERED), vs) : List.of(vs);
    }

    // A word for what is said already: "unit circle iso", "triquetra flower".
    private static boolean again(TradeMotion said, TradeMotion motion) {
        return said.equals(motion) || (motion.equals(Trade.FLOWER) && said.takes().contains(BOX));
    }

    private void motion(Hand hand, TradeMotion motion, Reader.Found found) {
        reader.skip(found);
        if (hand != tail && hand.motion().filter(said -> again(said, motion)).isPresent()) {
            return;
        }
        if (hand == tail || hand.motion().isPresent()) {
            Spot spot = found.spot();
            throw reader.mendable(
                    spot,
                    hand == tail
                            ? "both hands have their motions already"
                            : "a second motion for the " + hand.name() + " hand",
                    hand == first ? "\"vs\" or \"riding\" before it" : "a size, timing or plane",
                    hand == first ? joins(spot, found) : List.of());
        }
        hand.does(motion, found.spot());
        Optional<Word> follows = motion.follows();
        if (follows.isPresent()) {
            Amount amount = new AmountReader(reader).of(follows.get());
            hand.remarks().put(follows.get(), new Said.Remark(amount, reader.since(found.spot())));
        }
    }

    // "4 petals", "60 cm tether", "30° tilt", "1/4 time", "90 degrees out", "120 bpm"; a bare
    // number waits for its
    // motion.
    private void amountFirst(Hand hand) {
        boolean placed = at;
        Spot from = reader.spot();
        double value = reader.number("");
        int afterNumber = reader.mark();
        if (hand != tail && hand != shared && reader.take("beat", "beats")) {
            Optional<Reader.Found> beats = reader.word();
            if (beats.flatMap(Reader.Found::motion).filter(Trade.WEAVE::equals).isPresent()) {
                motion(hand, weave(value, reader.since(from)), beats.get());
                return;
            }
            reader.back(afterNumber);
        }
        double share = value * reader.share().orElse(1);
        if (reader.take("time", "timing")) {
            timing(share, reader.since(from));
            return;
        }
        reader.back(afterNumber);
        Optional<Reader.Found> told = reader.word().filter(f -> f.is(Word.Kind.EXPLAINED));
        if (told.isPresent()) {
            reader.skip(told.get());
            Word word = told.get().word().orElseThrow();
            if (word.said().equals("beat") && Trade.weave(value).isPresent()) {
                throw beatsOfNothing(Trade.weave(value).get(), reader.since(from));
            }
            throw PhraseError.explaining(text, reader.since(from), word, OptionalDouble.of(value));
        }
        Optional<Unit> unit = reader.unit();
        Unit turn = unit.orElse(Unit.DEGREES);
        if (turn.radians(value).isPresent() && reader.takeOut()) {
            apart(turn.radians(value).getAsDouble() / (2 * Math.PI), reader.since(from));
            return;
        }
        String unitText = text.substring(from.start(), reader.since(from).end());
        Optional<Word> word = sizeNext();
        if (word.isEmpty() && unit.isPresent()) {
            reader.back(afterNumber);
            Optional<Word> bare = sizeNext();
            if (bare.filter(w -> w != TETHER).isPresent()) {
                word = bare;
                unit = Optional.empty();
            } else {
                reader.unit();
            }
        }
        Optional<Word> named = word;
        Optional<Amount> amount = named.flatMap(w -> AmountReader.before(w, value, unitText));
        if (named.isEmpty() && unit.isEmpty() && reader.strange()) {
            throw reader.unknown("a unit, or the word of a size such as petals", candidates());
        }
        if (named.isEmpty() || amount.isEmpty()) {
            boolean angle = unit.flatMap(u -> optional(u.radians(value))).isPresent();
            Spot spot = reader.since(from);
            double radians = unit.map(u -> u.radians(value).orElse(0)).orElse(0.0);
            Hand.Bare bare =
                    new Hand.Bare(angle ? radians : value, angle, placed, spot, unitText.strip());
            if (hand != tail && hand != shared && (angle || unit.isEmpty()) && named.isEmpty()) {
                hand.bare().add(bare);
                return;
            }
            throw unsized(bare, unit);
        }
        reader.take(named.get());
        remark(whose(hand, named.get()), named.get(), amount.get(), reader.since(from));
    }

    private TradeMotion weave(double beats, Spot spot) {
        return Trade.weave(beats)
                .orElseThrow(
                        () ->
                                reader.mendable(
                                        spot,
                                        "a weave of " + Amounts.number(beats) + " beats",
                                        "two, three or five beats",
                                        List.of(
                                                new Edit(spot, "three-beat", Edit.OFFERED),
                                                new Edit(spot, "five-beat", Edit.OFFERED))));
    }

    // "three-beat waeve": what is meant by the beats is the word after them, if that is none of
    // the known ones.
    private PhraseError beatsOfNothing(TradeMotion weave, Spot beats) {
        boolean misspelt = reader.next(Token.Kind.LETTERS) && reader.word().isEmpty();
        Spot spot = misspelt ? beats.to(reader.spot()) : beats;
        return reader.mendable(
                spot,
                "\""
                        + text.substring(beats.start(), beats.end())
                        + "\" counts the beats of a weave",
                "\"" + weave.said() + "\"",
                List.of(new Edit(spot, weave.said(), Edit.RESPELT)));
    }

    private static Optional<Double> optional(OptionalDouble value) {
        return value.isPresent() ? Optional.of(value.getAsDouble()) : Optional.empty();
    }

    private void timing(double share, Spot spot) {
        if (share == 0.5) {
            throw PhraseError.explaining(
                    text, spot, Word.spelt("halftime").orElseThrow(), OptionalDouble.empty());
        }
        apart(share, spot);
    }

    private void apart(double cycles, Spot spot) {
        if (cycles == 0.5) {
            remark(shared, SPLIT, PLAIN, spot);
        } else if (cycles == 0.25) {
            remark(shared, QUARTER, PLAIN, spot);
        } else {
            remark(shared, TIMING, new Amount.Count(cycles), spot);
        }
    }

    /** What numbers and angles without a word of their own are of, by the hand's motion. */
    private void settle(Hand hand) {
        for (Hand.Bare bare : hand.bare()) {
            if (bare.angle()) {
                angle(hand, bare);
            } else if (counts(hand, bare)) {
                remark(hand, PETALS, new Amount.Count(bare.value()), bare.spot());
            } else if (hand.takes(AMPLITUDE) && !hand.takes(TURNS)) {
                throw swing(bare, bare.value());
            } else if (bare.at() && hand.takes(HORIZONTAL)) {
                double radians = Math.toRadians(bare.value());
                remark(hand, TILT, new Amount.Angle(radians, Unit.DEGREES), bare.spot());
            } else if (bare.at() && bare.value() >= SLOW) {
                remark(shared, TEMPO, new Amount.Count(bare.value()), bare.spot());
            } else {
                throw unsized(bare, Optional.empty());
            }
        }
        hand.bare().clear();
    }

    private static boolean counts(Hand hand, Hand.Bare bare) {
        return hand.takes(PETALS)
                && hand.meant().equals(Trade.FLOWER)
                && bare.value() == Math.rint(bare.value())
                && bare.value() >= 1
                && bare.value() <= 25
                && !bare.at();
    }

    private void angle(Hand hand, Hand.Bare bare) {
        if (hand.takes(AMPLITUDE) && !hand.takes(TURNS)) {
            throw swing(bare, Math.toDegrees(bare.value()));
        }
        if (!hand.takes(TILT)) {
            throw unsized(bare, Optional.of(Unit.DEGREES));
        }
        remark(hand, TILT, new Amount.Angle(bare.value(), Unit.DEGREES), bare.spot());
    }

    private PhraseError swing(Hand.Bare bare, double degrees) {
        List<Edit> edits = new ArrayList<>();
        for (double each : new double[] {degrees, degrees / 2}) {
            if (each < 180) {
                edits.add(
                        new Edit(
                                bare.spot(),
                                "amplitude " + Amounts.angle(Math.toRadians(each)),
                                Edit.OFFERED));
            }
        }
        return reader.mendable(
                bare.spot(),
                "an angle of swing is said to each side, and "
                        + bare.said()
                        + " could be that or all of it",
                "an amplitude, as in \"pendulum amplitude 60°\"",
                edits);
    }

    private PhraseError unsized(Hand.Bare bare, Optional<Unit> unit) {
        List<Edit> edits = new ArrayList<>();
        boolean length = unit.filter(Unit::length).isPresent();
        if (length && reader.wayNext()) {
            edits.add(new Edit(bare.spot(), "centre " + bare.said(), Edit.RESPELT));
        }
        boolean whole = bare.value() == Math.rint(bare.value()) && bare.value() >= 1;
        if (unit.equals(Optional.of(Unit.INCHES)) && whole && bare.value() <= 25) {
            edits.add(
                    new Edit(
                            bare.spot(),
                            Math.round(bare.value()) + " petals in-spin",
                            Edit.RESPELT));
        }
        for (String size :
                length
                        ? List.of("tether ", "hand radius ")
                        : bare.angle()
                                ? List.of("tilt ", "start ")
                                : bare.value() < 10
                                        ? List.<String>of()
                                        : List.of("tempo ", "tilt ")) {
            edits.add(new Edit(bare.spot(), size + bare.said(), Edit.OFFERED));
        }
        // "2x", the x of "vs" otherwise.
        int rest = bare.spot().end();
        if (unit.isEmpty() && bare.value() < 10 && text.substring(rest).matches("x\\b.*")) {
            edits.add(
                    new Edit(
                            new Spot(bare.spot().start(), rest + 1),
                            "tempo " + Amounts.number(60 * bare.value()),
                            Edit.RESPELT));
        }
        if (unit.isEmpty() && bare.value() >= 10) {
            edits.add(new Edit(bare.spot(), "hand radius " + bare.said() + " cm", Edit.OFFERED));
        }
        return reader.mendable(
                bare.spot(),
                "\"" + bare.said() + "\" does not say what it is the size of",
                "a size's word beside it, such as petals, tether, hand radius or tilt",
                edits);
    }

    private Optional<Word> sizeNext() {
        return reader.word()
                .flatMap(Reader.Found::word)
                .filter(w -> w.measured() != Word.Measured.NOTHING);
    }

    private void remark(Hand hand, Word word, Amount amount, Spot spot) {
        Optional<Word> clash = hand.clash(word);
        if (clash.equals(Optional.of(word)) && amount instanceof Amount.Plain) {
            return; // said twice, and the same
        }
        if (clash.isPresent()) {
            Word other = clash.get();
            throw reader.mendable(
                    spot,
                    other == word
                            ? "a second " + word.said()
                            : "\"" + word.said() + "\" after \"" + other.said() + "\"",
                    "only one of them",
                    List.of(
                            new Edit(spot, "", Edit.ADDED),
                            new Edit(hand.spotOf(other), "", Edit.ADDED)));
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
        Optional<Amount> petals =
                Optional.ofNullable(hand.remarks().get(PETALS)).map(Said.Remark::amount);
        boolean inSpin = hand.remarks().containsKey(IN_SPIN);
        if (petals.isPresent() && !inSpin && hand.meant().equals(Trade.FLOWER)) {
            fewPetals(hand, petals.get());
        }
        return hand.said();
    }

    // An antispin of one or two petals turns its poi once the other way, or not at all.
    private void fewPetals(Hand hand, Amount petals) {
        boolean one = petals.equals(new Amount.Count(1));
        if (!one && !petals.equals(new Amount.Count(2))) {
            return;
        }
        Spot spot = spotOf(hand);
        throw reader.mendable(
                spot,
                one
                        ? "an antispin of one petal is a poi that does not turn, only goes round with"
                                + " the hand pointing one way"
                        : "an antispin of two petals is the cat-eye",
                one ? "one that turns" : "cat-eye",
                (one
                                ? List.of("one-petal in-spin", "triquetra", "cat-eye")
                                : List.of("cat-eye", "linear extension"))
                        .stream().map(words -> new Edit(spot, words, Edit.OFFERED)).toList());
    }

    private static Spot spotOf(Hand hand) {
        Spot spot = hand.spotOf(PETALS);
        if (hand.remarks().containsKey(ANTISPIN)) {
            spot = spot.with(hand.spotOf(ANTISPIN));
        }
        return hand.motion().isPresent() ? spot.with(hand.spot()) : spot;
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
        return Stream.of(trade, words, own, Stream.of(Reader.counts()))
                .flatMap(s -> s)
                .flatMap(List::stream)
                .toList();
    }
}
