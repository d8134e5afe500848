package deferent.motion.phrase;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Tether;
import deferent.motion.shared.Refused;
import deferent.motion.trade.TradeMotion;
import deferent.motion.trade.Word;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;

/**
 * Finds phrases near one that cannot be read. Each refusal tells where it is and what might stand
 * there; the cheapest change is tried first, what it leads to is read again, and so on until a few
 * phrases read. Where none does, the motions that were said are offered by themselves.
 */
final class Mending {
    private static final int MOST_OFFERS = 4;
    private static final int MOST_TRIES = 40;

    private final Lexicon lexicon;
    private final Tether usual;
    private final Set<String> offers = new LinkedHashSet<>();

    private Mending(Lexicon lexicon, Tether usual) {
        this.lexicon = lexicon;
        this.usual = usual;
    }

    /** A text on the way to a phrase. */
    private record Try(String text, int cost, int order) {}

    /** At least one phrase that reads, the likeliest first. */
    static List<String> offers(PhraseError error, Lexicon lexicon, Tether usual) {
        Mending mending = new Mending(lexicon, usual);
        mending.search(error);
        if (mending.offers.isEmpty()) {
            mending.ofMotions(error.text());
        }
        return List.copyOf(mending.offers);
    }

    private void search(PhraseError first) {
        PriorityQueue<Try> open =
                new PriorityQueue<>(
                        Comparator.comparingInt(Try::cost).thenComparingInt(Try::order));
        Set<String> seen = new HashSet<>(Set.of(first.text()));
        int order = push(open, seen, first, 0, 0);
        int dearest = Integer.MAX_VALUE;
        for (int tries = 0; tries < MOST_TRIES && offers.size() < MOST_OFFERS; tries++) {
            Try next = open.poll();
            // What loses much more than what is found already is not what was meant.
            if (next == null || next.cost() > dearest) {
                return;
            }
            try {
                offer(next.text());
                dearest = Math.min(dearest, next.cost() + Edit.ADDED - 1);
            } catch (PhraseError still) {
                order = push(open, seen, still, next.cost(), order);
            }
        }
    }

    private int push(
            PriorityQueue<Try> open, Set<String> seen, PhraseError error, int spent, int from) {
        int order = from;
        for (Edit edit : edits(error)) {
            String text = edit.in(error.text());
            if (seen.add(text)) {
                open.add(new Try(text, spent + edit.cost(), order++));
            }
        }
        return order;
    }

    private List<Edit> edits(PhraseError error) {
        List<Edit> edits = new ArrayList<>(error.edits());
        Spot spot = new Spot(error.start(), error.end());
        int cost = Edit.RESPELT;
        for (String near : error.nearest()) {
            edits.add(new Edit(spot, near, cost++));
        }
        error.explained()
                .ifPresent(
                        told ->
                                told.word()
                                        .instead()
                                        .words(told.number(), without(error.text(), spot))
                                        .forEach(
                                                words ->
                                                        edits.add(
                                                                new Edit(
                                                                        spot,
                                                                        words,
                                                                        words.isEmpty()
                                                                                ? Edit.DROPPED - 2
                                                                                : Edit.OFFERED))));
        edits.add(new Edit(spot, "", Edit.DROPPED));
        return edits;
    }

    private Optional<Pairing> without(String text, Spot spot) {
        try {
            return Optional.of(pairing(new Edit(spot, "", 0).in(text)));
        } catch (Refused unreadable) {
            return Optional.empty();
        }
    }

    private Pairing pairing(String text) {
        return new Parser(text, lexicon).phrase().sized(usual);
    }

    private void offer(String text) {
        Phrase phrase = new Parser(text, lexicon).phrase();
        phrase.sized(usual);
        String written = Phrase.write(phrase.sized(Tether.USUAL), lexicon).orElse(text);
        // A tether that was said stands in the offer, be it the usual one.
        boolean lost = text.contains(Word.TETHER.said()) && !written.contains(Word.TETHER.said());
        offers.add(lost ? text : written);
    }

    private void ofMotions(String text) {
        Reader reader = new Reader(text, lexicon);
        List<String> said = new ArrayList<>();
        while (reader.more()) {
            Optional<Reader.Found> found = reader.word();
            found.flatMap(Reader.Found::motion)
                    .filter(motion -> motion.follows().isEmpty())
                    .map(TradeMotion::said)
                    .ifPresent(said::add);
            found.ifPresentOrElse(reader::skip, reader::skip);
        }
        said.add("isolation");
        said.add("triquetra");
        String vs = " " + Word.VS.said() + " ";
        for (int i = 0; i + 1 < said.size() && offers.isEmpty(); i++) {
            try {
                offer(said.get(i) + vs + said.get(i + 1));
            } catch (PhraseError unreadable) {
                // The next two are tried.
            }
        }
    }
}
