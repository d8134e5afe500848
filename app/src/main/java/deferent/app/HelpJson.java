package deferent.app;

import deferent.record.PrettyJson;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** What help says of a command, as JSON. */
final class HelpJson {
    private HelpJson() {}

    static String write(CommandSpec spec) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("command", spec.qualifiedName());
        node.put("means", said(spec.usageMessage().description()));
        node.put(
                "schema",
                CommandAnswer.of(spec).map(CommandAnswer::schema).orElse(Schemas.HELP).key());
        ArrayNode parameters = node.putArray("parameters");
        spec.positionalParameters().stream()
                .filter(parameter -> !parameter.hidden())
                .forEach(parameter -> argument(parameters.addObject(), parameter));
        ArrayNode options = node.putArray("options");
        spec.options().stream()
                .filter(option -> !option.hidden())
                .forEach(option -> option(options.addObject(), option));
        ArrayNode commands = node.putArray("commands");
        spec.subcommands()
                .forEach(
                        (name, line) ->
                                commands.addObject()
                                        .put("command", line.getCommandSpec().qualifiedName())
                                        .put(
                                                "means",
                                                said(
                                                        line.getCommandSpec()
                                                                .usageMessage()
                                                                .description())));
        ArrayNode codes = node.putArray("exit_codes");
        for (Exit exit : Exit.values()) {
            codes.addObject()
                    .put("code", exit.code())
                    .put("words", exit.words())
                    .put("means", exit.means());
        }
        return PrettyJson.text(node);
    }

    private static void option(ObjectNode node, OptionSpec option) {
        ArrayNode names = node.putArray("names");
        for (String name : option.names()) {
            names.add(name);
        }
        argument(node, option);
    }

    private static void argument(ObjectNode node, ArgSpec argument) {
        if (argument.arity().max() > 0) {
            node.put("value", argument.paramLabel());
        }
        node.put("means", said(argument.description()));
        node.put("required", argument.required());
        node.put("repeats", argument.isMultiValue());
    }

    /** Descriptions are format strings of many lines. */
    private static String said(String[] description) {
        return Ansi.OFF.string(String.join("\n", description)).replace("%%", "%").strip();
    }
}
