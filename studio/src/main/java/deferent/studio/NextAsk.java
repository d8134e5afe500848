package deferent.studio;

import static deferent.studio.AskKey.keys;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Refused;
import deferent.motion.shared.Side;
import deferent.motion.trade.Both;
import deferent.motion.trade.Trade;
import deferent.motion.trade.TradeMotion;
import deferent.reading.danger.Level;
import deferent.record.Keys;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import deferent.record.Shelf;
import deferent.record.TransitionsJson;
import deferent.search.set.PairBook;
import deferent.search.transition.Grade;
import deferent.search.transition.Hindrance;
import deferent.search.transition.Transition;
import deferent.search.transition.Transitions;
import deferent.tell.TellTransition;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * What could come next, nothing else being said: every motion of the trade with one hand while the
 * other goes on, at the tethers and about the centres that stand, and every pattern of the shelf.
 * Those that a transition leads into come one by one as they are found, in the end the easiest
 * first; what would be a danger is left out.
 *
 * <p>What is found soonest is tried first: one hand alone, from the motions that are spun most, and
 * then the shelf, patterns at the same tethers before all others.
 *
 * @param from what is spun now
 * @param book what is known of patterns and of what leads from one to another
 * @param kept what is on the shelf
 * @param lexicon the user's own names for motions
 * @param limit how many at most
 */
