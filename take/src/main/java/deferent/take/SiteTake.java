package deferent.take;

import deferent.page.web.Site;
import deferent.page.web.TaughtShelf;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * A shelf, a folder or a set as a site to publish: a folder of pages. Taken up again into the same
 * folder, only what has changed is written.
 *
 * @param hall what is shown
 */
public record SiteTake(HallTake hall) {
    /** The share of all the work that goes into words, roughly. */
    private static final double WORDS = 0.9;

    /**
     * Writes it; empty where it was stopped, which is before anything is written.
     *
     * @param folder where, empty or a site that was written so; made where there is none
     */
    public Optional<Taken> write(
            Path folder, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        SiteFolder site = SiteFolder.at(folder);
        return hall.taught(
                        at -> listener.accept(new TakeProgress(WORDS * at.share(), at.told())),
                        stop)
                .flatMap(taught -> files(taught, listener, stop))
                .map(files -> taken(folder, site.put(files), files));
    }

    private static Optional<SortedMap<String, byte[]>> files(
            TaughtShelf taught, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        int all = taught.patterns().size() + taught.sets().size();
        return Site.of(
                taught,
                done ->
                        listener.accept(
                                new TakeProgress(
                                        WORDS + (1 - WORDS) * done / all,
                                        "page " + done + " of " + all)),
                stop);
    }

    private Taken taken(Path folder, SiteFolder.Put put, SortedMap<String, byte[]> files) {
        long size = files.values().stream().mapToLong(file -> file.length).sum();
        return new Taken(
                List.of(folder.resolve(Site.INDEX)),
                "site of " + Taken.size(size) + ": " + put.told(),
                Optional.empty());
    }
}
