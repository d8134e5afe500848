package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import picocli.CommandLine;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** What every command answers: in JSON that its schema knows, with a code that scripts know. */
class CommandAnswerTest {
    private static final JsonMapper JSON = JsonMapper.shared();
    private static final SchemaRegistry REGISTRY =
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
    private static final Map<Schemas, Schema> KNOWN = new EnumMap<>(Schemas.class);

    /** Those that are held to be strict where they are made. */
    private static final Set<Schemas> STRICT_ELSEWHERE =
            Set.of(Schemas.READINGS, Schemas.DOCUMENT, Schemas.LOG);

    @TempDir static Path folder;
    private static Desk desk = new Desk(Path.of("."));

    @BeforeAll
    static void shelf() {
        desk = new Desk(folder);
        desk.good("shelf", "demo");
        desk.good("practice", "demo");
    }

    /**
     * A row's command lines without --json, words parted by bars; first the code where it is not
     * zero.
     */
    private static List<String> examples(CommandAnswer row) {
        return switch (row) {
            case READ -> List.of("read|static spin vs triquetra");
            case FIT ->
                    List.of(
                            "fit|static spin vs triquetra hand radius 45 cm|--free|right.hand_radius",
                            "3|fit|pendulum vs triquetra|--carrier|left",
                            "fit|static spin vs triquetra|--arms",
                            "3|fit|static spin vs triquetra|--arms|--owned|60cm",
                            "3|fit|CAP riding pendulum|--cord");
            case CLEAR ->
                    List.of("clear|pendulum centre 80 cm left vs pendulum centre 80 cm right");
            case SEEK ->
                    List.of(
                            "seek|--motions|10000|--limit|2",
                            "seek|static spin vs triquetra|--motions|10000|--limit|2",
                            "seek|--svg|M0 0 L2 0 L1 2 Z|--motions|10000|--limit|1",
                            "3|seek|--motions|10000|--order|contrast|--contrast|1000");
            case TRANSITIONS ->
                    List.of(
                            "transitions|extension vs extension|extension vs static spin|--tether|40cm",
                            "3|transitions|isolation vs triquetra tether 50 cm|isolation vs triquetra");
            case ROUTE ->
                    List.of(
                            "route|Ring under the eaves|Ring under the eaves",
                            "3|route|isolation vs triquetra tether 20 cm|isolation vs triquetra tether 90 cm");
            case SET ->
                    List.of(
                            "set|extension vs extension, 8|extension vs static spin, 8, half left on 5"
                                    + "|--song|The long way to the market",
                            "set|isolation vs triquetra tether 20 cm, 4|isolation vs triquetra, 4",
                            "3|set|Nothing like it");
            case LEARN ->
                    List.of("learn|static spin vs triquetra|--from|2026-11-29|--by|2026-12-18");
            case WORDS -> List.of("words", "words|CAP");
            case DRAW -> List.of("draw|static spin vs triquetra|--out|%s/a.svg");
            case LESSON -> List.of();
            case PHOTO -> List.of("photo|static spin vs triquetra|--led-hz|30|--duty|10%%");
            case FILM -> List.of();
            case PRACTICE -> List.of("practice", "practice|static spin vs triquetra");
            case PRACTICE_LOG ->
                    List.of("practice|log|static spin vs triquetra|--minutes|12", "practice|log");
            case PRACTICE_DEMO -> List.of("practice|demo");
            case SONG -> List.of();
            case SONG_DEMO -> List.of("song|demo|--out|%s/tunes");
            case LETGO -> List.of("letgo|--angle|60deg|--seconds|1s", "letgo|--angle|150deg");
            case SHELF -> List.of("shelf");
            case SHELF_LIST -> List.of("shelf|list");
            case SHELF_ADD -> List.of("shelf|add|isolation vs triquetra|--name|Added");
            case SHELF_NAME -> List.of("shelf|name|lantern loop|triquetra hand radius 42 cm");
            case SHELF_SHOW ->
                    List.of("shelf|show|Ring under the eaves", "3|shelf|show|Nothing like it");
            case SHELF_REMOVE -> List.of("shelf|remove|A ring too small");
            case SHELF_EXPORT -> List.of("shelf|export");
            case SHELF_IMPORT -> List.of("shelf|import|%s/whole.json");
            case SHELF_DEMO -> List.of("shelf|demo");
            case SHELF_SCHEMA, STUDIO -> List.of();
            case SCHEMA -> List.of("schema");
            case HELP -> List.of("help", "help|shelf|list", "help|draw");
            case FRONT -> List.of("");
        };
    }

