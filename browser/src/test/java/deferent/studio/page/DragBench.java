package deferent.studio.page;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import deferent.studio.Studio;
import deferent.studio.StudioOptions;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Measures a drag on the stage: from the time stamp of each pointer event to a readback of the very
 * pixels that answer it. The left hand is on its circle's edge at the start of the cycle; while the
 * circle is dragged larger and smaller the hand's mark must stand where each answer puts it, and
 * the readback of that place must hold the hand's colour. A move without such an answer is a
 * dropped one.
 *
 * <p>Two spans are told: server and script, from the handler of the event until the last drawing
 * command is given, and the whole, from the event's own time stamp until the pixels are read back.
 *
 * <p>Run it by {@code browser/bench-drag}; {@code --gpu} leaves the choice of renderer to the
 * machine; {@code --at FILE} measures a studio that runs already, through the file that opens it,
 * rather than one started for it, in a process of its own either way; {@code --use MINUTES} uses
 * the page for so long instead and tells what memory it holds.
 */
public final class DragBench {
    static final int MOVES = 200;

    /** What follows the studio's address. */
    static final String PATTERN = "#phrase=isolation+vs+four-petal+antispin";

    private static final int WARM = 200;
    private static final int WARMING_QUESTIONS = 4000;

    /**
     * What was measured, milliseconds.
     *
     * @param renderer as the browser names it
     * @param moves pointer events that the page saw
     * @param answered of them, answered by right pixels
     * @param scripted server and script, sorted
     * @param whole event to pixels read back, sorted
     * @param spans the whole's four parts, each sorted
     */
    record Measured(
            String renderer,
            int moves,
            int answered,
            double[] scripted,
            double[] whole,
            List<double[]> spans) {
        int dropped() {
            return moves - answered;
        }

        static double percentile(double[] sorted, double share) {
            return sorted[Math.min(sorted.length - 1, (int) Math.ceil(share * sorted.length) - 1)];
        }

        String told() {
            return String.format(
                    Locale.ROOT,
                    "renderer: %s%nonce warm; moves: %d, answered by right pixels: %d, dropped: %d%n"
                            + "server and script: median %.1f ms, 95th percentile %.1f ms, most"
                            + " %.1f ms%n"
                            + "event to pixels read back: median %.1f ms, 95th percentile %.1f ms,"
                            + " most %.1f ms%n"
                            + "of which, medians: event to handler %.1f, to server and back %.1f,"
                            + " drawing commands %.1f, pixels %.1f ms%n",
                    renderer,
                    moves,
                    answered,
                    dropped(),
                    percentile(scripted, 0.5),
                    percentile(scripted, 0.95),
                    scripted[scripted.length - 1],
                    percentile(whole, 0.5),
                    percentile(whole, 0.95),
                    whole[whole.length - 1],
                    percentile(spans.get(0), 0.5),
                    percentile(spans.get(1), 0.5),
                    percentile(spans.get(2), 0.5),
                    percentile(spans.get(3), 0.5));
        }
    }

    private DragBench() {}

    /**
     * Measures one drag.
     *
     * @param address of a studio that opens with {@link #PATTERN}
     * @param patient make a move only when the one before is answered, so that a machine busy with
     *     other work shows the same; else a move a frame, as a hand does
     */
    static Measured measure(Browser browser, String address, int moves, boolean patient) {
        try (BrowserContext context =
                browser.newContext(new Browser.NewContextOptions().setViewportSize(1280, 800))) {
            Page page = context.newPage();
            Chromium.open(page, address);
            Chromium.until(
                    page,
                    "!deferentDesk.session.live.busy && deferentDesk.session.answer?.detail ==="
                            + " 'settled'");
            page.evaluate("deferentDesk.clock.play(false); deferentDesk.clock.seek(0)");
            if (!patient) {
                page.evaluate(WARMING, WARMING_QUESTIONS);
            }
            page.evaluate(WATCH);
            BoundingBox box = page.locator(".handle[data-key='left.circle']").boundingBox();
            double x = box.x + box.width / 2;
            double y = box.y + box.height / 2;
            page.mouse().move(x, y);
            page.mouse().down();
            drag(page, x, y, patient ? 8 : WARM, 0.7, patient);
            Chromium.until(page, "!deferentDesk.session.live.busy");
            Chromium.frames(page, 20);
            page.evaluate(
                    "measured.length = 0; moves.length = 0; deferentDesk.session.live.givenUp = 0");
            drag(page, x, y, moves, 1.0, patient);
            Chromium.until(page, "!deferentDesk.session.live.busy");
            Chromium.frames(page, 20);
            List<?> seen = (List<?>) page.evaluate("moves");
            String renderer = (String) page.evaluate("deferentStage.drawer.name");
            List<Map<String, Object>> all = new ArrayList<>();
            for (Object one : (List<?>) page.evaluate("measured")) {
                @SuppressWarnings("unchecked")
                Map<String, Object> line = (Map<String, Object>) one;
                all.add(line);
            }
            page.mouse().up();
            List<Map<String, Object>> right =
                    all.stream()
                            .filter(line -> Boolean.TRUE.equals(line.get("right")))
                            .filter(line -> seen.contains(line.get("seen")))
                            .toList();
            return new Measured(
                    renderer,
                    seen.size(),
                    right.size(),
                    sorted(right, "scripted"),
                    sorted(right, "whole"),
                    Stream.of("handler", "server", "drawing", "pixels")
                            .map(span -> sorted(right, span))
                            .toList());
        }
    }

    private static double[] sorted(List<Map<String, Object>> lines, String key) {
        double[] out =
                lines.stream().mapToDouble(l -> ((Number) l.get(key)).doubleValue()).toArray();
        Arrays.sort(out);
        return out;
    }

