package deferent.take;

import deferent.film.held.Finding;
import deferent.film.words.OverlaySvg;
import deferent.reel.Reprint;
import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.jspecify.annotations.Nullable;

/**
 * A picture of a film, or of what it shows: those forms that are drawn of any trace take the
 * measured one.
 *
 * @param plain the same file of a pattern
 * @param own forms that show the film
 */
record FilmPictureEnding(Ending plain, List<FilmForm> own) implements FilmEnding, Streamed {
    private static final List<String> DRAWN = List.of("figure", "moment", "poses", "strip");

    /** What is measured is not corded anew, and its exposure is the film's. */
    private static final Set<Wish> MEANINGLESS =
            EnumSet.of(
                    Wish.FORM,
                    Wish.AT,
                    Wish.CORD,
                    Wish.SHUTTER,
                    Wish.LED,
                    Wish.MOVING,
                    Wish.PAPER,
                    Wish.LEFT_HANDED,
                    Wish.TRANSITIONS);

    FilmPictureEnding {
        own = List.copyOf(own);
    }

    @Override
    public String key() {
        return plain.key();
    }

    @Override
    public String mediaType() {
        return plain.mediaType();
    }

    @Override
    public String words() {
        return own.isEmpty()
                ? "what was measured, drawn to print"
                : "picture of the film with all laid over it, or of what was measured";
    }

    @Override
    public Family family() {
        return plain.family();
    }

    @Override
    public List<Offer> offers() {
        List<Offer.Choice> forms =
                Stream.concat(
                                own.stream().map(FilmForm::choice),
                                Wish.FORM.usual().choices().stream()
                                        .filter(c -> DRAWN.contains(c.value())))
                        .toList();
        boolean film = own.contains(FilmForm.EXPOSURE);
        List<String> timed =
                Stream.concat(
                                film ? own.stream().map(FilmForm::key) : Stream.of(),
                                Wish.AT.usual().forms().stream().filter(DRAWN::contains))
                        .toList();
        return Offer.all(
                List.of(),
                Stream.<Stream<Offer>>of(
                                Stream.of(
                                        new Offer(
                                                Wish.FORM,
                                                forms,
                                                forms.get(0).value(),
                                                List.of(),
                                                List.of()),
                                        Wish.AT.usual().only(timed)),
                                film
                                        ? Stream.of(
                                                Wish.OUTLINE
                                                        .usual()
                                                        .only(List.of(FilmForm.OVER.key())))
                                        : Stream.of(),
                                plain.offers().stream()
                                        .filter(o -> !MEANINGLESS.contains(o.wish()))
                                        .map(o -> o.only(DRAWN)))
                        .flatMap(some -> some)
                        .toArray(Offer[]::new));
    }

    @Override
    public List<Offer> offers(String form) {
        return FilmForm.offers(offers(), form);
    }

    @Override
    public Writing writing(Take take) {
        Optional<FilmForm> form =
                own.stream().filter(f -> f.key().equals(take.wishes().word(Wish.FORM))).findFirst();
        if (form.isEmpty()) {
            return ((Streamed) plain).writing(take);
        }
        if (!own.contains(FilmForm.EXPOSURE)) {
            String svg = OverlaySvg.of(take.filmed().reading());
            return Writing.whole("picture", svg.getBytes(StandardCharsets.UTF_8));
        }
        OptionalDouble moment = FilmEnding.moment(take);
        return (out, listener, stop) -> {
            Optional<BufferedImage> picture = picture(take, form.get(), moment, listener, stop);
            if (picture.isEmpty()) {
                return Optional.empty();
            }
            out.write(png(picture.get()));
            return Optional.of(
                    picture.get().getWidth() + " by " + picture.get().getHeight() + " pixels");
        };
    }

    private static byte[] png(BufferedImage picture) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        // In memory: a cache on disk would outlive a process that is killed.
        try (MemoryCacheImageOutputStream into = new MemoryCacheImageOutputStream(bytes)) {
            ImageIO.write(picture, "png", into);
        }
        return bytes.toByteArray();
    }

    /** At a moment, or where none is said at that of what is off most; an exposure until then. */
    private static Optional<BufferedImage> picture(
            Take take,
            FilmForm form,
            OptionalDouble moment,
            Consumer<TakeProgress> listener,
            BooleanSupplier stop)
            throws IOException {
        boolean all = form == FilmForm.EXPOSURE;
        double until = moment.orElse(all ? Double.POSITIVE_INFINITY : worst(take));
        Page page = new Page(form, take, until);
        boolean through =
                Reprint.look(
                        take.filmed().file(),
                        page,
                        share ->
                                listener.accept(
                                        new TakeProgress(
                                                share, (int) (100 * share) + " % of the film")),
                        stop);
        return through ? Optional.ofNullable(page.print) : Optional.empty();
    }

    /** When what is off most is seen best; halfway where nothing is. */
    private static double worst(Take take) {
        return take.filmed().reading().held().findings().stream()
                .findFirst()
                .map(Finding::moment)
                .orElse(take.filmed().reading().measured().seconds() / 2);
    }

    private static final class Page implements Reprint.Seen {
        private static final double NEAR = 1e-3; // seconds, for a moment said to three digits

        private final FilmForm form;
        private final Reprint.Page painter;
        private final double until;
        private @Nullable BufferedImage print;

        Page(FilmForm form, Take take, double until) {
            this.form = form;
            this.painter = form.page(take);
            this.until = until;
        }

        @Override
        public boolean of(BufferedImage frame, double time) {
            BufferedImage to = print;
            if (to == null) {
                Dimension size = form.size(new Dimension(frame.getWidth(), frame.getHeight()));
                to = new BufferedImage(size.width, size.height, BufferedImage.TYPE_INT_RGB);
                print = to;
            }
            boolean last = time >= until - NEAR;
            if (form == FilmForm.EXPOSURE || last) {
                painter.paint(frame, time, to);
            }
            return !last;
        }
    }

    /** One frame, small. */
    static Optional<Preview> preview(Take take, FilmForm form, BooleanSupplier stop)
            throws IOException {
        Optional<BufferedImage> picture =
                picture(take, form, OptionalDouble.empty(), p -> {}, stop);
        if (picture.isEmpty()) {
            return Optional.empty();
        }
        BufferedImage large = picture.get();
        double by =
                Math.min(1, (double) Preview.EDGE / Math.max(large.getWidth(), large.getHeight()));
        BufferedImage small =
                new BufferedImage(
                        Math.max(1, (int) (by * large.getWidth())),
                        Math.max(1, (int) (by * large.getHeight())),
                        BufferedImage.TYPE_INT_RGB);
        Graphics2D g = small.createGraphics();
        g.setRenderingHint(
                RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        g.drawImage(large, 0, 0, small.getWidth(), small.getHeight(), null);
        g.dispose();
        String told =
                String.format(Locale.ROOT, "%d by %d pixels", large.getWidth(), large.getHeight());
        return Optional.of(Preview.of(png(small), "image/png", told));
    }

    @Override
    public Optional<Preview> preview(Take take, boolean calm, BooleanSupplier stop)
            throws IOException {
        Optional<FilmForm> form =
                own.stream().filter(f -> f.key().equals(take.wishes().word(Wish.FORM))).findFirst();
        if (form.isPresent() && own.contains(FilmForm.EXPOSURE)) {
            return preview(take, form.get(), stop);
        }
        return form.isEmpty()
                ? plain.preview(take, calm, stop)
                : writing(take).bytes(stop).map(svg -> Preview.of(svg, mediaType(), "picture"));
    }
}
