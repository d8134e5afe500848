package deferent.take;

import static deferent.take.Wish.*;

import deferent.motion.pairing.Refusal;
import deferent.page.Layer;
import deferent.page.Scene;
import deferent.page.Still;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;

/**
 * A picture.
 *
 * @param scales whether its preview is the picture itself, which any size suits
 * @param still draws one that stands still
 * @param moving draws one that moves by itself, where that can be
 */
record PictureEnding(
        String key,
        String mediaType,
        String words,
        boolean scales,
        Draw still,
        Optional<Draw> moving)
        implements Streamed {
    private static final Family FAMILY =
            new Family("picture", "Picture", "for posts, slides and drawing programs");

    /** What may be wished of a picture that stands still, whatever file it is in. */
    static final List<Offer> USUAL =
            Offer.all(
                    List.of(
                            FORM,
                            CORD,
                            VIEW,
                            TURN,
                            LIFT,
                            AT,
                            DARK,
                            TRANSPARENT,
                            CAPTION,
                            WITH,
                            WITHOUT,
                            SHUTTER,
                            LED,
                            LEFT_HANDED),
                    Offer.size(1200));

    /** Draws a picture into a file. */
    interface Draw {
        void draw(Scene scene, Still still, OutputStream out) throws IOException;
    }

    @Override
    public Family family() {
        return FAMILY;
    }

    @Override
    public List<Offer> offers() {
        return moving.isEmpty()
                ? USUAL
                : Stream.concat(USUAL.stream(), Stream.of(MOVING.usual()))
                        .sorted(Comparator.comparing(Offer::wish))
                        .toList();
    }

    @Override
    public OptionalDouble speed(Wishes wishes) {
        return wishes.yes(MOVING) ? OptionalDouble.of(1) : OptionalDouble.empty();
    }

    @Override
    public Writing writing(Take take) {
        Subject subject = take.subject();
        Still shown = subject.still(take.wishes());
        Scene scene = subject.scene(shown.layers());
        boolean moves = take.wishes().yes(MOVING);
        if (moves && (shown.shows(Layer.LABELS) || shown.shows(Layer.COUNTS))) {
            throw new Refusal(
                    "are not drawn in an SVG that moves",
                    "labels and counts",
                    "leave them out, or end the file in .html or .webp");
        }
        Draw drawn = moves ? moving.orElseThrow() : still;
        String told = (moves ? "moving picture, " : "") + told(shown);
        return (out, listener, stop) -> {
            drawn.draw(scene, shown, out);
            return Optional.of(told);
        };
    }

    private static String told(Still shown) {
        return shown.width() + " by " + shown.height() + " pixels";
    }

    static byte[] bytes(Draw draw, Scene scene, Still shown) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            draw.draw(scene, shown, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    @Override
    public Optional<Preview> preview(Take take, boolean calm, BooleanSupplier stop)
            throws IOException {
        Subject subject = take.subject();
        Still shown = subject.still(take.wishes());
        Scene scene = subject.scene(shown.layers());
        if (!scales) {
            byte[] small = bytes(still, scene, Preview.small(shown, Preview.EDGE));
            return Optional.of(Preview.of(small, mediaType, told(shown)));
        }
        byte[] whole = writing(take).bytes(() -> false).orElseThrow();
        boolean moves = take.wishes().yes(MOVING);
        Preview preview =
                Preview.of(
                        moves && calm ? bytes(still, scene, shown) : whole,
                        mediaType,
                        told(shown) + ", " + Taken.size(whole.length));
        return Optional.of(moves ? preview.moving() : preview);
    }
}
