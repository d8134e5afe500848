package deferent.motion.phrase;

import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Stretches;
import deferent.motion.trade.Amount;
import deferent.motion.trade.Unit;
import deferent.motion.trade.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads what stands after a size's word. */
final class AmountReader {
    private final Reader reader;

    AmountReader(Reader reader) {
        this.reader = reader;
    }

    /** What stands after that word. */
    Amount of(Word word) {
        return switch (word.measured()) {
            case NOTHING -> new Amount.Plain();
            case COUNT -> new Amount.Count(reader.number("after \"" + word.said() + "\""));
            case LENGTH, TETHERS -> reader.length(word);
            case ANGLE -> reader.angle(word);
            case TURNS -> turns();
            case STRETCHES -> stretches();
            case CENTRE -> centre();
            case AXES -> axes();
            case LOOPS -> loops();
            case TEMPO -> tempo();
        };
    }

    /** A number that stood before the word that it is the size of. */
    static Optional<Amount> before(Word word, double value, String said) {
        Reader again = new Reader(said, Lexicon.EMPTY);
        return switch (word.measured()) {
            case COUNT, TURNS, TEMPO -> Optional.of(new Amount.Count(value));
            case LENGTH, TETHERS -> Optional.of(again.length(word));
            case ANGLE -> Optional.of(again.angle(word));
            case NOTHING, STRETCHES, CENTRE, AXES, LOOPS -> Optional.empty();
        };
    }

    private Amount tempo() {
        double value = reader.number("after \"tempo\", a minute");
        Spot spot = reader.spot();
        if (reader.unit().isPresent()) {
            throw reader.error(
                    spot, "a tempo is not measured so", "cycles a minute, as in \"tempo 60\"");
        }
        reader.take("bpm");
        return new Amount.Count(value);
    }

    private Amount turns() {
        double out = reader.number("after \"turns\"");
        if (!reader.take("out")) {
            return new Amount.Count(out);
        }
        double back = reader.number("before \"back\"");
        if (!reader.take("back")) {
            throw reader.error(reader.spot(), "\"back\" is missing", "\"turns 1.5 out 0.5 back\"");
        }
        return new Amount.OutAndBack(out, back);
    }

    private Amount stretches() {
        List<Stretches.Stretch> all = new ArrayList<>();
        Spot from = reader.spot();
        do {
            double share = reader.number("for a stretch's share of the cycle");
            double turns = reader.number("for a stretch's turns");
            reader.take("turn", "turns");
            boolean resting = reader.take("resting");
            try {
                all.add(
                        new Stretches.Stretch(
                                share,
                                turns,
                                resting ? Stretches.Ease.RESTING : Stretches.Ease.EVEN));
            } catch (Refusal refusal) {
                throw reader.error(
                        reader.since(from),
                        refusal.where() + " " + refusal.what(),
                        refusal.right());
            }
        } while (reader.take("then"));
        return new Amount.InStretches(all);
    }

    private Amount centre() {
        if (reader.take("at")) {
            return new Amount.Shift(
                    reader.length(Word.CENTRE),
                    reader.length(Word.CENTRE),
                    reader.length(Word.CENTRE),
                    false);
        }
        double[] by = new double[3];
        Unit unit;
        do {
            Amount.Length said = reader.length(Word.CENTRE);
            double length = said.value();
            unit = said.said();
            if (reader.take("left")) {
                by[0] += length;
            } else if (reader.take("right")) {
                by[0] -= length;
            } else if (reader.take("up")) {
                by[1] += length;
            } else if (reader.take("down")) {
                by[1] -= length;
            } else if (reader.take("forward")) {
                by[2] += length;
            } else if (reader.take("back")) {
                by[2] -= length;
            } else {
                throw reader.error(
                        reader.spot(),
                        "no way is said for the centre",
                        "left, right, up, down, forward or back");
            }
        } while (reader.numberNext() && anotherWay());
        return new Amount.Shift(
                new Amount.Length(by[0], false, unit),
                new Amount.Length(by[1], false, unit),
                new Amount.Length(by[2], false, unit),
                true);
    }

    private boolean anotherWay() {
        int mark = reader.mark();
        reader.number("");
        boolean way =
                reader.unit().isPresent()
                        && reader.take("left", "right", "up", "down", "forward", "back");
        reader.back(mark);
        return way;
    }

    private Amount axes() {
        Amount.Length along = reader.length(Word.AXES);
        if (!reader.take("by")) {
            throw reader.error(reader.spot(), "\"by\" is missing", "\"axes 50 cm by 20 cm\"");
        }
        return new Amount.Pair(along, reader.length(Word.AXES));
    }

    private Amount loops() {
        List<Series.Term> terms = new ArrayList<>();
        Spot from = reader.spot();
        do {
            double k = reader.number("of turns a cycle for a loop, such as 1 or -2");
            Amount.Length radius = reader.length(Word.LOOPS);
            double angle =
                    reader.numberNext() && angleNext() ? reader.angle(Word.LOOPS).radians() : 0;
            try {
                if (k != Math.rint(k)) {
                    throw new Refusal("turns " + k + " times", "a loop", "a whole number of turns");
                }
                terms.add(new Series.Term((int) k, radius.value(), angle));
            } catch (Refusal refusal) {
                Refusal said = radius.said().said(refusal, 1);
                throw reader.error(
                        reader.since(from), said.where() + " " + said.what(), said.right());
            }
        } while (reader.take("plus"));
        return new Amount.Sum(terms);
    }

    private boolean angleNext() {
        int mark = reader.mark();
        double value = reader.number("");
        boolean angle = reader.unit().filter(u -> u.radians(value).isPresent()).isPresent();
        reader.back(mark);
        return angle;
    }
}
