package deferent.app;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.record.AnswerPages;
import deferent.record.Kept;
import deferent.record.PatternDocument;
import deferent.record.SeekJson;
import deferent.record.Shelf;
import deferent.record.SvgPath;
import deferent.search.seek.Answer;
import deferent.search.seek.Answers;
import deferent.search.seek.Drawer;
import deferent.search.seek.Like;
import deferent.search.seek.Order;
import deferent.search.seek.Seek;
import deferent.search.seek.SeekProgress;
import deferent.search.seek.SeekRequest;
import deferent.search.seek.Space;
import deferent.search.seek.Tethers;
import deferent.tell.TellSeek;
import deferent.tell.Told;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.node.ObjectNode;

@Command(
        name = "seek",
        mixinStandardHelpOptions = true,
        description = {
            "Finds pairings that link among all motions of a space, or more like a given one.",
            "  deferent seek --order contrast",
            "  deferent seek static spin vs triquetra",
            "  deferent seek --svg \"M0 0 L2 0 L1 2 Z\"",
            "Ctrl-C stops it and tells what was found so far."
        })
final class SeekCommand implements Callable<Integer> {
    private static final int DRAWERS = 5;
    private static final int MORE_LIKE = 4;
    private static final int TOLD = 20;
    private static final int PAGE = 100;

    @Spec private CommandSpec spec;

    @Parameters(
            arity = "0..*",
            paramLabel = "PHRASE|FILE|NAME",
            description = "Tell what is most like this pairing; unsaid, everything that links.")
    private List<String> words = List.of();

    @Option(
            names = "--svg",
            paramLabel = "PATH",
            description =
                    "Tell which motions draw this figure, given as SVG path data, and which pairings"
                            + " have it as their carrier's figure.")
    private @Nullable String svg;

    @Option(
            names = "--radius",
            paramLabel = "LENGTH",
            converter = Quantity.Length.class,
            defaultValue = "60cm",
            description = "With --svg: from the figure's middle to its farthest point; 60cm.")
    private double radius = 0.6;

    @Option(
            names = "--motions",
            paramLabel = "N",
            description =
                    "About how many one-hand motions to seek among, 10000 to 4000000; unsaid, some"
                            + " two hundred thousand.")
    private @Nullable Integer motions;

    @Option(
            names = "--tether",
            paramLabel = "LENGTH",
            converter = Quantity.Length.class,
            description = "Tether of both hands, or of the carrier where tethers are free; 60cm.")
    private @Nullable Double tether;

    @Option(
            names = "--tethers",
            paramLabel = "WHICH",
            defaultValue = "EQUAL",
            description =
                    "equal: both poi of one length. free: the rider's is as long as the link asks.")
    private Tethers tethers = Tethers.EQUAL;

    @Option(
            names = "--tolerance",
            paramLabel = "LENGTH",
            converter = Quantity.Length.class,
            description =
                    "How far apart, at best and in time, head and hand of a link may be; unsaid, 1cm.")
    private @Nullable Double tolerance;

    @Option(
            names = "--order",
            paramLabel = "WORD",
            converter = Orders.class,
            description =
                    "What to tell first: try (what a person would, a thing told once whatever its"
                            + " sizes), closest, reach, slowest, steadiness, symmetry, contrast,"
                            + " near-shelf or new; unsaid, try.")
    private @Nullable Order order;

    @Mixin private FilterOption filter;

    @Option(
            names = "--limit",
            paramLabel = "N",
            description = "How many answers to tell; unsaid, 20, or a whole page with --from.")
    private @Nullable Integer limited;

    @Option(
            names = "--per-family",
            paramLabel = "N",
            defaultValue = "2",
            description = "How many of them may differ in sizes alone; unsaid, 2.")
    private int perFamily = 2;

    @Mixin private PerformerOption performer;

    @Mixin private ShelfOption shelf;

