package deferent.app;

import java.util.Arrays;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;

/**
 * What each command answers, one row a command: the schema of its JSON, and what "not found" means
 * there beside a name or a file that is not there.
 */
enum CommandAnswer {
    READ("read", Schemas.READINGS, ""),
    FIT("fit", Schemas.FIT, "no sizes close it, or none is within reach"),
    CLEAR("clear", Schemas.CLEAR, "no change of planes that was tried clears it"),
    SEEK("seek", Schemas.SEEK, "no pairing passes what was asked for"),
    TRANSITIONS("transitions", Schemas.TRANSITIONS, "none leads from the one to the other"),
    ROUTE("route", Schemas.ROUTE, "no route leads there"),
    SET(
            "set",
            Schemas.SET,
            "a pattern of it is gone from the shelf, or there is no set to suggest"),
    LEARN("learn", Schemas.LEARN, ""),
    WORDS("words", Schemas.WORDS, ""),
    DRAW("draw", Schemas.FILES, ""),
    LESSON("lesson", Schemas.FILES, ""),
    PHOTO("photo", Schemas.PHOTO, ""),
    FILM("film", Schemas.FILM, ""),
    PRACTICE("practice", Schemas.WEEKS, "what is asked about was never kept"),
    PRACTICE_LOG("practice log", Schemas.LOG, ""),
    PRACTICE_DEMO("practice demo", Schemas.KEPT, ""),
    SONG("song", Schemas.SONG, ""),
    SONG_DEMO("song demo", Schemas.FILES, ""),
    LETGO("letgo", Schemas.LETGO, ""),
    SHELF("shelf", Schemas.HELP, ""),
    SHELF_LIST("shelf list", Schemas.SHELF, ""),
    SHELF_ADD("shelf add", Schemas.KEPT, ""),
    SHELF_NAME("shelf name", Schemas.KEPT, ""),
    SHELF_SHOW("shelf show", Schemas.DOCUMENT, ""),
    SHELF_REMOVE("shelf remove", Schemas.KEPT, ""),
    SHELF_EXPORT("shelf export", Schemas.DOCUMENT, ""),
    SHELF_IMPORT("shelf import", Schemas.KEPT, ""),
    SHELF_DEMO("shelf demo", Schemas.KEPT, ""),
    SHELF_SCHEMA("shelf schema", Schemas.SCHEMAS, ""),
    STUDIO("studio", Schemas.STUDIO, ""),
    SCHEMA("schema", Schemas.SCHEMAS, ""),
    HELP("help", Schemas.HELP, ""),
    FRONT("", Schemas.HELP, "");

    private final String command;
    private final Schemas schema;
    private final String none;

    CommandAnswer(String command, Schemas schema, String none) {
        this.command = command;
        this.schema = schema;
        this.none = none;
    }

    /** In the words that call it, "shelf list". */
    String command() {
        return command;
    }

    Schemas schema() {
        return schema;
    }

    /** What has not been found; empty where only a name or a file can be missing. */
    String none() {
        return none;
    }

    static Optional<CommandAnswer> of(CommandSpec spec) {
        String words = spec.qualifiedName().replaceFirst("^deferent ?", "");
        return Arrays.stream(values()).filter(row -> row.command.equals(words)).findFirst();
    }
}
