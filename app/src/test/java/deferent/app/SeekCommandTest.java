package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Tether;
import deferent.motion.shared.Side;
import deferent.record.PatternJson;
import deferent.search.seek.Answer;
import deferent.search.seek.Seek;
import deferent.search.seek.SeekRequest;
import deferent.search.seek.Space;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

class SeekCommandTest {
    private static final String FEW = "10000";

    @TempDir Path folder;
    private Desk desk = new Desk(Path.of("."));

    @BeforeEach
    void ask() {
        desk = new Desk(folder);
    }

    @Test
    void everythingThatLinksIsToldClosestFirst() {
        Desk.Answer answer =
                desk.good("seek", "--order", "closest", "--motions", FEW, "--limit", "5");
        assertThat(answer.text())
                .contains("links close exactly and ")
                .contains("Closest first, then simplest")
                .contains(" 1. static spin vs extension")
                .contains("Linked exactly. ")
                .contains("It stands for ")
                .doesNotContain("why: ");
        assertThat(answer.out().lines()).allMatch(line -> line.length() <= 100);
        assertThat(answer.out().lines().filter(l -> l.matches(" +[0-9]+\\. .*"))).hasSize(5);
    }

    @Test
    void unlessToldOtherwiseItIsWhatOneMayNotHaveTriedInFewWords() {
        Desk.Answer answer = desk.good("seek", "--motions", FEW, "--limit", "6");
        assertThat(answer.text())
                .contains("You may not have tried")
                .contains("3. static spin vs triquetra")
                .doesNotContain("nobody");
    }

    @Test
    void unlessToldOtherwiseWhatIsFoundIsMadeSmallerUntilItIsReached() {
        JsonNode first =
                desk.good("seek", "--motions", FEW, "--limit", "1", "--json")
                        .json()
                        .at("/answers/0");
        assertThat(first.get("said").stringValue())
                .isEqualTo("static spin vs extension, tether 44 cm");
        JsonNode as =
                desk.good("seek", "--motions", FEW, "--limit", "1", "--no-reachable", "--json")
                        .json()
                        .at("/answers/0");
        assertThat(as.get("said").stringValue()).isEqualTo("static spin vs extension");
    }

    @Test
    void jsonHasEachAnswerWithAPatternThatReadsBack() {
        JsonNode found =
                desk.good("seek", "--motions", FEW, "--limit", "4", "--no-reachable", "--json")
                        .json();
        assertThat(found.get("complete").booleanValue()).isTrue();
        assertThat(found.at("/space/motions").intValue()).isBetween(9_000, 13_000);
        assertThat(found.get("exact_links").intValue()).isPositive();
        assertThat(found.get("answers")).hasSize(4);
        for (JsonNode answer : found.get("answers")) {
            assertThat(answer.get("exact").booleanValue()).isTrue();
            assertThat(answer.get("pairs").longValue())
                    .isEqualTo(
                            answer.get("carriers").longValue() * answer.get("riders").longValue());
            assertThat(answer.at("/told/text").stringValue()).contains("It links in ");
            assertThat(PatternJson.readPattern(answer.get("pattern")).phrase().orElse(""))
                    .isEqualTo(answer.get("said").stringValue());
        }
    }

    @Test
    void aPairingFindsItselfAndWhatIsLikeItAndIsKeptUnderAName() {
        Desk.Answer answer =
                desk.good(
                        "seek",
                        "static spin vs triquetra",
                        "--motions",
                        FEW,
                        "--limit",
                        "3",
                        "--save",
                        "1",
                        "My ring");
        assertThat(answer.text())
                .contains("Most like static spin vs triquetra")
                .contains(" 1. static spin vs triquetra The very same. Linked exactly.")
                .contains("On the shelf: my-ring");
        assertThat(desk.good("read", "My ring").text())
                .startsWith("My ring static spin vs triquetra")
                .contains("Linked, touching");
        JsonNode like =
                desk.good("seek", "my ring", "--motions", FEW, "--limit", "2", "--json").json();
        assertThat(like.at("/answers/0/distance_m").doubleValue()).isCloseTo(0, within(1e-3));
        assertThat(like.at("/answers/1/distance_m").doubleValue()).isGreaterThan(0.01);
    }

