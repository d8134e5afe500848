package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

class LearnCommandTest {
    private static final String RING = "static spin vs triquetra, tether 45 cm";

    @TempDir private Path folder;

    private Desk.Answer learn(String... more) {
        String[] args = new String[more.length + 4];
        args[0] = "learn";
        args[1] = RING;
        args[2] = "--from";
        args[3] = "2026-11-28";
        System.arraycopy(more, 0, args, 4, more.length);
        return new Desk(folder).good(args);
    }

    @Test
    void thePlanNamesEachDayFromTheFirst() {
        Desk.Answer answer = learn("--by", "2026-12-31", "--days", "3");
        assertThat(answer.out().lines()).anyMatch(line -> line.startsWith("Sat 28 Nov  1 "));
        assertThat(answer.out()).contains("Sun 29 Nov", "Mon 30 Nov").doesNotContain("Tue 1 Dec");
        assertThat(answer.text()).contains("in time for Thursday, 31 December 2026.");
    }

    @Test
    void theWeekInTheDocsIsTheOneThatIsPlanned() throws IOException {
        Desk desk = new Desk(folder);
        desk.good("shelf", "demo");
        String[] asked = {"learn", "The swing by the gate", "--from", "2026-11-28", "--days", "7"};
        List<String> days =
                unwrapped(desk.good(asked).out())
                        .lines()
                        .filter(line -> line.matches("(Mon|Tue|Wed|Thu|Fri|Sat|Sun) .*"))
                        .toList();
        assertThat(days).hasSize(7);
        assertThat(Files.readString(Path.of("../docs/practice.md")))
                .contains("    " + String.join("\n    ", days) + "\n");
    }

    @Test
    void aDateThatCannotBeKeptIsAnsweredWithOneThatCan() {
        String told = learn("--by", "2026-11-29", "--minutes", "10").text();
        assertThat(told)
                .contains(
                        "At 10 minutes a day it cannot be ready by Sunday, 29 November 2026; you could have it on ");
    }

    @Test
    void everyPhraseOfThePlanIsReadAgain() {
        Matcher phrases = Pattern.compile("phrase: (.+)").matcher(unwrapped(learn().out()));
        int count = 0;
        while (phrases.find()) {
            new Desk(folder).good("read", phrases.group(1));
            count++;
        }
        assertThat(count).isGreaterThan(3);
    }

    @Test
    void whatIsInTheLogIsNotPlannedAgainButComesBack() throws IOException {
        Path log = Files.createDirectories(folder.resolve("shelf/log"));
        Files.writeString(
                log.resolve("2026-11-26.jsonl"),
                "{\"id\":\"k3f9a2c4e1\",\"date\":\"2026-11-26\",\"pattern\":\""
                        + RING
                        + "\",\"part\":\"left hand\",\"minutes\":20,\"went\":\"well\"}\n");
        assertThat(learn("--days", "1").text())
                .contains("Sat 28 Nov again 1 left hand alone, 3 minutes; 2 right hand alone, 17");
    }

    @Test
    void programsGetEveryDrillAndEveryDay() {
        JsonNode plan = learn("--by", "2026-12-31", "--json").json();
        assertThat(plan.at("/days")).hasSize(34);
        assertThat(plan.at("/days/0/date").stringValue()).isEqualTo("2026-11-28");
        int last = plan.at("/drills").size();
        assertThat(plan.at("/drills/" + (last - 1) + "/kind").stringValue()).isEqualTo("whole");
        assertThat(plan.at("/drills/" + (last - 1) + "/needs")).hasSize(last - 1);
        assertThat(plan.at("/kept").booleanValue()).isTrue();
    }

    /** Lines that go on under a phrase belong to it. */
    private static String unwrapped(String out) {
        return out.replaceAll("\\n {12}(?=\\S)", " ");
    }

    @Test
    void aDayBeforeTheFirstIsRefused() {
        Desk.Answer answer =
                new Desk(folder).bad("learn", RING, "--from", "2026-11-28", "--by", "2026-11-01");
        assertThat(answer.err()).contains("before the first one");
        assertThat(new Desk(folder).bad("learn", RING, "--by", "soon").err()).contains("--by");
        assertThat(new Desk(folder).bad("learn", RING, "--minutes", "2").err())
                .contains("minutes a day");
        assertThat(new Desk(folder).bad("learn", RING, "--days", "0").err()).contains("--days");
    }

    @Test
    void thePlanIsOnePageAndItsDrillsAreKeptAsPatternsOnce() throws IOException {
        Path page = folder.resolve("plan.pdf");
        Path picture = folder.resolve("plan.svg");
        String told =
                learn(
                                "--by",
                                "2026-12-18",
                                "--keep",
                                "--why",
                                "--out",
                                page.toString(),
                                "--out",
                                picture.toString())
                        .text();
        assertThat(told)
                .contains("On the shelf: ", ": left hand alone")
                .contains("Left out:", "another one changes less.")
                .contains("is not in it.");
        assertThat(Files.readAllBytes(page)).startsWith('%', 'P', 'D', 'F');
        assertThat(Files.readString(picture)).contains(">1 left hand alone,<", "Sat 28 Nov");
        Desk desk = new Desk(folder);
        String shelf = desk.good("shelf", "list").text();
        assertThat(shelf).contains(": both hands apart");
        // Each is a pattern as any other, and a second time changes nothing.
        Path drawn = folder.resolve("drill.svg");
        desk.good("draw", RING + ": both hands apart", "--out", drawn.toString());
        assertThat(drawn).isNotEmptyFile();
        learn("--keep");
        assertThat(desk.good("shelf", "list").text()).isEqualTo(shelf);
        assertThat(new Desk(folder).bad("learn", RING, "--out", "plan.doc").err())
                .contains("give one that ends in .pdf, .svg or .png");
    }
}
