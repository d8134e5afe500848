package deferent.take;

import deferent.page.Layer;
import deferent.page.Png;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.record.PatternDocument;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/** A model that moves. */
record ModelEnding(String key, String mediaType, String words, Build build) implements Streamed {
    private static final Family FAMILY = new Family("space", "Model", "for 3-D programs");

    /** Makes the model's file. */
    interface Build {
        byte[] of(Scene scene, String name, double headDiameter);
    }

    @Override
    public Family family() {
        return FAMILY;
    }

    @Override
    public List<Offer> offers() {
        return Offer.all(List.of(Wish.CORD, Wish.LEFT_HANDED));
    }

    @Override
    public Writing writing(Take take) {
        Subject subject = take.subject();
        PatternDocument document = subject.document();
        return Writing.whole(
                "model of one cycle",
                build.of(
                        subject.scene(Layer.usual()),
                        document.name(),
                        document.kit().headDiameter()));
    }

    @Override
    public Optional<Preview> preview(Take take, boolean calm, BooleanSupplier stop) {
        Subject subject = take.subject();
        Still still = Still.square(Preview.EDGE).without(Layer.BODY);
        return Optional.of(
                Preview.of(
                        Png.of(subject.scene(Layer.usual()), still),
                        "image/png",
                        String.format(
                                Locale.ROOT,
                                "model that moves for %.2f s",
                                subject.trace().period())));
    }
}
