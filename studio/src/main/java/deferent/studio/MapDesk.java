package deferent.studio;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.record.Kept;
import deferent.record.Keys;
import deferent.record.PatternDocument;
import deferent.record.RouteJson;
import deferent.record.RouteReading;
import deferent.record.SetPlaces;
import deferent.record.SetReading;
import deferent.record.Shelf;
import deferent.record.ToldJson;
import deferent.search.route.Route;
import deferent.search.route.RouteFound;
import deferent.search.route.RouteSearch;
import deferent.search.route.ShelfMap;
import deferent.search.route.ShelfPair;
import deferent.search.route.ShelfTable;
import deferent.search.route.TableProgress;
import deferent.search.set.PairBook;
import deferent.search.transition.Grade;
import deferent.tell.TellRoute;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.Stream;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * The shelf as a map, told as it is worked out, and routes over it. The table that was asked last
 * is kept, and what it knows goes over into the next, so that a pattern more on the shelf costs its
 * own pairs alone.
 */
final class MapDesk {
    /** More patterns than that are no map anybody reads, and their table takes hours. */
    static final int MOST = 300;

    static final AskKey<String> FROM = AskKey.text("from", "a pattern's id on the shelf");
    static final AskKey<String> TO = AskKey.text("to", "a pattern's id on the shelf");

    /** Transitions told in one message at most. */
    private static final int AT_ONCE = 500;

    private final Shelf shelf;
    private final PairBooks books;
    private Optional<Chart> last = Optional.empty();

    MapDesk(Shelf shelf, PairBooks books) {
        this.shelf = shelf;
        this.books = books;
    }

    /**
     * What a map is made of.
     *
     * @param kept the shelf's patterns
     * @param places the same, as steps of a set
     */
    private record Chart(
            List<Kept> kept, List<SetPlaces.Place> places, PairBook book, ShelfTable table) {

        private static List<Pairing> pairings(List<SetPlaces.Place> places) {
            return places.stream().map(p -> p.pattern().orElseThrow().pairing()).toList();
        }

        String id(int place) {
            return kept.get(place).id();
        }

        String name(int place) {
            return places.get(place).name();
        }

        int place(String key, String id) {
            for (int i = 0; i < kept.size(); i++) {
                if (kept.get(i).id().equals(id)) {
                    return i;
                }
            }
            throw new BadRequest(
                    422, "is on no map", key + " \"" + id + "\"", "give a pattern of the shelf");
        }
    }

    /** What is known of pairs for whoever spins the first of these patterns. */
    private PairBook book(List<SetPlaces.Place> places, Grade hardest) {
        return books.of(hardest, SetReading.performer(places), SetReading.kit(places));
    }

    private synchronized Chart chart(Grade hardest) {
        Shelf.Listing listing = shelf.look();
        List<Kept> kept =
                listing.kept().stream()
                        .filter(one -> one.document() instanceof PatternDocument)
                        .toList();
        if (kept.size() > MOST) {
            throw new Refusal(
                    "holds " + kept.size() + " patterns",
                    "the shelf",
                    "keep at most " + MOST + " of them on one shelf for a map");
        }
        List<SetPlaces.Place> places = SetPlaces.all(listing);
        List<Pairing> pairings = Chart.pairings(places);
        PairBook book = book(places, hardest);
        ShelfTable table =
                last.filter(chart -> chart.book() == book)
                        .map(Chart::table)
                        .map(known -> known.shelf().equals(pairings) ? known : known.with(pairings))
                        .orElseGet(() -> new ShelfTable(pairings, book));
        Chart chart = new Chart(kept, places, book, table);
        last = Optional.of(chart);
        return chart;
    }

    /** The map: its places first, then what leads from one to another as it is found. */
    Errand map(Question asked) {
        Grade hardest = asked.or(SetAsk.HARDEST, Grade.USUAL);
        return new Errand(Lanes.Work.MAP, (tell, stop) -> map(chart(hardest), tell, stop));
    }

