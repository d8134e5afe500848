package deferent.motion.phrase;

import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Stretches;
import java.util.ArrayList;
import java.util.List;

/** Reads what stands after a size's word. */
final class Amount {
    /** What a size is measured in. */
    enum Measure {
        COUNT,
        LENGTH,
        ANGLE,
        OTHER
    }

    private final Reader reader;

    Amount(Reader reader) {
        this.reader = reader;
    }

    static Measure measure(Word word) {
        return switch (word) {
            case PETALS, CORNERS, TURNS, PLANE_TURNS, CYCLES, TIMING, TEMPO -> Measure.COUNT;
            case TETHER, HAND_RADIUS, DEPTH -> Measure.LENGTH;
            case START, AMPLITUDE, REST, TILT, HAND_START, MIDDLE, SWEEP, TIP, SWIVEL ->
                    Measure.ANGLE;
            default -> Measure.OTHER;
        };
    }

    Said.Amount of(Word word) {
        return switch (word) {
            case TURNS -> turns();
            case STRETCHES -> stretches();
            case CENTRE -> centre();
            case AXES -> axes();
            case TEMPO -> tempo();
            default ->
                    switch (measure(word)) {
                        case LENGTH -> reader.length(word, word == Word.HAND_RADIUS);
                        case ANGLE -> reader.angle(word);
                        default -> new Said.Count(reader.number("after \"" + word.said() + "\""));
                    };
        };
    }

    private Said.Amount tempo() {
        double value = reader.number("after \"tempo\", a minute");
        Spot spot = reader.spot();
        boolean other = reader.unit().filter(u -> u != Unit.A_MINUTE).isPresent();
        if (other) {
            throw reader.error(
                    spot, "a tempo is not measured so", "cycles a minute, as in \"tempo 60\"");
        }
        return new Said.Count(value);
    }

    private Said.Amount turns() {
        double out = reader.number("after \"turns\"");
        if (!reader.take("out")) {
            return new Said.Count(out);
        }
        double back = reader.number("before \"back\"");
        if (!reader.take("back")) {
            throw reader.error(reader.spot(), "\"back\" is missing", "\"turns 1.5 out 0.5 back\"");
        }
        return new Said.OutAndBack(out, back);
    }

    private Said.Amount stretches() {
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
        return new Said.InStretches(all);
    }

    private Said.Amount centre() {
        if (reader.take(Word.AT)) {
            return new Said.Shift(
                    reader.length(Word.CENTRE, false),
                    reader.length(Word.CENTRE, false),
                    reader.length(Word.CENTRE, false),
                    false);
        }
        double[] by = new double[3];
        Unit unit;
        do {
            Said.Length said = reader.length(Word.CENTRE, false);
            double length = said.value();
            unit = said.unit();
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
        return new Said.Shift(
                new Said.Length(by[0], false, unit),
                new Said.Length(by[1], false, unit),
                new Said.Length(by[2], false, unit),
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

    private Said.Amount axes() {
        Said.Length along = reader.length(Word.AXES, true);
        if (!reader.take("by")) {
            throw reader.error(reader.spot(), "\"by\" is missing", "\"axes 50 cm by 20 cm\"");
        }
        return new Said.Pair(along, reader.length(Word.AXES, true));
    }

    /** What stands after "loops". */
    Said.Amount loops() {
        List<Series.Term> terms = new ArrayList<>();
        Spot from = reader.spot();
        do {
            double k = reader.number("of turns a cycle for a loop, such as 1 or -2");
            Said.Length radius = reader.length(Word.LOOPS, false);
            double angle =
                    reader.numberNext() && angleNext() ? reader.angle(Word.LOOPS).radians() : 0;
            try {
                if (k != Math.rint(k)) {
                    throw new Refusal("turns " + k + " times", "a loop", "a whole number of turns");
                }
                terms.add(new Series.Term((int) k, radius.value(), angle));
            } catch (Refusal refusal) {
                Refusal said = radius.unit().said(refusal, 1);
                throw reader.error(
                        reader.since(from), said.where() + " " + said.what(), said.right());
            }
        } while (reader.take("plus"));
        return new Said.Sum(terms);
    }

    private boolean angleNext() {
        int mark = reader.mark();
        double value = reader.number("");
        boolean angle = reader.unit().filter(u -> u.radians(value).isPresent()).isPresent();
        reader.back(mark);
        return angle;
    }
}
