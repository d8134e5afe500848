package deferent.studio;

import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Trace;
import deferent.page.Scene;
import deferent.page.web.SceneJson;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import deferent.record.RouteJson;
import deferent.record.Shelf;
import deferent.search.crossing.CrossingRequest;
import deferent.search.crossing.Passage;
import deferent.search.crossing.Route;
import deferent.search.crossing.ShelfCrossing;
import deferent.search.crossing.ShelfMap;
import deferent.search.crossing.ShelfTable;
import deferent.search.crossing.TableProgress;
import deferent.tell.TellCrossing;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * The shelf as a map, and routes over it. The map that was made last is kept for as long as the
 * shelf stays as it is, since each route asks for it again.
 */
final class MapDesk {
    /** More patterns than that are no map anybody reads, and their table takes minutes. */
    static final int MOST = 300;

    private final Shelf shelf;
    private Optional<Chart> last = Optional.empty();

    MapDesk(Shelf shelf) {
        this.shelf = shelf;
    }

    /** A pattern's place on the map. */
    private record Place(String id, String revision, PatternDocument pattern) {}

    /** A whole map, and what it was made of. */
    private record Chart(
            List<Place> places,
            CrossingRequest request,
            ShelfTable table,
            ShelfMap map,
            boolean complete) {

        boolean stands(List<Place> now, CrossingRequest asked) {
            return complete && request.equals(asked) && keys(places).equals(keys(now));
        }

        private static List<String> keys(List<Place> places) {
            return places.stream().map(p -> p.id() + " " + p.revision()).toList();
        }

        List<PatternDocument> patterns() {
            return places.stream().map(Place::pattern).toList();
        }

        int place(String key, String id) {
            for (int i = 0; i < places.size(); i++) {
                if (places.get(i).id().equals(id)) {
                    return i;
                }
            }
            throw new BadRequest(
                    422, "is on no map", key + " \"" + id + "\"", "give a pattern of the shelf");
        }
    }

    /** The map, told with how far it has come. */
    Errand map(CrossingRequest request) {
        return new Errand(Lanes.Work.MAP, (tell, stop) -> answer(chart(request, tell, stop)));
    }

    private List<Place> places() {
        List<Place> places = new ArrayList<>();
        for (Shelf.Entry entry : shelf.list()) {
            if (entry.document().orElse(null) instanceof PatternDocument pattern) {
                places.add(new Place(entry.id(), entry.revision(), pattern));
            }
        }
        if (places.size() > MOST) {
            throw new Refusal(
                    "holds " + places.size() + " patterns",
                    "the shelf",
                    "keep at most " + MOST + " of them on one shelf for a map");
        }
        return places;
    }

    private synchronized Chart chart(
            CrossingRequest request, Consumer<ObjectNode> tell, BooleanSupplier stop) {
        List<Place> places = places();
        Optional<Chart> known = last.filter(chart -> chart.stands(places, request));
        if (known.isPresent()) {
            return known.get();
        }
        ShelfTable table =
                new ShelfTable(places.stream().map(p -> p.pattern().pairing()).toList(), request);
        Paced<TableProgress> paced = new Paced<>(at -> tell.accept(progress(at)));
        boolean complete = table.run(paced, stop);
        Chart chart = new Chart(places, request, table, ShelfMap.of(table), complete);
        last = Optional.of(chart);
        return chart;
    }

    private static ObjectNode progress(TableProgress at) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.putObject("progress")
                .put("text", TellCrossing.progress(at))
                .put("done", at.done())
                .put("all", at.all());
        return node;
    }

    private static ObjectNode answer(Chart chart) {
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        answer.put("complete", chart.complete());
        ArrayNode patterns = answer.putArray("patterns");
        for (Place place : chart.places()) {
            ObjectNode node = patterns.addObject();
            node.put("id", place.id());
            node.put("revision", place.revision());
            node.put("name", place.pattern().name());
            node.put("phrase", place.pattern().phrase().orElse(""));
            node.set("moves", SmallPictures.of(place.pattern().pairing(), SmallPictures.USUAL));
        }
        ArrayNode crossings = answer.putArray("crossings");
        for (ShelfCrossing crossing : chart.map().crossings()) {
            if (crossing.from() < crossing.to()) {
                crossings
                        .addObject()
                        .put("from", chart.places().get(crossing.from()).id())
                        .put("to", chart.places().get(crossing.to()).id())
                        .put("roughness_weights", SceneJson.rounded(crossing.roughness()))
                        .put("place_gap_m", SceneJson.rounded(crossing.placeGap()))
                        .put("speed_gap_m_s", SceneJson.rounded(crossing.speedGap()));
            }
        }
        answer.put("crossings_found", chart.table().crossings().count());
        return answer;
    }

    /**
     * The gentlest route from one pattern of the shelf to another, as it can be played: a cycle or
     * more of each pattern, and the passages between them.
     *
     * @param rate points a second
     * @param stop asked while the map is made
     */
    ObjectNode route(
            CrossingRequest request, String from, String to, int rate, BooleanSupplier stop) {
        Chart chart = chart(request, part -> {}, stop);
        int start = chart.place("from", from);
        int end = chart.place("to", to);
        RouteJson.Found found =
                RouteJson.Found.route(
                        chart.patterns(), chart.table(), chart.map(), start, end, true);
        ObjectNode answer = RouteJson.tree(found);
        Optional<Route> route = found.route().filter(r -> !r.crossings().isEmpty());
        ArrayNode ids = answer.putArray("places");
        found.route()
                .ifPresent(r -> r.patterns().forEach(i -> ids.add(chart.places().get(i).id())));
        if (route.isPresent()) {
            PatternDocument first = chart.places().get(start).pattern();
            Passage passage = found.played(route.get());
            answer.setAll(
                    PassageAnswer.of(
                            passage,
                            Scene.nearer(Trace.of(first.pairing())),
                            first.performer(),
                            rate));
            ArrayNode legs = answer.putArray("legs");
            route.get().patterns().forEach(i -> legs.add(found.name(i)));
            answer.set("after", PatternJson.tree(chart.places().get(end).pattern()));
        }
        return answer;
    }
}