    @Test
    void likenessIsSoughtOnThePairingsOwnTether() {
        JsonNode like =
                desk.good(
                                "seek",
                                "static spin vs triquetra, tether 45 cm",
                                "--motions",
                                FEW,
                                "--limit",
                                "1",
                                "--json")
                        .json();
        assertThat(like.get("tether_m").doubleValue()).isEqualTo(0.45);
        assertThat(like.at("/answers/0/distance_m").doubleValue()).isCloseTo(0, within(1e-3));
    }

    /** A circle is drawn by a still hand, on a tether as long as the circle's radius. */
    @Test
    void aDrawnCircleIsAStaticSpinAndWhatLinksWithItIsTold() {
        String circle = "M1 0 A1 1 0 0 1 -1 0 A1 1 0 0 1 1 0 Z";
        String[] asked = {
            "seek", "--svg", circle, "--radius", "48cm", "--motions", FEW, "--limit", "3"
        };
        assertThat(desk.good(asked).text())
                .contains("What draws the figure - static spin Draws it")
                .contains("as large as given on a tether of ")
                .contains("What links with it as carrier 1. static spin vs ")
                .contains("Linked exactly.");
        JsonNode drawn =
                desk.good(
                                "seek",
                                "--svg",
                                circle,
                                "--radius",
                                "48cm",
                                "--motions",
                                FEW,
                                "--limit",
                                "3",
                                "--json")
                        .json();
        assertThat(drawn.get("drawers"))
                .hasSize(5)
                .anySatisfy(
                        d -> {
                            assertThat(d.get("said").stringValue()).isEqualTo("static spin");
                            assertThat(d.get("tether_m").doubleValue())
                                    .isCloseTo(0.48, within(1e-3));
                        });
    }

    @Test
    void ordersAndFiltersKeepWhatTheySay() {
        JsonNode wide =
                desk.good(
                                "seek",
                                "--motions",
                                FEW,
                                "--limit",
                                "5",
                                "--order",
                                "contrast",
                                "--exact",
                                "--reachable",
                                "--contrast",
                                "2",
                                "--stature",
                                "190cm",
                                "--tether",
                                "40cm",
                                "--json")
                        .json();
        assertThat(wide.get("order").stringValue()).isEqualTo("contrast");
        assertThat(wide.get("answers")).isNotEmpty();
        double before = Double.MAX_VALUE;
        for (JsonNode answer : wide.get("answers")) {
            double contrast = answer.at("/merit/contrast").doubleValue();
            assertThat(contrast).isBetween(2.0, before);
            assertThat(answer.at("/merit/missing_m").doubleValue()).isZero();
            assertThat(answer.at("/pattern/performer/stature_m").doubleValue()).isEqualTo(1.9);
            before = contrast;
        }
        JsonNode slow =
                desk.good(
                                "seek",
                                "--motions",
                                FEW,
                                "--limit",
                                "2",
                                "--order",
                                "slowest",
                                "--slowest",
                                "90",
                                "--json")
                        .json();
        assertThat(slow.get("answers"))
                .isNotEmpty()
                .allSatisfy(
                        a ->
                                assertThat(a.at("/merit/slowest_cycles_per_min").doubleValue())
                                        .isLessThanOrEqualTo(90));
    }

