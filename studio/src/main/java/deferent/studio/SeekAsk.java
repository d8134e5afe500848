package deferent.studio;

import static deferent.studio.AskKey.keys;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Lexicon;
import deferent.reading.body.Performer;
import deferent.record.AnswerPages;
import deferent.record.PatternDocument;
import deferent.record.SeekJson;
import deferent.record.Shelf;
import deferent.record.ToldJson;
import deferent.search.seek.Answer;
import deferent.search.seek.Answers;
import deferent.search.seek.Filter;
import deferent.search.seek.Like;
import deferent.search.seek.Order;
import deferent.search.seek.Seek;
import deferent.search.seek.SeekProgress;
import deferent.search.seek.SeekRequest;
import deferent.search.seek.Space;
import deferent.search.seek.Tethers;
import deferent.tell.TellSeek;
import deferent.tell.Told;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A seek as the page asks for it: each answer is told as soon as it is worked out, with what a
 * thumbnail needs to move; at the end comes the order in which they stand.
 *
 * @param motions about how many are sought among; the space is built when the seek runs
 * @param request what is asked of that space
 * @param like the pattern they shall be like, where one is given
 */
record SeekAsk(int motions, Function<Space, SeekRequest> request, Optional<PatternDocument> like)
        implements Errand.Run {
    /** A seek of as many motions answers within a few seconds on a small machine. */
    static final int USUAL_MOTIONS = 60_000;

    /** So many are held in some hundred megabytes. */
    static final int MOST_MOTIONS = 400_000;

    private static final int USUAL_LIMIT = 36;
    private static final int MORE_LIKE = 4;
    private static final long AFTERWARDS_NANOS = 1_000_000_000L;

    private static final AskKey<Boolean> EXACT = AskKey.yes("exact", "only what closes exactly");
    private static final AskKey<Boolean> REACHABLE =
            AskKey.yes(
                    "reachable",
                    "whether it is made as small as the performer's arms reach; unsaid is true");
    private static final AskKey<Double> SLOWEST =
            AskKey.number(
                    "slowest_cycles_per_min",
                    "only what works as slow as that",
                    1,
                    600,
                    "a minute");
    private static final AskKey<Double> GROWTH =
            AskKey.number(
                    "growth", "only slips that grow no more in a reaction time", 0.01, 1e6, "");
    private static final AskKey<Integer> SYMMETRY =
            AskKey.whole("symmetry", "only figures of that order and more", 0, 48);
    private static final AskKey<Double> CONTRAST =
            AskKey.number("contrast", "only figures so unlike in size", 1, 100, "");
    private static final AskKey<Double> NEAR =
            AskKey.number("near_m", "only what is so near a pattern of the shelf", 0, 10, "m");
    private static final AskKey<Boolean> NEW = AskKey.yes("new", "only what is not on the shelf");

    private static final AskKey<Integer> MOTIONS =
            AskKey.whole("motions", "about how many are sought among", 10_000, MOST_MOTIONS);
    private static final AskKey<Order> ORDER = AskKey.one("order", "what comes first", Order.class);
    private static final AskKey<Question> FILTER =
            AskKey.object(
                    "filter",
                    "what is left out",
                    keys(EXACT, REACHABLE, SLOWEST, GROWTH, SYMMETRY, CONTRAST, NEAR, NEW));
    private static final AskKey<String> TETHERS =
            AskKey.word(
                    "tethers",
                    "whether both are as long; unsaid they are",
                    List.of("equal", "free"));
    private static final AskKey<Double> TOLERANCE =
            AskKey.number("tolerance_m", "how far apart still links", 0, 0.2, "m");
    private static final AskKey<Integer> LIMIT =
            AskKey.whole("limit", "how many answers at most", 1, 120);
    private static final AskKey<Integer> PER_FAMILY =
            AskKey.whole("per_family", "how many of one family at most", 1, 20);

    private static final AskKey<Integer> PAGE =
            AskKey.whole(
                    "page",
                    "a page of the answers that were found elsewhere, instead of seeking",
                    1,
                    1_000_000);

    static final List<AskKey<?>> KEYS =
            keys(
                    Matter.MAYBE,
                    keys(PAGE, MOTIONS, ORDER, FILTER, TETHERS, TOLERANCE, LIMIT, PER_FAMILY));

    /**
     * A seek, or a page of one that ran elsewhere.
     *
     * @param afar the answers found elsewhere, where the studio was opened with some
     */
    static Errand.Run of(Question asked, Lexicon lexicon, Shelf shelf, Optional<AnswerPages> afar) {
        if (asked.has(PAGE)) {
            return new SeekPage(
                    afar,
                    asked.or(PAGE, 1),
                    asked.maybe(FILTER).map(SeekAsk::filter).orElse(Filter.NONE.reached()),
                    patterns(shelf),
                    asked.or(LIMIT, SeekPage.MOST));
        }
        Optional<PatternDocument> like =
                asked.has(Matter.PHRASE) || asked.has(Matter.PATTERN)
                        ? Optional.of(Matter.of(asked, lexicon).document())
                        : Optional.empty();
        int motions = asked.or(MOTIONS, USUAL_MOTIONS);
        Order order = asked.or(ORDER, like.isPresent() ? Order.CLOSEST : Order.TRY);
        Filter filter = asked.maybe(FILTER).map(SeekAsk::filter).orElse(Filter.NONE.reached());
        boolean shelved =
                order == Order.NEW
                        || order == Order.NEAR_SHELF
                        || filter.newToShelf()
                        || Double.isFinite(filter.nearShelf());
        Tethers tethers = asked.or(TETHERS, "equal").equals("free") ? Tethers.FREE : Tethers.EQUAL;
        double tolerance = asked.or(TOLERANCE, SeekRequest.USUAL_TOLERANCE);
        int limit = asked.or(LIMIT, USUAL_LIMIT);
        int perFamily = asked.or(PER_FAMILY, 2);
        List<Pairing> known = shelved || order == Order.TRY ? patterns(shelf) : List.of();
        if (known.isEmpty() && shelved) {
            throw new Refusal(
                    "has no patterns to compare with",
                    "the shelf",
                    "save one first, or order by something else");
        }
        return new SeekAsk(
                motions,
                space -> {
                    SeekRequest request =
                            SeekRequest.of(space)
                                    .with(tethers)
                                    .withTolerance(tolerance)
                                    .with(filter)
                                    .with(order)
                                    .withShelf(known)
                                    .withLimit(limit, perFamily);
                    return like.map(
                                    d ->
                                            request.with(d.pairing().left().tether())
                                                    .with(d.performer()))
                            .orElse(request);
                },
                like);
    }

    private static Filter filter(Question asked) {
        return new Filter(
                asked.or(EXACT, false),
                asked.or(REACHABLE, true),
                asked.or(SLOWEST, Double.POSITIVE_INFINITY),
                asked.or(GROWTH, Double.POSITIVE_INFINITY),
                asked.or(SYMMETRY, 0),
                asked.or(CONTRAST, 1.0),
                asked.or(NEAR, Double.POSITIVE_INFINITY),
                asked.or(NEW, false));
    }

    private static List<Pairing> patterns(Shelf shelf) {
        return shelf.look().patterns().stream().map(PatternDocument::pairing).toList();
    }

    @Override
    public ObjectNode run(Consumer<ObjectNode> tell, BooleanSupplier stop) {
        return new Running(request.apply(space(motions)), like, tell, stop).run();
    }

    /**
     * About so many motions, on a grid whose sizes are whole millimetres with the usual tether, so
     * that they are short to say.
     */
    static Space space(int motions) {
        Space.Grid grid = Space.about(motions).grid();
        return Space.of(
                new Space.Grid(
                        even(grid.circleSteps()),
                        even(grid.pairSteps()),
                        grid.most(),
                        grid.turns(),
                        grid.starts(),
                        grid.arcs(),
                        grid.stretches()));
    }

    private static int even(int steps) {
        int millimetres = (int) Math.rint(1000 * Tether.USUAL.length());
        int even = steps;
        while (even > 1 && millimetres % even != 0) {
            even--;
        }
        return even;
    }

    /** One seek under way. */
    private record Running(
            SeekRequest request,
            Optional<PatternDocument> like,
            Consumer<ObjectNode> tell,
            BooleanSupplier stop) {

        ObjectNode run() {
            Seek seek = new Seek(request);
            boolean[] begun = {false};
            Paced<SeekProgress> paced = new Paced<>(at -> tell.accept(progress(at)));
            boolean done =
                    seek.run(
                            at -> {
                                begun[0] |= at.stage().compareTo(SeekProgress.Stage.JOIN) >= 0;
                                paced.accept(at);
                            },
                            stop);
            if (!begun[0]) {
                return SeekJson.stopped(request);
            }
            Answers answers = seek.answers();
            List<String> order = like.isPresent() ? alike(answers) : all(answers, done);
            boolean complete = done && !stop.getAsBoolean();
            ObjectNode answer = SeekJson.tree(request, answers, List.of(), complete);
            answer.remove("answers");
            if (order.isEmpty()) {
                ToldJson.put(((ArrayNode) answer.get("told")).addObject(), TellSeek.none(answers));
            }
            answer.put(
                    "ordered",
                    like.map(d -> "most like " + d.phrase().orElse(d.name()) + " first")
                            .orElse(TellSeek.order(request.order())));
            ArrayNode keys = answer.putArray("order_of_keys");
            order.forEach(keys::add);
            return answer;
        }

        // A seek that was stopped while it compared still tells what it has, a few at the most.
        private List<String> all(Answers answers, boolean done) {
            long until = System.nanoTime() + AFTERWARDS_NANOS;
            BooleanSupplier enough = done ? stop : () -> System.nanoTime() > until;
            List<String> order = new ArrayList<>();
            for (Answer answer :
                    answers.list(found -> tell.accept(part(found, TellSeek.of(found))), enough)) {
                order.add(key(answer));
            }
            return order;
        }

        // Neighbours on the grid differ in sizes alone, so more are asked for than are told.
        private List<String> alike(Answers answers) {
            Filter filter = request.filter();
            Map<String, Integer> families = new HashMap<>();
            Set<String> order = new LinkedHashSet<>();
            Pairing given = like.orElseThrow().pairing();
            for (Like one : answers.like(given, MORE_LIKE * request.limit())) {
                Answer answer = one.answer();
                if (order.size() < request.limit()
                        && (answer.exact() || !filter.exactOnly())
                        && answer.merit().contrast() >= filter.leastContrast()
                        && answer.merit().symmetry() >= filter.leastSymmetry()
                        && families.merge(answer.family().name(), 1, Integer::sum)
                                <= request.perFamily()
                        && order.add(key(answer))) {
                    tell.accept(part(answer, TellSeek.of(one)));
                }
            }
            return List.copyOf(order);
        }

        private ObjectNode part(Answer found, Told told) {
            return SeekAsk.part(found, told, request.performer());
        }
    }

    /** One answer as the page takes it. */
    static ObjectNode part(Answer found, Told told, Performer performer) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        ObjectNode answer = SeekJson.tree(found, performer);
        answer.put("key", key(found));
        ToldJson.put(answer.putObject("told"), told);
        answer.set("moves", SmallPictures.of(found.pairing(), SmallPictures.USUAL));
        node.set("answer", answer);
        return node;
    }

    static String key(Answer answer) {
        return answer.carrier() + "-" + answer.rider();
    }

    private static ObjectNode progress(SeekProgress at) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.putObject("progress")
                .put("text", TellSeek.progress(at))
                .put("stage", at.stage().name().toLowerCase(Locale.ROOT))
                .put("done", at.done())
                .put("all", at.all());
        return node;
    }
}
