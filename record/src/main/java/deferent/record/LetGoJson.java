package deferent.record;

import static deferent.record.number.Written.rounded;

import deferent.reading.tether.Cord;
import deferent.reading.tether.LetGo;
import deferent.reading.tether.LetGoTable;
import deferent.tell.TellLetGo;
import java.util.List;
import java.util.stream.Collectors;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A poi let go at a still hand, as JSON and as lines of a table: keys end in their units, angles
 * are in degrees from straight down.
 */
public final class LetGoJson {
    private static final List<String> COLUMNS =
            List.of("time_s", "angle_deg", "speed_m_per_s", "pull_n", "slack");

    private LetGoJson() {}

    public static String write(LetGoTable table) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        Cord cord = table.run().cord();
        node.put("tether_m", rounded(cord.length()));
        node.put("head_mass_kg", cord.kit().headMass());
        node.put("head_diameter_m", rounded(cord.kit().headDiameter()));
        node.put("air", cord.kit().air());
        ToldJson.put(node.putArray("told"), TellLetGo.of(table));
        ArrayNode events = node.putArray("events");
        for (LetGo.Event event : table.run().events()) {
            events.addObject()
                    .put("time_s", rounded(event.time()))
                    .put("kind", Keys.word(event.kind()))
                    .put("speed_m_per_s", rounded(event.speed()))
                    .put("loss_j", rounded(event.loss()));
        }
        ArrayNode rows = node.putArray("rows");
        for (LetGoTable.Row row : table.rows()) {
            ObjectNode one = rows.addObject();
            List<Double> numbers = numbers(row);
            for (int i = 0; i < numbers.size(); i++) {
                one.put(COLUMNS.get(i), numbers.get(i));
            }
            one.put(COLUMNS.get(numbers.size()), row.slack());
        }
        return PrettyJson.text(node);
    }

    /**
     * Lines as {@link TimingTable} writes them: the keys of JSON, then a row a line; slack is 1 or
     * 0.
     */
    public static String lines(LetGoTable table) {
        StringBuilder text = new StringBuilder(String.join(",", COLUMNS)).append("\r\n");
        for (LetGoTable.Row row : table.rows()) {
            text.append(numbers(row).stream().map(Numbers::plain).collect(Collectors.joining(",")))
                    .append(row.slack() ? ",1\r\n" : ",0\r\n");
        }
        return text.toString();
    }

    private static List<Double> numbers(LetGoTable.Row row) {
        return List.of(
                rounded(row.time()),
                rounded(Math.toDegrees(row.angle())),
                rounded(row.speed()),
                rounded(row.pull()));
    }
}