    @Test
    void theShelfIsComparedWithWhereItIsAsked() {
        desk.good("shelf", "add", "static spin vs triquetra");
        JsonNode near =
                desk.good(
                                "seek",
                                "--motions",
                                FEW,
                                "--limit",
                                "3",
                                "--order",
                                "near-shelf",
                                "--json")
                        .json();
        assertThat(near.at("/answers/0/merit/to_shelf_m").doubleValue()).isCloseTo(0, within(1e-3));
        JsonNode fresh =
                desk.good(
                                "seek",
                                "--motions",
                                FEW,
                                "--limit",
                                "3",
                                "--order",
                                "new",
                                "--new",
                                "--json")
                        .json();
        assertThat(fresh.get("answers"))
                .hasSize(3)
                .allSatisfy(
                        a ->
                                assertThat(a.at("/merit/to_shelf_m").doubleValue())
                                        .isGreaterThan(1e-3));
    }

    @Test
    void freeTethersSayTheRidersOwn() {
        JsonNode free =
                desk.good(
                                "seek",
                                "--motions",
                                FEW,
                                "--limit",
                                "30",
                                "--tethers",
                                "free",
                                "--tolerance",
                                "1mm",
                                "--json")
                        .json();
        assertThat(free.get("tethers").stringValue()).isEqualTo("free");
        assertThat(free.get("tolerance_m").doubleValue()).isEqualTo(0.001);
        assertThat(free.get("answers"))
                .anySatisfy(
                        a -> assertThat(tether(a, Side.RIGHT)).isNotEqualTo(tether(a, Side.LEFT)));
    }

    private static Tether tether(JsonNode answer, Side side) {
        return PatternJson.readPattern(answer.get("pattern")).pairing().part(side).tether();
    }

    /** Pages as deferent-far writes them. */
    @Test
    void answersThatWereFoundElsewhereAreLeafedThrough() throws IOException {
        Answer here = new Seek(SeekRequest.of(Space.of(Space.Grid.SMALL))).found().list().get(0);
        Path pages = Files.createDirectories(folder.resolve("far").resolve("pages"));
        Files.writeString(
                pages.resolve("index.json"),
                """
                {"deferent_pages": 1, "grid": {"circle_steps": 4, "pair_steps": 2,
                 "most_tethers": 2, "turns": 3, "starts": 8, "arcs": 3, "stretches": false},
                 "tether_m": 0.6, "tethers": "equal", "tolerance_m": 0.01, "links": 12,
                 "exact_links": 9, "families": 1, "page_size": 100}
                """);
        Files.writeString(
                pages.resolve("page-00001.json"),
                "[{\"family\": \"one\", \"carrier\": "
                        + here.carrier()
                        + ", \"rider\": "
                        + here.rider()
                        + ", \"gap\": 0, \"carriers\": 1, \"riders\": 1, \"links\": 1,"
                        + " \"pairs\": 1}]");
        String from = folder.resolve("far").toString();
        assertThat(desk.good("seek", "--from", from, "--no-reachable").text())
                .contains("9 links close exactly and 3 within 1 cm; sought elsewhere.")
                .contains("Page 1 of 1, one family, simplest first 1. " + here.said());
        JsonNode json = desk.good("seek", "--from", from, "--json").json();
        assertThat(json.get("pages").intValue()).isEqualTo(1);
        assertThat(json.at("/answers/0/exact").booleanValue()).isTrue();
        assertThat(desk.bad("seek", "--from", from, "--page", "2").err()).contains("give 1 to 1");
        assertThat(desk.bad("seek", "--page", "2").err()).contains("--from FOLDER");
        assertThat(desk.bad("seek", "--from", folder.toString()).err())
                .contains("no answers to leaf through");
    }

    @Test
    void nothingFoundIsAnAnswer() {
        assertThat(
                        desk.none(
                                        "seek",
                                        "--motions",
                                        FEW,
                                        "--order",
                                        "contrast",
                                        "--contrast",
                                        "1000")
                                .text())
                .contains("None of them passes what was asked for.");
    }

