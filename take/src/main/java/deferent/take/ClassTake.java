package deferent.take;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.page.web.TaughtSong;
import deferent.record.PatternDocument;
import deferent.record.Shelf;
import deferent.record.landing.Landing;
import deferent.reel.Natives;
import deferent.search.path.PathSearch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * A lesson for a class, as files in one folder: the student's sheet, the teacher's, of a set its
 * sheet, the hall file, and of each pattern a clip for each step. Every file is one that {@link
 * Endings} writes.
 *
 * @param hall the patterns and the set that are taught
 * @param leftHanded whether all of it is mirrored, for those who spin the other hand first
 * @param view by whom pictures are seen, as {@link Wish#VIEW} says it
 */
public record ClassTake(HallTake hall, boolean leftHanded, String view) {
    /** How clips of a lesson look: small files, which any phone plays; their counts are drawn. */
    private static final Map<String, String> CLIP =
            Map.of(
                    "size", "720",
                    "fps", "30",
                    "with", "body,labels,counts",
                    "caption", "yes",
                    "captions", "no");

    private static final String LONG = "8";

    /** A file of the lesson. */
    private record Part(String name, Work work) {}

    private interface Work {
        Optional<Taken> write(Path target, Consumer<TakeProgress> listener, BooleanSupplier stop);
    }

    /**
     * Writes file after file, each whole or not at all.
     *
     * @param folder made where it is not there
     * @return the files that were written; empty where it was stopped, with what was ready kept
     */
    public Optional<Taken> write(
            Path folder, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw new Refusal("is a file", "--out " + folder, "name a folder");
        }
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw Landing.cannot(folder, e);
        }
        List<Part> parts = parts();
        List<Path> files = new ArrayList<>();
        Optional<String> caution = Optional.empty();
        for (Part part : parts) {
            double before = (double) files.size() / parts.size();
            Optional<Taken> taken =
                    part.work()
                            .write(
                                    folder.resolve(part.name()),
                                    at ->
                                            listener.accept(
                                                    new TakeProgress(
                                                            before + at.share() / parts.size(),
                                                            part.name() + ": " + at.told())),
                                    stop);
            if (taken.isEmpty()) {
                return Optional.empty();
            }
            files.addAll(taken.get().files());
            caution = caution.or(taken.get()::caution);
        }
        Optional<String> fast = caution;
        return Optional.of(
                new Taken(
                        files,
                        "lesson of " + files.size() + " files",
                        Natives.available()
                                .map(why -> "There are no clips: " + why + ".")
                                .or(() -> fast)));
    }

    /** The files in the order in which they are written. */
    List<String> names() {
        return parts().stream().map(Part::name).toList();
    }

    private List<Part> parts() {
        List<Part> parts = new ArrayList<>();
        for (String reader : List.of("student", "teacher")) {
            parts.add(new Part(reader + ".pdf", sheet(reader)::write));
        }
        HallTake held = leftHanded ? hall.leftHanded() : hall;
        for (HallTake.Wanted set : held.sets()) {
            String which = held.sets().size() == 1 ? "" : "-" + Shelf.slug(set.set().name());
            parts.add(
                    new Part(
                            "set" + which + ".pdf",
                            (target, listener, stop) -> order(set, target, listener, stop)));
        }
        parts.add(new Part("practice.html", held::write));
        if (Natives.available().isEmpty()) {
            List<PatternDocument> patterns = hall.patterns();
            for (int i = 0; i < patterns.size(); i++) {
                String before =
                        patterns.size() == 1
                                ? ""
                                : String.format("%02d-", i + 1)
                                        + Shelf.slug(patterns.get(i).name())
                                        + "-";
                clips(before, patterns.get(i), parts);
            }
        }
        return parts;
    }

    private Take sheet(String reader) {
        Wishes wishes =
                Wishes.of(
                        Endings.of("pdf"),
                        Map.of(
                                "form",
                                reader,
                                "view",
                                view,
                                "left-handed",
                                leftHanded ? "yes" : "no"));
        return Take.of(hall.title(), hall.patterns(), wishes, hall.lexicon());
    }

    /** What comes in order, for how many counts, and what leads from one to the next. */
    private Optional<Taken> order(
            HallTake.Wanted set,
            Path target,
            Consumer<TakeProgress> listener,
            BooleanSupplier stop) {
        Wishes wishes = Wishes.of(Endings.of("pdf"), Map.of("view", view));
        return HallTake.reading(set, told -> listener.accept(new TakeProgress(0, told)), stop)
                .flatMap(
                        taught ->
                                new SetTake(
                                                taught.reading(),
                                                taught.song().map(TaughtSong::sung),
                                                taught.book(),
                                                wishes,
                                                hall.lexicon())
                                        .write(target, listener, stop));
    }

    /** How it begins, slowly; each hand alone where it can go alone; both. */
    private void clips(String before, PatternDocument given, List<Part> parts) {
        PatternDocument pattern =
                leftHanded
                        ? called(given.mirrored(hall.lexicon()), given.name() + ", left-handed")
                        : given;
        parts.add(
                new Part(
                        before + "1-begins.mp4",
                        clip(pattern, Map.of("slow", "1/4", "cycles", "1"))));
        int step = 2;
        for (Side side : Side.values()) {
            Optional<Pairing> alone =
                    PathSearch.alone(pattern.pairing(), side, pattern.performer());
            if (alone.isPresent()) {
                String name = pattern.name() + ", " + side.word() + " hand alone";
                parts.add(
                        new Part(
                                before + step + "-" + side.word() + "-hand-alone.mp4",
                                clip(
                                        called(
                                                pattern.withPairing(alone.get())
                                                        .withPhrase(Optional.empty()),
                                                name),
                                        Map.of("seconds", LONG, "without", "link"))));
                step++;
            }
        }
        parts.add(new Part(before + step + "-both.mp4", clip(pattern, Map.of("seconds", LONG))));
    }

    /** Under another name, where that is not too long for one. */
    private static PatternDocument called(PatternDocument pattern, String name) {
        try {
            return pattern.withName(name);
        } catch (Refusal tooLong) {
            return pattern;
        }
    }

    private Work clip(PatternDocument pattern, Map<String, String> how) {
        Map<String, String> wishes = new LinkedHashMap<>(CLIP);
        wishes.putAll(how);
        wishes.put("view", view);
        return Take.of(pattern, List.of(), Wishes.of(Endings.of("mp4"), wishes), hall.lexicon())
                ::write;
    }
}
