package deferent.studio;

import static deferent.studio.AskKey.keys;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Refused;
import deferent.motion.pairing.Side;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.trade.Trade;
import deferent.motion.trade.TradeMotion;
import deferent.reading.danger.Level;
import deferent.reading.worked.Detail;
import deferent.record.CrossingsJson;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import deferent.record.Shelf;
import deferent.search.crossing.Crossing;
import deferent.search.crossing.CrossingRequest;
import deferent.search.crossing.Crossings;
import deferent.search.crossing.Who;
import deferent.search.whole.Readings;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
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
 * Those that can be entered come one by one as they are found, in the end the smoothest first; what
 * would be a danger is left out.
 *
 * @param from what is spun now
 * @param request what counts as a crossing
 * @param kept what is on the shelf
 * @param lexicon the user's own names for motions
 * @param limit how many at most
 */
record NextAsk(
        PatternDocument from,
        CrossingRequest request,
        List<PatternDocument> kept,
        Lexicon lexicon,
        int limit)
        implements Errand.Run {
    private static final int USUAL_LIMIT = 12;
    private static final int MOST_PETALS = 5;
    private static final int MOST_OF_SHELF = 60;
    private static final AskKey<Integer> LIMIT = AskKey.whole("limit", "how many at most", 1, 60);

    static final List<AskKey<?>> KEYS = keys(Matter.KEYS, CrossingAsk.AS_THEY_STAND, keys(LIMIT));

    /** Something that may come next, and which hands cross into it. */
    private record Candidate(PatternDocument to, Who who) {}

    /** One that can be entered, and its smoothest moment. */
    private record Entered(int key, Candidate candidate, Crossing crossing) {
        double weights() {
            return crossing.roughness().weights();
        }
    }

    static NextAsk of(Question asked, Lexicon lexicon, Shelf shelf) {
        return new NextAsk(
                Matter.of(asked, lexicon).document(),
                CrossingAsk.asTheyStand(asked),
                shelf.look().patterns().stream().limit(MOST_OF_SHELF).toList(),
                lexicon,
                asked.or(LIMIT, USUAL_LIMIT));
    }

    @Override
    public ObjectNode run(Consumer<ObjectNode> tell, BooleanSupplier stop) {
        List<Candidate> all = candidates();
        List<Entered> found = new ArrayList<>();
        int tried = 0;
        for (Candidate candidate : all) {
            if (stop.getAsBoolean()) {
                break;
            }
            Optional<Entered> entered = entered(tried++, candidate);
            if (entered.isPresent()) {
                found.add(entered.get());
                found.sort(Comparator.comparingDouble(Entered::weights));
                // One that cannot be among the last few any more is not told.
                if (found.indexOf(entered.get()) < limit) {
                    tell.accept(part(entered.get()));
                }
            }
        }
        ObjectNode last = JsonNodeFactory.instance.objectNode();
        last.put("complete", tried == all.size()).put("tried", tried);
        ArrayNode order = last.putArray("order_of_keys");
        found.stream().limit(limit).forEach(e -> order.add("next-" + e.key()));
        return last;
    }

    private List<Candidate> candidates() {
        List<Candidate> all = new ArrayList<>();
        for (PatternDocument pattern : kept) {
            if (!pattern.pairing().equals(from.pairing())) {
                all.add(new Candidate(pattern, Who.BOTH));
            }
        }
        for (String motion : motions()) {
            for (Side side : Side.values()) {
                with(motion, side)
                        .filter(p -> !p.equals(from.pairing()))
                        .map(p -> new Candidate(named(p), Who.of(side)))
                        .ifPresent(all::add);
            }
        }
        return all;
    }

    private PatternDocument named(Pairing pairing) {
        PatternDocument said = from.saying(pairing, lexicon);
        return said.phrase().map(said::withName).orElse(said);
    }

    private List<String> motions() {
        Stream<String> trade =
                Stream.concat(Trade.motions().stream(), lexicon.motions().stream())
                        .filter(m -> m.follows().isEmpty())
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

    private Optional<Entered> entered(int key, Candidate candidate) {
        try {
            Pairing to = candidate.to().pairing();
            return Crossings.between(from.pairing(), to, request.with(candidate.who()))
                    .smoothest()
                    .filter(c -> safe(candidate.to()))
                    .map(c -> new Entered(key, candidate, c));
        } catch (Refused impossible) {
            return Optional.empty();
        }
    }

    private static boolean safe(PatternDocument pattern) {
        return Readings.of(
                        pattern.pairing(),
                        pattern.performer(),
                        pattern.kit(),
                        Detail.LIVE,
                        Lexicon.EMPTY)
                .dangers()
                .reading()
                .filter(d -> d.level() != Level.DANGER)
                .isPresent();
    }

    private ObjectNode part(Entered entered) {
        PatternDocument to = entered.candidate().to();
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        ObjectNode answer = node.putObject("answer");
        answer.put("key", "next-" + entered.key());
        answer.put("name", to.name());
        answer.put("who", entered.candidate().who().name().toLowerCase(Locale.ROOT));
        answer.put("roughness_weights", entered.weights());
        answer.set("pattern", PatternJson.tree(to));
        answer.set("crossing", CrossingsJson.tree(entered.crossing()));
        answer.set("moves", SmallPictures.of(to.pairing(), SmallPictures.USUAL));
        return node;
    }
}