    @Option(
            names = "--save",
            arity = "2",
            paramLabel = "N NAME",
            hideParamSyntax = true,
            description = "Save answer N on the shelf under this name. May be repeated.")
    private List<String> saves = List.of();

    @Option(
            names = "--from",
            paramLabel = "FOLDER",
            description =
                    "Tell the answers that deferent-far keeps in this folder, without seeking; what is"
                            + " said of motions, tethers and tolerance is as it was there.")
    private @Nullable Path from;

    @Option(
            names = "--page",
            paramLabel = "N",
            description = "With --from: which page of a hundred families; unsaid, the first.")
    private @Nullable Integer page;

    @Mixin private ProgressOption progress;

    @Option(names = "--why", description = "Say below each sentence where it comes from.")
    private boolean why;

    /** What is told, numbered as it is saved. */
    private record Found(List<Answer> list, List<Drawer> drawers, ObjectNode json, Runnable say) {}

    @Override
    public Integer call() {
        if (from != null) {
            return leaf(AnswerPages.of(from), page == null ? 1 : page);
        }
        if (page != null) {
            throw new Refusal(
                    "is given without a folder of answers",
                    "--page",
                    "give --from FOLDER beside it");
        }
        Optional<PatternDocument> given = given();
        SeekRequest request = request(given);
        Map<Integer, String> names = names();
        PrintWriter out = spec.commandLine().getOut();
        Progress line = progress.line();
        try (Stopping stop = new Stopping()) {
            Seek seek = new Seek(request);
            boolean[] begun = {false};
            boolean done =
                    seek.run(
                            at -> {
                                begun[0] |=
                                        at.stage() == SeekProgress.Stage.JOIN
                                                || at.stage() == SeekProgress.Stage.DONE;
                                line.show(TellSeek.share(at), TellSeek.progress(at));
                            },
                            stop);
            if (begun[0]) {
                Found found = found(request, given, seek.answers(), done, line, stop);
                line.clear();
                tell(found);
                save(found.list, names, request);
                out.flush();
                return found.list.isEmpty() && found.drawers.isEmpty()
                        ? Exit.NOT_FOUND.code()
                        : Exit.FOUND.code();
            }
            line.clear();
            if (Manners.of(spec).json()) {
                out.print(SeekJson.text(SeekJson.stopped(request)));
            } else {
                new TextOut(out, why).told("", TellSeek.stopped());
            }
            out.flush();
            return Exit.FAILED.code();
        }
    }

    private int limit() {
        return limited != null ? limited : from != null ? PAGE : TOLD;
    }

    /** One page of a seek that ran elsewhere. */
    private int leaf(AnswerPages pages, int number) {
        if (!words.isEmpty() || svg != null || order != null || motions != null) {
            throw new Refusal(
                    "is given beside what is sought or how it is ordered",
                    "--from",
                    "give the folder, a page and what to keep");
        }
        SeekRequest request =
                pages.request()
                        .with(filter.filter())
                        .with(performer.of(pages.request().performer()))
                        .withLimit(limit(), perFamily);
        request = asksTheShelf() ? request.withShelf(patterns()) : request;
        SeekRequest asked = request;
        List<Answer> list =
                pages.page(number).stream()
                        .flatMap(found -> found.answer(asked).stream())
                        .limit(limit())
                        .toList();
        Map<Integer, String> names = names();
        tell(
                new Found(
                        list,
                        List.of(),
                        SeekJson.page(asked, pages, number, list),
                        () -> {
                            new TextOut(spec.commandLine().getOut(), why)
                                    .told("", TellSeek.afar(asked, pages.links(), pages.exact()));
                            heading(TellSeek.page(number, pages.pages(), pages.families()));
                            each(
                                    list,
                                    list.stream().map(TellSeek::of).toList(),
                                    TellSeek.noneOnPage());
                        }));
        save(list, names, asked);
        spec.commandLine().getOut().flush();
        return list.isEmpty() ? Exit.NOT_FOUND.code() : Exit.FOUND.code();
    }