record NextAsk(
        PatternDocument from, PairBook book, List<PatternDocument> kept, Lexicon lexicon, int limit)
        implements Errand.Run {
    private static final int USUAL_LIMIT = 24;
    private static final int MOST_PETALS = 5;
    private static final int MOST_OF_SHELF = 60;
    private static final double SAME = 1e-6;
    private static final AskKey<Integer> LIMIT = AskKey.whole("limit", "how many at most", 1, 60);

    static final List<AskKey<?>> KEYS = keys(Matter.KEYS, keys(SetAsk.HARDEST, LIMIT));

    /** One that can be joined, and the way there: which of all, from 0. */
    private record Led(int key, PatternDocument to, int which, Transition transition) {
        /** The easiest with one hand alone, or else the easiest. */
        static Led of(int key, PatternDocument to, List<Transition> ways) {
            int which =
                    IntStream.range(0, ways.size())
                            .filter(i -> ways.get(i).left().keeps() || ways.get(i).right().keeps())
                            .findFirst()
                            .orElse(0);
            return new Led(key, to, which, ways.get(which));
        }

        double hardness() {
            return transition.hardness();
        }

        /** Which hands do something: "left", "right" or "both". */
        String hands() {
            return transition.left().keeps()
                    ? Side.RIGHT.word()
                    : transition.right().keeps() ? Side.LEFT.word() : "both";
        }
    }

    static NextAsk of(Question asked, Lexicon lexicon, Shelf shelf, PairBooks books) {
        PatternDocument from = Matter.of(asked, lexicon).document();
        return new NextAsk(
                from,
                books.of(asked.or(SetAsk.HARDEST, Grade.USUAL), from.performer(), from.kit()),
                shelf.look().patterns().stream().limit(MOST_OF_SHELF).toList(),
                lexicon,
                asked.or(LIMIT, USUAL_LIMIT));
    }

    @Override
    public ObjectNode run(Consumer<ObjectNode> tell, BooleanSupplier stop) {
        List<PatternDocument> all = candidates();
        List<Led> found = new ArrayList<>();
        Paced<ObjectNode> paced = new Paced<>(tell);
        int tried = 0;
        int dangers = 0;
        Map<Hindrance, Integer> impossible = new EnumMap<>(Hindrance.class);
        for (PatternDocument candidate : all) {
            if (stop.getAsBoolean()) {
                break;
            }
            paced.accept(progress(tried, all.size()));
            if (!safe(candidate)) {
                dangers++;
            } else {
                Transitions ways = ways(candidate);
                if (ways.list().isEmpty()) {
                    impossible.merge(ways.why(), 1, Integer::sum);
                } else {
                    Led led = Led.of(tried, candidate, ways.list());
                    found.add(led);
                    found.sort(Comparator.comparingDouble(Led::hardness));
                    // One that cannot be among the last few any more is not told.
                    if (found.indexOf(led) < limit) {
                        tell.accept(part(led));
                    }
                }
            }
            tried++;
        }
        ObjectNode last = JsonNodeFactory.instance.objectNode();
        last.put("complete", tried == all.size()).put("tried", tried).put("all", all.size());
        last.put("dangers", dangers);
        last.put("not_possible", impossible.values().stream().mapToInt(n -> n).sum());
        if (found.isEmpty() && !impossible.isEmpty()) {
            none(last, impossible);
        }
        ArrayNode order = last.putArray("order_of_keys");
        found.stream().limit(limit).forEach(e -> order.add("next-" + e.key()));
        return last;
    }

    /**
     * Why nothing leads on: what is wrong with the pattern that is spun now, or most often else.
     */
    private void none(ObjectNode last, Map<Hindrance, Integer> impossible) {
        Hindrance own = book.between(from.pairing(), from.pairing()).why();
        Hindrance most =
                impossible.entrySet().stream()
                        .max(Map.Entry.comparingByValue())
                        .map(Map.Entry::getKey)
                        .orElse(own);
        boolean here = own != Hindrance.NONE;
        last.put("none", Keys.word(here ? own : most));
        last.put("why", TellTransition.because(here ? own : most));
        last.put("why_here", here);
    }

    private static ObjectNode progress(int done, int all) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.putObject("progress")
                .put("text", done + " of " + all + " tried")
                .put("done", done)
                .put("all", all);
        return node;
    }

    private List<PatternDocument> candidates() {
        List<PatternDocument> all = new ArrayList<>();
        Set<Pairing> known = new HashSet<>(Set.of(from.pairing()));
        for (String motion : motions()) {
            for (Side side : Side.values()) {
                with(motion, side).filter(known::add).map(this::named).ifPresent(all::add);
            }
        }
        kept.stream()
                .filter(p -> known.add(p.pairing()))
                .sorted(Comparator.comparing(p -> !sameTethers(p.pairing())))
                .forEach(all::add);
        return all;
    }

    private boolean sameTethers(Pairing to) {
        return Stream.of(Side.values())
                .allMatch(
                        side ->
                                Math.abs(
                                                from.pairing().part(side).tether().length()
                                                        - to.part(side).tether().length())
                                        <= SAME);
    }

    private PatternDocument named(Pairing pairing) {
        PatternDocument said = from.saying(pairing, lexicon);
        return said.phrase().map(said::withName).orElse(said);
    }

    private List<String> motions() {
        Stream<String> trade =
                Stream.concat(Trade.motions().stream(), lexicon.motions().stream())
                        .filter(m -> m.follows().isEmpty())
                        .filter(m -> m.both().filter(Both::only).isEmpty())
                        .map(TradeMotion::said);
        Stream<String> flowers =
                IntStream.rangeClosed(-MOST_PETALS + 1, MOST_PETALS + 1)
                        .filter(turns -> Math.abs(turns) > 1)
                        .mapToObj(Trade::flower);
        return Stream.concat(trade, flowers).distinct().toList();
    }

    /** What is spun now with that motion in one hand; empty where the two do not go together. */
    private Optional<Pairing> with(String motion, Side side) {
        Part was = from.pairing().part(side);
        try {
            Part part =
                    Phrase.parse(motion + " vs " + motion, lexicon).with(was.tether()).part(side);
            return Optional.of(from.pairing().with(side, part.with(was.place())));
        } catch (Refused impossible) {
            return Optional.empty();
        }
    }

    private Transitions ways(PatternDocument candidate) {
        Pairing to = candidate.pairing();
        // What needs another pair of poi is not drawn first to find that out.
        if (!sameTethers(to)) {
            return none(to, Hindrance.TETHERS);
        }
        try {
            return book.between(from.pairing(), to);
        } catch (Refused impossible) {
            return none(to, Hindrance.NOT_DRAWN);
        }
    }

    private Transitions none(Pairing to, Hindrance why) {
        return new Transitions(from.pairing(), to, book.finder().request(), List.of(), why);
    }

    private boolean safe(PatternDocument pattern) {
        return book.readings(pattern.pairing())
                .dangers()
                .reading()
                .filter(d -> d.level() != Level.DANGER)
                .isPresent();
    }

    private static ObjectNode part(Led led) {
        PatternDocument to = led.to();
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        ObjectNode answer = node.putObject("answer");
        answer.put("key", "next-" + led.key());
        answer.put("name", to.name());
        answer.put("hands", led.hands());
        answer.put("which", led.which());
        answer.put("hardness", led.hardness());
        answer.set("pattern", PatternJson.tree(to));
        answer.set("transition", TransitionsJson.tree(led.transition()));
        answer.set("moves", SmallPictures.of(to.pairing(), SmallPictures.USUAL));
        return node;
    }
}