    static Schema schema(Schemas which) {
        return KNOWN.computeIfAbsent(which, one -> REGISTRY.getSchema(one.write()));
    }

    /** What the schema says against a JSON text. */
    static List<String> against(Schemas which, String json) {
        return schema(which).validate(json, InputFormat.JSON).stream()
                .map(Object::toString)
                .toList();
    }

    private static Desk.Answer asked(String line, String... more) {
        List<String> words = new ArrayList<>();
        if (!line.isEmpty()) {
            words.addAll(List.of(line.formatted(folder).split("\\|")));
        }
        words.addAll(List.of(more));
        boolean shelved =
                !line.isEmpty() && !line.matches("(letgo|schema|help|song[|]demo|shelf$).*");
        return shelved
                ? desk.run(words.toArray(String[]::new))
                : Desk.asked(words.toArray(String[]::new));
    }

    @Test
    void everyCommandHasARowAndEveryRowACommand() {
        assertThat(HelpTest.commands().map(words -> words.replaceFirst("^deferent ?", "")))
                .containsExactlyInAnyOrderElementsOf(
                        Arrays.stream(CommandAnswer.values()).map(CommandAnswer::command).toList());
    }

    @ParameterizedTest
    @EnumSource
    void whatItAnswersInJsonFitsItsSchemaAndNothingElseDoes(CommandAnswer row) throws Exception {
        if (row == CommandAnswer.SHELF_IMPORT) {
            desk.good("shelf", "export", "--out", folder.resolve("whole.json").toString());
        }
        for (String example : examples(row)) {
            int code = example.startsWith("3|") ? Exit.NOT_FOUND.code() : Exit.FOUND.code();
            Desk.Answer answer = asked(example.replaceFirst("^3\\|", ""), "--json");
            assertThat(answer.code()).as(example + answer.err()).isEqualTo(code);
            for (String line : answer.err().lines().toList()) {
                assertThat(against(Schemas.ASIDE, line)).as(example + "\n" + line).isEmpty();
            }
            if (answer.out().isEmpty()) {
                assertThat(code).isEqualTo(Exit.NOT_FOUND.code());
                continue;
            }
            assertThat(against(row.schema(), answer.out())).as(example).isEmpty();
            if (!STRICT_ELSEWHERE.contains(row.schema())) {
                strict(row.schema(), answer.json(), example);
            }
        }
    }

    /** Each kind of object with a key too many, or one too few that it must have, is refused. */
    private static void strict(Schemas which, JsonNode right, String example) {
        assertThat(against(which, "{}")).as(example).isNotEmpty();
        Set<String> kinds = new LinkedHashSet<>();
        objects("", right, kinds);
        assertThat(kinds).isNotEmpty();
        for (String pointer : kinds) {
            JsonNode wrong = right.deepCopy();
            ObjectNode at = (ObjectNode) (pointer.isEmpty() ? wrong : wrong.at(pointer));
            at.put("nothing_of_the_kind", "a");
            assertThat(against(which, wrong.toString())).as(example + " " + pointer).isNotEmpty();
        }
        for (String key : right.propertyNames()) {
            ObjectNode wrong = (ObjectNode) right.deepCopy();
            wrong.putObject(key).put("nothing_of_the_kind", "a");
            assertThat(against(which, wrong.toString())).as(example + " " + key).isNotEmpty();
        }
    }

    /** One of each kind of object, told apart by where it stands; a document is known elsewhere. */
    private static void objects(String pointer, JsonNode node, Set<String> into) {
        if (node.isObject()) {
            into.add(pointer);
            node.properties()
                    .forEach(
                            entry -> {
                                if (!entry.getKey().equals("pattern")) {
                                    objects(pointer + "/" + entry.getKey(), entry.getValue(), into);
                                }
                            });
        } else if (node.isArray() && !node.isEmpty()) {
            objects(pointer + "/0", node.get(0), into);
        }
    }