    private Optional<PatternDocument> given() {
        String text = String.join(" ", words);
        if (text.isBlank()) {
            return Optional.empty();
        }
        if (svg != null) {
            throw new Refusal(
                    "is given beside a figure", "\"" + text + "\"", "give one or the other");
        }
        return Optional.of(
                new Named(
                                text,
                                shelf,
                                tether == null ? Optional.empty() : Optional.of(Tether.of(tether)))
                        .pattern());
    }

    private SeekRequest request(Optional<PatternDocument> given) {
        if (order != null && (given.isPresent() || svg != null)) {
            throw new Refusal(
                    "is given beside what to look like", "--order", "likeness orders the answers");
        }
        SeekRequest request =
                SeekRequest.of(Space.of(Space.Grid.USUAL))
                        .with(tethers)
                        .with(filter.filter())
                        .withLimit(limit(), perFamily);
        if (motions != null) {
            Refusal.within(motions, 10_000, 4_000_000, "motions", "motions");
            request = spaced(request, Space.about(motions));
        }
        if (tether != null) {
            request = request.with(Tether.of(tether));
        } else if (given.isPresent()) {
            request = request.with(given.get().pairing().left().tether());
        }
        request = tolerance == null ? request : request.withTolerance(tolerance);
        if (given.isEmpty() && svg == null) {
            request = request.with(order == null ? Order.TRY : order);
        }
        request =
                request.with(
                        performer.of(
                                given.map(PatternDocument::performer).orElse(request.performer())));
        if (asksTheShelf()) {
            return request.withShelf(patterns());
        }
        return request.order() == Order.TRY ? request.withShelf(shelved()) : request;
    }

    private static SeekRequest spaced(SeekRequest request, Space space) {
        return new SeekRequest(
                space,
                request.tether(),
                request.tethers(),
                request.tolerance(),
                request.filter(),
                request.order(),
                request.performer(),
                request.shelf(),
                request.limit(),
                request.perFamily());
    }

    private boolean asksTheShelf() {
        return order == Order.NEAR_SHELF || order == Order.NEW || filter.asksTheShelf();
    }

    private List<Pairing> patterns() {
        List<Pairing> patterns = shelved();
        if (patterns.isEmpty()) {
            throw new Refusal(
                    "has no patterns to compare with",
                    "shelf " + shelf.path(),
                    "put some there, or order by something else");
        }
        return patterns;
    }

    private List<Pairing> shelved() {
        return shelf.shelf().look().patterns().stream().map(PatternDocument::pairing).toList();
    }

    private Found found(
            SeekRequest request,
            Optional<PatternDocument> given,
            Answers answers,
            boolean done,
            Progress line,
            Stopping stop) {
        if (given.isPresent()) {
            // Neighbours on the grid differ in sizes alone, so more are asked for than are told.
            Map<String, Integer> families = new HashMap<>();
            List<Like> likes =
                    answers.like(given.get().pairing(), MORE_LIKE * limit()).stream()
                            .filter(like -> filter.keeps(like.answer()))
                            .filter(
                                    like ->
                                            families.merge(
                                                            like.answer().family().name(),
                                                            1,
                                                            Integer::sum)
                                                    <= perFamily)
                            .limit(limit())
                            .toList();
            List<Answer> list = likes.stream().map(Like::answer).toList();
            return new Found(
                    list,
                    List.of(),
                    SeekJson.like(request, given.get(), answers, likes, done),
                    () -> {
                        head(request, answers, done);
                        heading("Most like " + given.get().name());
                        each(
                                list,
                                likes.stream().map(TellSeek::of).toList(),
                                TellSeek.none(answers));
                    });
        }
        if (svg != null) {
            return drawn(request, answers, done, line, stop);
        }
        List<Answer> list = answers.list();
        return new Found(
                list,
                List.of(),
                SeekJson.tree(request, answers, list, done),
                () -> {
                    head(request, answers, done);
                    String first = TellSeek.order(request.order());
                    heading(Character.toUpperCase(first.charAt(0)) + first.substring(1));
                    each(list, list.stream().map(TellSeek::of).toList(), TellSeek.none(answers));
                });
    }

