package deferent.app;

import deferent.record.PrettyJson;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

@Command(
        name = "schema",
        mixinStandardHelpOptions = true,
        description = {
            "Prints the JSON Schema of what a command answers with --json, or lists the schemas.",
            "  deferent schema",
            "  deferent schema fit"
        })
final class SchemaCommand implements Callable<Integer> {
    @Spec private CommandSpec spec;

    @Parameters(
            arity = "0..1",
            paramLabel = "NAME",
            description = "Which schema; unsaid, their names are listed.")
    private @Nullable String name;

    @Override
    public Integer call() {
        Manners manner = Manners.of(spec);
        if (name != null) {
            manner.out().print(Schemas.named(name).write());
        } else if (manner.json()) {
            manner.out().print(PrettyJson.text(all()));
        } else {
            for (Schemas schema : Schemas.values()) {
                String of = String.join(", ", commands(schema));
                Paragraphs.wrapped(
                                String.format("%-12s", schema.key()),
                                schema.means() + (of.isEmpty() ? "" : ": " + of),
                                Paragraphs.width())
                        .forEach(manner.out()::println);
            }
        }
        return Exit.FOUND.code();
    }

    /** Those that answer by it. */
    static List<String> commands(Schemas schema) {
        return java.util.Arrays.stream(CommandAnswer.values())
                .filter(row -> row.schema() == schema && !row.command().isEmpty())
                .map(CommandAnswer::command)
                .toList();
    }

    private static ObjectNode all() {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        ArrayNode schemas = node.putArray("schemas");
        for (Schemas schema : Schemas.values()) {
            ObjectNode one = schemas.addObject();
            one.put("name", schema.key()).put("means", schema.means());
            ArrayNode of = one.putArray("commands");
            commands(schema).forEach(of::add);
        }
        return node;
    }
}
