package deferent.app;

import deferent.motion.phrase.PhraseError;
import deferent.motion.shared.Refused;
import deferent.record.DocumentError;
import deferent.record.ShelfError;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * What went wrong, told to people in lines and to programs in an object.
 *
 * @param exit how the command ends
 * @param message in one line
 * @param refused what, where and what would be right, where that is known apart
 * @param underlined what was said, with carets under what is wrong; may be empty
 * @param nearest words or names that are known and spelt nearly so
 * @param offers what could be said instead
 * @param more lines for people alone
 */
record Complaint(
        Exit exit,
        String message,
        Optional<Refused> refused,
        String underlined,
        List<String> nearest,
        List<String> offers,
        List<String> more) {

    private static Complaint of(Exit exit, String message) {
        return new Complaint(exit, message, Optional.empty(), "", List.of(), List.of(), List.of());
    }

    static Complaint of(Throwable thrown) {
        if (thrown instanceof PhraseError wrong) {
            return phrase(wrong);
        }
        if (thrown instanceof NotNamed wrong) {
            return named(wrong);
        }
        if (thrown instanceof Refused wrong) {
            String underlined = wrong instanceof DocumentError error ? error.underlined() : "";
            return new Complaint(
                    exit(wrong),
                    String.valueOf(wrong.getMessage()),
                    Optional.of(wrong),
                    underlined,
                    wrong.nearest(),
                    List.of(),
                    List.of());
        }
        if (thrown instanceof NotMade cannot) {
            return of(Exit.FAILED, String.valueOf(cannot.getMessage()));
        }
        if (thrown instanceof IOException cannot) {
            return of(
                    Exit.FAILED,
                    "it cannot be read or written: " + String.valueOf(cannot.getMessage()));
        }
        String what = String.valueOf(thrown.getMessage()).lines().findFirst().orElse("no message");
        return of(
                Exit.FAILED,
                "this went wrong inside ("
                        + thrown.getClass().getSimpleName()
                        + ": "
                        + what
                        + "); --trace shows where");
    }

    private static Complaint phrase(PhraseError wrong) {
        List<String> more = new ArrayList<>();
        if (wrong.offers().stream().noneMatch(wrong.expected()::contains)) {
            more.add("Expected: " + wrong.expected() + ".");
        }
        if (!wrong.nearest().isEmpty()) {
            more.add("Nearest: " + String.join(", ", wrong.nearest()) + ".");
        }
        wrong.offers().forEach(phrase -> more.add("Try: " + phrase));
        return new Complaint(
                Exit.WRONG_WORDS,
                wrong.what(),
                Optional.of(wrong),
                wrong.underlined(),
                wrong.nearest(),
                wrong.offers(),
                more);
    }

    /** Neither a phrase nor a name: where a name is nearly so, that is likelier than a phrase. */
    private static Complaint named(NotNamed wrong) {
        Complaint phrase = phrase(wrong.phrase());
        if (wrong.near().isEmpty()) {
            return phrase.and("Nor is that a name on the shelf.");
        }
        String names = String.join("\" or \"", wrong.near());
        return new Complaint(
                Exit.WRONG_WORDS,
                "neither a phrase nor a name on the shelf",
                phrase.refused,
                "",
                wrong.near(),
                List.of(),
                List.of("Did you mean \"" + names + "\"?"));
    }

    /** An option, a command or a number that cannot be read. */
    static Complaint of(ParameterException wrong, List<String> commands) {
        List<String> nearest = new ArrayList<>(commands);
        if (nearest.isEmpty() && wrong instanceof UnmatchedArgumentException unmatched) {
            nearest.addAll(unmatched.getSuggestions());
        }
        List<String> more =
                List.of(
                        !commands.isEmpty()
                                ? "Did you mean: deferent " + String.join(" or ", commands) + "?"
                                : !nearest.isEmpty()
                                        ? "Possible solutions: " + String.join(", ", nearest)
                                        : "See: "
                                                + wrong.getCommandLine()
                                                        .getCommandSpec()
                                                        .qualifiedName()
                                                + " --help");
        String message = String.valueOf(wrong.getMessage());
        // What picocli says of a place with nothing in it reads as a program's own words.
        return new Complaint(
                Exit.WRONG_WORDS,
                wrong instanceof MissingParameterException
                        ? message.replaceFirst("^Missing required parameters?:", "Missing:")
                        : message,
                Optional.empty(),
                "",
                nearest,
                List.of(),
                more);
    }

    private static Exit exit(Refused wrong) {
        boolean machine =
                wrong.getCause() instanceof IOException
                        || wrong.getCause() instanceof LinkageError
                        || wrong instanceof ShelfError shelf
                                && switch (shelf.kind()) {
                                    case MISSING, NAME, SIZE -> false;
                                    case CHANGED, FOLDER -> true;
                                };
        boolean gone =
                wrong instanceof NotFound
                        || wrong instanceof ShelfError shelf
                                && shelf.kind() == ShelfError.Kind.MISSING;
        return machine ? Exit.FAILED : gone ? Exit.NOT_FOUND : Exit.WRONG_WORDS;
    }

    /** The same with one more line for people. */
    Complaint and(String line) {
        List<String> longer = new ArrayList<>(more);
        longer.add(line);
        return new Complaint(exit, message, refused, underlined, nearest, offers, longer);
    }

    void tell(PrintWriter err, boolean json) {
        if (json) {
            err.println(tree());
            return;
        }
        if (!underlined.isEmpty()) {
            err.println(underlined);
        }
        err.println("deferent: " + message);
        more.forEach(err::println);
    }

    /** On one line, as everything that is told beside an answer in JSON. */
    private ObjectNode tree() {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("error", exit.words().replace(' ', '_'));
        node.put("exit", exit.code());
        node.put("message", message);
        refused.ifPresent(
                wrong ->
                        node.put("what", wrong.what())
                                .put("where", wrong.where())
                                .put("right", wrong.right()));
        if (!underlined.isEmpty()) {
            node.put("underlined", underlined);
        }
        words(node.putArray("nearest"), nearest);
        words(node.putArray("offers"), offers);
        return node;
    }

    private static void words(ArrayNode into, List<String> words) {
        words.forEach(into::add);
    }
}