    private Found drawn(
            SeekRequest request, Answers answers, boolean done, Progress line, Stopping stop) {
        List<Drawer> drawers =
                answers.drawing(
                        SvgPath.parse(String.valueOf(svg), radius),
                        DRAWERS,
                        at -> line.show((double) at.done() / at.all(), "comparing figures"),
                        stop);
        List<Answer> linked = new ArrayList<>();
        Map<String, Integer> families = new HashMap<>();
        for (Drawer drawer : drawers) {
            if (linked.size() >= limit()) {
                break;
            }
            answers.tiedTo(drawer).stream()
                    .filter(filter::keeps)
                    .filter(a -> families.merge(a.family().name(), 1, Integer::sum) <= perFamily)
                    .limit(limit() - linked.size())
                    .forEach(linked::add);
        }
        return new Found(
                linked,
                drawers,
                SeekJson.drawn(request, answers, drawers, linked, done),
                () -> {
                    head(request, answers, done);
                    heading("What draws the figure");
                    TextOut say = new TextOut(spec.commandLine().getOut(), why);
                    for (Drawer drawer : drawers) {
                        say.line("  - ", drawer.said());
                        say.told("    ", TellSeek.of(drawer));
                    }
                    heading("What links with it as carrier");
                    each(linked, linked.stream().map(TellSeek::of).toList(), TellSeek.noLink());
                });
    }

    private void tell(Found found) {
        if (Manners.of(spec).json()) {
            spec.commandLine().getOut().print(SeekJson.text(found.json));
        } else {
            found.say.run();
        }
    }

    private void head(SeekRequest request, Answers answers, boolean done) {
        new TextOut(spec.commandLine().getOut(), why).told("", TellSeek.of(request, answers, done));
    }

    private void heading(String title) {
        PrintWriter out = spec.commandLine().getOut();
        out.println();
        out.println(title);
    }

    private void each(List<Answer> list, List<Told> told, Told none) {
        TextOut say = new TextOut(spec.commandLine().getOut(), why);
        if (list.isEmpty()) {
            say.told("  ", none);
        }
        for (int i = 0; i < list.size(); i++) {
            String number = String.format("%4d. ", i + 1);
            Answer answer = list.get(i);
            if (answer.against().isPresent() && !answer.said().equals(answer.idea().words())) {
                say.line(number, answer.idea().words());
                say.line("      ", answer.said());
            } else {
                say.line(number, answer.said());
            }
            say.told("      ", told.get(i));
        }
    }

    /** Which answers to save under which names, as said before the work begins. */
    private Map<Integer, String> names() {
        Map<Integer, String> names = new HashMap<>();
        for (int i = 0; i + 1 < saves.size(); i += 2) {
            String number = saves.get(i);
            if (!number.matches("[1-9][0-9]{0,5}") || Integer.parseInt(number) > limit()) {
                throw new Refusal(
                        "is no answer's number",
                        "--save " + number,
                        "give 1 to " + limit() + ", then a name");
            }
            names.put(Integer.parseInt(number), saves.get(i + 1));
        }
        return names;
    }

    private void save(List<Answer> list, Map<Integer, String> names, SeekRequest request) {
        Shelf kept = shelf.shelf();
        Manners manner = Manners.of(spec);
        names.forEach(
                (number, name) -> {
                    if (number > list.size()) {
                        throw new NotFound(
                                "answer "
                                        + number
                                        + " is not saved, since there are only "
                                        + list.size(),
                                "--save",
                                "ask for more answers or a smaller number");
                    }
                    Kept saved =
                            kept.saveNew(
                                    SeekJson.pattern(
                                            list.get(number - 1), name, request.performer()));
                    manner.beside(
                            "On the shelf: " + saved.id() + "  (" + kept.file(saved.id()) + ")");
                });
    }
}