    @ParameterizedTest
    @EnumSource
    void wrongWordsAreOneObjectBesideNoAnswer(CommandAnswer row) {
        Desk.Answer answer =
                Desk.asked((row.command() + " --no-such-option --json").strip().split(" "));
        assertThat(answer.code()).isEqualTo(Exit.WRONG_WORDS.code());
        assertThat(answer.out()).isEmpty();
        assertThat(answer.err().lines()).hasSize(1);
        assertThat(against(Schemas.ASIDE, answer.err())).isEmpty();
        assertThat(JSON.readTree(answer.err()).get("error").stringValue()).isEqualTo("wrong_words");
    }

    @ParameterizedTest
    @EnumSource
    void everyHelpHasItsCodesItsSchemaAndTheSameManners(CommandAnswer row) {
        String[] words = row.command().isEmpty() ? new String[0] : row.command().split(" ");
        String help = Desk.asked(with(words, "--help")).out();
        assertThat(Desk.asked(with(List.of("help"), words)).out()).isEqualTo(help);
        assertThat(help)
                .contains("--quiet", "--json", "--version")
                .contains("deferent schema " + row.schema().key());
        String flat = help.replaceAll("\\s+", " ");
        for (Exit exit : Exit.values()) {
            assertThat(flat).contains(" " + exit.code() + " " + exit.words() + ": ");
        }
        assertThat(flat).contains(row.none());
    }

    private static String[] with(String[] words, String last) {
        return with(List.of(words), last);
    }

    private static String[] with(List<String> first, String... rest) {
        List<String> all = new ArrayList<>(first);
        all.addAll(List.of(rest));
        return all.toArray(String[]::new);
    }

    @ParameterizedTest
    @EnumSource
    void aSchemaStandsAloneAndIsOne(Schemas which) {
        Desk.Answer printed = Desk.asked("schema", which.key());
        assertThat(printed.code()).isZero();
        Schema draft =
                REGISTRY.getSchema(
                        SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        assertThat(draft.validate(printed.out(), InputFormat.JSON)).isEmpty();
        JsonNode schema = printed.json();
        assertThat(schema.get("$id").stringValue()).isEqualTo("urn:deferent:" + which.key() + ":1");
        Set<String> ids =
                schema.findValues("$id").stream()
                        .map(JsonNode::stringValue)
                        .collect(Collectors.toSet());
        assertThat(schema.findValues("$ref").stream().map(JsonNode::stringValue))
                .allMatch(ref -> ref.startsWith("#") || ids.contains(ref.replaceFirst("#.*", "")));
        assertThat(Desk.asked("schema").out()).contains(which.key()).contains(which.means());
    }

    @Test
    void theStudioSaysInJsonWhereItRuns() {
        assertThat(
                        against(
                                Schemas.STUDIO,
                                StudioCommand.tree(
                                                URI.create("http://127.0.0.1:4711/"),
                                                folder,
                                                folder.resolve("open.html"))
                                        .toString()))
                .isEmpty();
        assertThat(against(Schemas.STUDIO, "{\"address\": \"http://example.org/\"}")).isNotEmpty();
    }

    @Test
    void everyCommandKnowsItsVersion() {
        for (String words : List.of("", "read ", "shelf list ")) {
            assertThat(Desk.asked((words + "--version").split(" ")).out())
                    .startsWith("deferent 0.");
        }
        assertThat(HelpTest.lines()).allMatch(line -> line.getCommandSpec().version().length == 1);
    }

    /** The page that says all this to people. */
    @Test
    void thePageOfTheCommandLineSaysTheSame() throws Exception {
        String page = Files.readString(Path.of("..", "docs", "command-line.md"));
        for (Exit exit : Exit.values()) {
            assertThat(page)
                    .contains("| " + exit.code() + " | " + exit.words() + " | " + exit.means());
        }
        for (CommandAnswer row : CommandAnswer.values()) {
            assertThat(page).contains(row(row));
        }
        for (Schemas schema : Schemas.values()) {
            assertThat(page).contains("| `" + schema.key() + "` | " + schema.means() + " |");
        }
    }

    /** A command's row on that page. */
    private static String row(CommandAnswer row) {
        CommandLine line = Deferent.line();
        for (String word : row.command().isEmpty() ? new String[0] : row.command().split(" ")) {
            line = line.getSubcommands().get(word);
        }
        String means = line.getCommandSpec().usageMessage().description()[0];
        return "| `"
                + ("deferent " + row.command()).strip()
                + "` | "
                + means
                + " | `"
                + row.schema().key()
                + "` | "
                + row.none()
                + " |";
    }
}