    // Out and in along the radius, a new place each time.
    private static void drag(
            Page page, double x, double y, int moves, double reach, boolean patient) {
        int before = ((Number) page.evaluate("moves.length")).intValue();
        for (int i = 1; i <= moves; i++) {
            double out = 22 * reach * Math.sin(2 * Math.PI * i / 80.0);
            page.mouse().move(x + out, y - out);
            if (patient) {
                Chromium.until(
                        page,
                        "moves.length >= " + (before + i) + " && !deferentDesk.session.live.busy");
            } else {
                page.waitForTimeout(12);
            }
        }
    }

    /** In the page: asks as a drag asks, one after another, until the studio's code is compiled. */
    private static final String WARMING =
            """
            async (count) => {
              const { session } = window.deferentDesk;
              const pattern = session.pattern;
              for (let i = 0; i < count; i++) {
                const change = [{ set: 'left.hand_radius_m', to: 0.2 + (i % 200) / 1000 }];
                await new Promise((done) => session.live.ask(
                  { ask: 'pairing', pattern, change, detail: 'live', samples: 360 }, done));
              }
            }
            """;

    /**
     * In the page: notes each pointer move that reaches the stage's handles, and after each answer
     * has been drawn reads back the square where that answer puts the left hand.
     */
    private static final String WATCH =
            """
            () => {
              window.measured = [];
              window.moves = [];
              const stage = window.deferentStage;
              const starts = new Map();
              // A move may be told ahead of its frame, with the same time stamp.
              for (const told of ['pointerrawupdate', 'pointermove']) {
                stage.rack.addEventListener(told, (event) => {
                  if (!stage.grip) return;
                  if (told === 'pointermove') window.moves.push(event.timeStamp);
                  if (!starts.has(event.timeStamp)) starts.set(event.timeStamp, performance.now());
                }, { capture: true });
              }
              const near = (p, c) => Math.abs(p[0] - c[0]) + Math.abs(p[1] - c[1]) + Math.abs(p[2] - c[2]) < 90;
              const spot = [0, 0, 0];
              stage.drawn.push((answer, times) => {
                if (!starts.has(times.seen)) return;
                const size = answer.sizes.find((s) => s.key === 'left.hand_radius_m').value;
                const centre = answer.pattern.pairing.left.centre_m;
                stage.camera.project(centre[0] + size, centre[1], centre[2], spot);
                const pixels = stage.drawer.read(spot[0] - 9, spot[1] - 9, 18, 18);
                const read = performance.now();
                const ink = stage.ink.left.map((v) => v * 255);
                let count = 0;
                for (let i = 0; i < pixels.length; i += 4) if (near([pixels[i], pixels[i + 1], pixels[i + 2]], ink)) count++;
                window.measured.push({
                  seen: times.seen,
                  right: count >= 20,
                  scripted: times.drawn - starts.get(times.seen),
                  whole: read - times.seen,
                  handler: starts.get(times.seen) - times.seen,
                  server: times.answered - starts.get(times.seen),
                  drawing: times.drawn - times.answered,
                  pixels: read - times.drawn,
                });
              });
            }
            """;

    /** Prints what it measures; fails where a move was dropped. */
    public static void main(String[] arguments) throws Exception {
        if (arguments.length == 2 && arguments[0].equals("--serve")) {
            Studio studio = Studio.start(StudioOptions.of(Path.of(arguments[1])));
            System.out.println(Visit.address(studio, PATTERN));
            Thread.currentThread().join();
        }
        boolean gpu = Arrays.asList(arguments).contains("--gpu");
        Path browser =
                Chromium.found()
                        .orElseThrow(() -> new IllegalStateException("no Chromium is installed"));
        int at = Arrays.asList(arguments).indexOf("--at");
        if (at >= 0) {
            try (Chromium chromium = Chromium.start(browser, !gpu)) {
                report(measure(chromium.browser(), opened(arguments[at + 1]), MOVES, false));
            }
            return;
        }
        Path shelf = Files.createTempDirectory("deferent-drag");
        int use = Arrays.asList(arguments).indexOf("--use");
        if (use >= 0) {
            try (Chromium chromium = Chromium.start(browser, !gpu)) {
                double minutes = Double.parseDouble(arguments[use + 1]);
                System.out.print(
                        UseBench.told(UseBench.measure(chromium.browser(), shelf, minutes)));
            }
            return;
        }
        Process studio = ownProcess(shelf);
        try (Chromium chromium = Chromium.start(browser, !gpu)) {
            String address = studio.inputReader().readLine();
            report(measure(chromium.browser(), address, MOVES, false));
        } finally {
            studio.destroy();
            studio.waitFor();
            for (Path file : children(shelf)) {
                Files.deleteIfExists(file);
            }
        }
    }

    /** The way in that a file of the studio holds. */
    private static String opened(String file) throws java.io.IOException {
        Matcher found =
                Pattern.compile("href=\"([^\"]+)\"").matcher(Files.readString(Path.of(file)));
        if (!found.find()) {
            throw new IllegalArgumentException(file + " opens no studio");
        }
        return found.group(1) + PATTERN.replace('#', '&');
    }

    // The studio runs by itself, as it does for people, so that driving the browser costs it
    // nothing.
    private static Process ownProcess(Path shelf) throws java.io.IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        DragBench.class.getName(),
                        "--serve",
                        shelf.toString())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }

    private static void report(Measured measured) {
        System.out.print(measured.told());
        if (measured.dropped() > 0) {
            throw new IllegalStateException("moves were dropped");
        }
    }

    private static List<Path> children(Path folder) throws java.io.IOException {
        try (var all = Files.walk(folder)) {
            List<Path> list = new ArrayList<>(all.toList());
            Collections.reverse(list);
            return list;
        }
    }
}