    private static ObjectNode map(Chart chart, Consumer<ObjectNode> tell, BooleanSupplier stop) {
        tell.accept(places(chart));
        Leading leading = new Leading(chart, tell);
        Paced<TableProgress> paced = new Paced<>(at -> tell.accept(progress(at)));
        boolean complete = chart.table().run(paced, leading, stop);
        leading.flush();
        TableProgress at = chart.table().progress();
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        answer.put("complete", complete);
        answer.put("pairs_compared", at.done());
        answer.put("pairs", at.all());
        ToldJson.put(
                answer.putArray("told"),
                TellRoute.map(ShelfMap.of(chart.table()), chart::name, complete));
        return answer;
    }

    private static ObjectNode places(Chart chart) {
        ObjectNode part = JsonNodeFactory.instance.objectNode();
        ArrayNode patterns = part.putObject("answer").putArray("patterns");
        for (Kept kept : chart.kept()) {
            PatternDocument pattern = (PatternDocument) kept.document();
            ObjectNode node = patterns.addObject();
            node.put("id", kept.id());
            node.put("revision", kept.revision());
            node.put("name", pattern.name());
            node.put("phrase", pattern.phrase().orElse(""));
            node.set("moves", SmallPictures.of(pattern.pairing(), SmallPictures.USUAL));
        }
        return part;
    }

    private static ObjectNode progress(TableProgress at) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.putObject("progress")
                .put("text", TellRoute.progress(at))
                .put("done", at.done())
                .put("all", at.all());
        return node;
    }

    /** Passes on what leads from one pattern to another, the first at once, then in handfuls. */
    private static final class Leading implements Consumer<List<ShelfPair>> {
        private final Chart chart;
        private final Consumer<ObjectNode> tell;
        private final Paced<List<ShelfPair>> paced;
        private final List<ShelfPair> waiting = new ArrayList<>();

        Leading(Chart chart, Consumer<ObjectNode> tell) {
            this.chart = chart;
            this.tell = tell;
            this.paced = new Paced<>(pairs -> flush());
        }

        @Override
        public void accept(List<ShelfPair> pairs) {
            pairs.stream().filter(ShelfPair::leads).forEach(waiting::add);
            if (!waiting.isEmpty()) {
                paced.accept(waiting);
            }
        }

        void flush() {
            for (int first = 0; first < waiting.size(); first += AT_ONCE) {
                ObjectNode part = JsonNodeFactory.instance.objectNode();
                ArrayNode list = part.putObject("answer").putArray("transitions");
                waiting.subList(first, Math.min(waiting.size(), first + AT_ONCE))
                        .forEach(pair -> put(list.addObject(), pair));
                tell.accept(part);
            }
            waiting.clear();
        }

        private void put(ObjectNode node, ShelfPair pair) {
            node.put("from", chart.id(pair.from()));
            node.put("to", chart.id(pair.to()));
            node.put("grade", Keys.word(pair.grade().orElseThrow()));
        }
    }

    /** The gentlest route from one pattern of the shelf to another, as a set that can be played. */
    Errand route(Question asked) {
        Grade hardest = asked.or(SetAsk.HARDEST, Grade.USUAL);
        String from = asked.get(FROM);
        String to = asked.get(TO);
        return new Errand(Lanes.Work.SHORT, (tell, stop) -> route(hardest, from, to, tell, stop));
    }

    private ObjectNode route(
            Grade hardest,
            String from,
            String to,
            Consumer<ObjectNode> tell,
            BooleanSupplier stop) {
        Chart chart = chart(hardest);
        int start = chart.place("from", from);
        int end = chart.place("to", to);
        // Who spins a set is who spins its first pattern.
        PairBook book = book(List.of(chart.places().get(start)), hardest);
        ShelfTable table =
                book == chart.book() ? chart.table() : new ShelfTable(chart.table().shelf(), book);
        Paced<RouteSearch.Progress> paced = new Paced<>(at -> tell.accept(progress(at)));
        RouteFound found = new RouteSearch(table, start, end).run(paced, stop);
        ObjectNode answer =
                RouteJson.tree(
                        RouteReading.of(chart.places(), start, end, found, book, () -> false),
                        hardest);
        ArrayNode places = answer.putArray("places");
        Stream<Integer> gone = found.route().stream().map(Route::patterns).flatMap(List::stream);
        gone.map(chart::id).forEach(places::add);
        return answer;
    }

    private static ObjectNode progress(RouteSearch.Progress at) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.putObject("progress").put("text", TellRoute.progress(at)).put("done", at.looked());
        return node;
    }
}
