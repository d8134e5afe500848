package deferent.studio;

import static deferent.studio.AskKey.keys;

import deferent.motion.phrase.Lexicon;
import deferent.motion.trace.Trace;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import deferent.record.TransitionsJson;
import deferent.search.set.PairBook;
import deferent.search.transition.Grade;
import deferent.search.transition.Transition;
import deferent.search.transition.Transitions;
import deferent.take.ShownTransition;
import deferent.take.TransitionTake;
import deferent.take.Wishes;
import java.util.List;
import tools.jackson.databind.node.ObjectNode;

/**
 * What a question about transitions asks: from which pattern into which, and how hard at most. Who
 * spins is who spins the first.
 *
 * @param from the pattern that is left
 * @param to the pattern that is joined
 * @param hardest the hardest transition that counts as possible
 */
record TransitionAsk(PatternDocument from, PatternDocument to, Grade hardest) {
    static final AskKey<Question> TO =
            AskKey.object("to", "the pattern that is joined", Matter.KEYS);
    static final AskKey<Integer> WHICH =
            AskKey.whole(
                    "transition", "which of the transitions, from 0; unsaid is the first", 0, 31);

    static final List<AskKey<?>> KEYS = keys(Matter.KEYS, keys(TO.must(), SetAsk.HARDEST));

    static TransitionAsk of(Question asked, Lexicon lexicon) {
        return new TransitionAsk(
                Matter.of(asked, lexicon).document(),
                Matter.of(asked.get(TO), lexicon).document(),
                asked.or(SetAsk.HARDEST, Grade.USUAL));
    }

    /** Who spins the first pattern, with what. */
    PairBook book(PairBooks books) {
        return books.of(hardest, from.performer(), from.kit());
    }

    private Transitions found(PairBook book) {
        return book.between(from.pairing(), to.pairing());
    }

    /** All of them, best first. */
    ObjectNode all(PairBooks books) {
        return TransitionsJson.tree(from, to, found(book(books)));
    }

    /**
     * One of them as the stage plays it, and the second pattern as it goes on after it.
     *
     * @param which from 0
     * @param rate points a second
     */
    ObjectNode played(PairBooks books, int which, int rate) {
        PairBook book = book(books);
        Transition transition = one(book, which);
        ShownTransition shown = ShownTransition.of(book.finder(), transition);
        ObjectNode answer =
                PlayedAnswer.of(shown.played().trace(), book.performer(), book.kit(), rate);
        answer.put("from", from.name());
        answer.put("to", to.name());
        answer.set("passages", PlayedAnswer.passages(shown.played(), List.of(transition)));
        PlayedAnswer.counts(answer, shown.counts());
        answer.set("after", PatternJson.tree(to));
        Trace onward = book.spun(to.pairing());
        ObjectNode on = PlayedAnswer.of(onward, book.performer(), book.kit(), rate);
        double clock = transition.joins() + shown.seconds() - shown.joined();
        double cycles = (clock - onward.interval().start()) / onward.period();
        PlayedAnswer.counts(on, ShownTransition.counts(to.pairing()));
        on.put("phase", cycles - Math.floor(cycles));
        answer.set("onward", on);
        return answer;
    }

    private Transition one(PairBook book, int which) {
        List<Transition> all = found(book).list();
        if (which >= all.size()) {
            throw new BadRequest(
                    422,
                    "is " + which + " of " + all.size(),
                    "transition",
                    "ask for the transitions first, and count from 0");
        }
        return all.get(which);
    }

    /** One of them as a file. */
    TransitionTake take(PairBooks books, int which, Wishes wishes) {
        PairBook book = book(books);
        return new TransitionTake(
                ShownTransition.of(book.finder(), one(book, which)),
                from.name(),
                to.name(),
                book.finder(),
                book.kit(),
                wishes);
    }
}
