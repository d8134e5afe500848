package deferent.take;

import deferent.page.Still;
import deferent.reel.Clip;
import deferent.reel.Clips;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/** What a set and a transition share when they are played once through as a clip. */
final class PlayedClip {
    private PlayedClip() {}

    /** The look that is wished for. */
    static Still still(Wishes wishes) {
        int[] size = wishes.size();
        return Still.of(size[0], size[1])
                .with(wishes.view())
                .with(wishes.theme())
                .with(wishes.layers());
    }

    /**
     * Writes it whole or not at all; empty where it was stopped.
     *
     * @param caution what is said of it beside, if anything
     */
    static Optional<Taken> write(
            Clip clip,
            Path target,
            Optional<String> caution,
            Consumer<TakeProgress> listener,
            BooleanSupplier stop) {
        return Clips.write(
                        clip,
                        target,
                        p ->
                                listener.accept(
                                        new TakeProgress(
                                                (double) p.done() / p.all(),
                                                "frame " + p.done() + " of " + p.all())),
                        stop)
                .map(report -> new Taken(report.files(), report.said(), caution));
    }
}