    @Test
    void progressIsToldWhereItIsAskedFor() {
        Desk.Answer answer = desk.run("seek", "--motions", FEW, "--limit", "1", "--progress");
        assertThat(answer.code()).isZero();
        assertThat(answer.err()).contains(" motions built").contains(" links found");
        assertThat(answer.out()).doesNotContain("motions built");
    }

    @Test
    void whatCannotBeSoughtIsRefusedBeforeTheWorkBegins() {
        assertThat(desk.bad("seek", "isolashun vs triquetra").err()).contains("Nearest: isolation");
        assertThat(desk.bad("seak").err()).contains("Did you mean: deferent seek");
        assertThat(desk.bad("seek", "--tolerance", "1").err()).contains("has no unit");
        assertThat(desk.bad("seek", "--tolerance", "2m").err()).contains("tolerance of a link");
        assertThat(desk.bad("seek", "--motions", "12").err()).contains("motions");
        assertThat(desk.bad("seek", "--motions", "many").err()).contains("--motions");
        assertThat(desk.bad("seek", "--order", "beauty").err())
                .contains("is no order")
                .contains("near-shelf");
        assertThat(desk.bad("seek", "--order", "new").err()).contains("has no patterns");
        assertThat(desk.bad("seek", "--tethers", "long").err()).contains("--tethers");
        assertThat(desk.bad("seek", "--limit", "0").err()).contains("answers");
        assertThat(desk.bad("seek", "--contrast", "0.5").err()).contains("filter");
        assertThat(desk.bad("seek", "--save", "two", "My own").err()).contains("--save two");
        assertThat(desk.bad("seek", "--svg", "M0 0 what").err())
                .contains("is not understood at character 6");
        assertThat(desk.bad("seek", "--svg", "M0 0 L1 0 L1 1 Z", "isolation vs triquetra").err())
                .contains("one or the other");
        assertThat(desk.bad("seek", "isolation vs triquetra", "--order", "reach").err())
                .contains("--order");
    }

    @Test
    void anAnswerThatIsNotThereIsNotSaved() {
        Desk.Answer answer =
                desk.run(
                        "seek",
                        "--motions",
                        FEW,
                        "--order",
                        "contrast",
                        "--contrast",
                        "1000",
                        "--save",
                        "1",
                        "None");
        assertThat(answer.code()).isEqualTo(Exit.NOT_FOUND.code());
        assertThat(answer.err()).contains("answer 1 is not saved");
        assertThat(desk.good("shelf", "list").out()).contains("is empty");
    }

    /** A program of its own is told to end while it looks for links; its answer is still whole. */
    @Test
    void whoStopsItIsToldWhatWasFound() throws IOException, InterruptedException {
        Path out = folder.resolve("out.json");
        Process seek =
                new ProcessBuilder(
                                List.of(
                                        Path.of(System.getProperty("java.home"), "bin", "java")
                                                .toString(),
                                        "-cp",
                                        System.getProperty("java.class.path"),
                                        Deferent.class.getName(),
                                        "seek",
                                        "--motions",
                                        "1000000",
                                        "--limit",
                                        "2",
                                        "--progress",
                                        "--json",
                                        "--shelf",
                                        folder.resolve("shelf").toString()))
                        .redirectOutput(out.toFile())
                        .start();
        try (BufferedReader told = seek.errorReader(StandardCharsets.UTF_8)) {
            String line = told.readLine();
            while (line != null && !line.contains("drawing the motions")) {
                line = told.readLine();
            }
            assertThat(line).as("progress").isNotNull();
            // Ends as Ctrl-C does: by a signal that lets the program say goodbye.
            seek.destroy();
            assertThat(seek.waitFor(5, TimeUnit.MINUTES)).isTrue();
        }
        JsonNode found = new Desk.Answer(0, Files.readString(out), "").json();
        assertThat(found.get("complete").booleanValue()).isFalse();
        assertThat(found.at("/told/0/text").stringValue()).containsIgnoringCase("stopped");
    }
}
