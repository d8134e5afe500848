package deferent.motion.phrase;

import static deferent.motion.trade.Word.*;

import deferent.motion.trade.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Where the words of the first hand end and those of the second begin, by token.
 *
 * <p>"vs" always joins. Without it a comma, a mark, "and", "with", or a hand's own label joins
 * where a motion is said on either side of it; and so do two motions side by side that are called a
 * hybrid.
 *
 * @param before the token at which the first hand's words end
 * @param after the token at which the second hand's begin
 */
record Seam(int before, int after) {
    private static final Set<Word> FLOWERY = Set.of(PETALS, IN_SPIN, ANTISPIN);

    /** Words between two places where hands might be joined. */
    private static final class Stretch {
        private final int before;
        private final int after;
        private final boolean firm;
        private final List<Word> words = new ArrayList<>();
        private boolean motion;

        Stretch(int before, int after, boolean firm) {
            this.before = before;
            this.after = after;
            this.firm = firm;
        }

        boolean says() {
            return motion || words.stream().anyMatch(FLOWERY::contains);
        }

        /** Whether this only goes on about the flower that the other began. */
        boolean goesOn(Stretch first) {
            return !firm
                    && !motion
                    && words.stream().noneMatch(first.words::contains)
                    && (!first.motion || !words.contains(PETALS));
        }
    }

    static Optional<Seam> of(Reader reader) {
        int mark = reader.mark();
        try {
            return found(reader);
        } finally {
            reader.back(mark);
        }
    }

    private static Optional<Seam> found(Reader reader) {
        boolean trailing = reader.labelsTrail();
        boolean hybrid = false;
        int second = -1;
        Stretch now = new Stretch(0, 0, false);
        List<Stretch> all = new ArrayList<>(List.of(now));
        while (reader.more()) {
            int at = reader.mark();
            Optional<Reader.Found> found = reader.word();
            int next = at + found.map(Reader.Found::tokens).orElse(1);
            Optional<Word> word = found.flatMap(Reader.Found::word);
            if (found.isPresent() && found.get().is(Kind.JOIN)) {
                return Optional.of(new Seam(at, next));
            }
            boolean mark =
                    reader.next(Token.Kind.MARK)
                            || (reader.next(Token.Kind.SLASH) && !reader.inFraction());
            boolean and = found.isPresent() && found.get().is(Kind.AND);
            boolean label =
                    found.isPresent()
                            && found.get().is(Kind.OWNER)
                            && !reader.afterLength()
                            && !reader.afterPlane();
            if (mark || and || reader.next(Token.Kind.COMMA) || label) {
                now =
                        new Stretch(
                                label && trailing ? next : at,
                                label && !trailing ? at : next,
                                mark || and);
                all.add(now);
            } else if (found.flatMap(Reader.Found::motion).isPresent()) {
                second = now.motion && second < 0 ? at : second;
                now.motion = true;
            } else if (word.isPresent()) {
                now.words.add(word.get());
                hybrid |= word.get() == HYBRID;
            }
            reader.back(next);
        }
        Optional<Seam> beside =
                hybrid && second > 0 ? Optional.of(new Seam(second, second)) : Optional.empty();
        return apart(all).or(() -> beside);
    }

    private static Optional<Seam> apart(List<Stretch> all) {
        Optional<Stretch> first = Optional.empty();
        for (Stretch stretch : all) {
            if (!stretch.says()) {
                continue;
            }
            if (first.isPresent() && !stretch.goesOn(first.get())) {
                return Optional.of(new Seam(stretch.before, stretch.after));
            }
            first = first.isPresent() ? first : Optional.of(stretch);
        }
        return Optional.empty();
    }
}
