package deferent.studio;

import deferent.motion.pairing.Pairing;
import deferent.record.AnswerPages;
import deferent.record.SeekJson;
import deferent.search.seek.Answer;
import deferent.search.seek.Filter;
import deferent.search.seek.FoundAfar;
import deferent.search.seek.SeekRequest;
import deferent.tell.TellSeek;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A page of the answers that were found elsewhere, told like a seek's; where there are none it says
 * so.
 *
 * @param afar the answers
 * @param page which
 * @param filter what is left out
 * @param known what is on the shelf
 * @param limit how many at most
 */
record SeekPage(Optional<AnswerPages> afar, int page, Filter filter, List<Pairing> known, int limit)
        implements Errand.Run {
    /** Families a page holds. */
    static final int MOST = 100;

    @Override
    public ObjectNode run(Consumer<ObjectNode> tell, BooleanSupplier stop) {
        return afar.map(pages -> told(pages, tell, stop))
                .orElseGet(() -> JsonNodeFactory.instance.objectNode().put("pages", 0));
    }

    private ObjectNode told(AnswerPages pages, Consumer<ObjectNode> tell, BooleanSupplier stop) {
        SeekRequest request = pages.request().with(filter);
        if (filter.newToShelf() || Double.isFinite(filter.nearShelf())) {
            request = request.withShelf(known);
        }
        SeekRequest asked = request;
        List<String> order = new ArrayList<>();
        for (FoundAfar found : pages.page(page)) {
            if (stop.getAsBoolean() || order.size() >= limit) {
                break;
            }
            found.answer(asked).ifPresent(answer -> order.add(told(answer, asked, tell)));
        }
        ObjectNode answer = SeekJson.page(asked, pages, page, List.of());
        answer.remove("answers");
        answer.put("complete", !stop.getAsBoolean());
        answer.put("ordered", TellSeek.page(page, pages.pages(), pages.families()));
        ArrayNode keys = answer.putArray("order_of_keys");
        order.forEach(keys::add);
        return answer;
    }

    private static String told(Answer answer, SeekRequest request, Consumer<ObjectNode> tell) {
        tell.accept(SeekAsk.part(answer, TellSeek.of(answer), request.performer()));
        return SeekAsk.key(answer);
    }
}
