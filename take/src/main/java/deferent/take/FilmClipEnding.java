package deferent.take;

import deferent.reel.Kind;
import deferent.reel.Reprint;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/** A film made from the film, each frame at its own time. */
record FilmClipEnding() implements FilmEnding {
    @Override
    public String key() {
        return Kind.MP4.ending();
    }

    @Override
    public String mediaType() {
        return Kind.MP4.mediaType();
    }

    @Override
    public String words() {
        return "the film with what was meant over it or beside it, or as a long exposure that grows";
    }

    @Override
    public Family family() {
        return Endings.of(key()).family();
    }

    @Override
    public List<Offer> offers() {
        return Offer.all(
                List.of(Wish.SLOW),
                Wish.FORM.usual().choosing(FilmForm.choices()).unsaid(FilmForm.OVER.key()),
                Wish.OUTLINE.usual().only(List.of(FilmForm.OVER.key())));
    }

    @Override
    public List<Offer> offers(String form) {
        return FilmForm.offers(offers(), form);
    }

    @Override
    public boolean filmed() {
        return true;
    }

    @Override
    public OptionalDouble speed(Wishes wishes) {
        return wishes.number(Wish.SLOW);
    }

    @Override
    public Optional<Taken> write(
            Take take, Path target, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        FilmForm form = FilmForm.wished(take);
        double slow = take.wishes().number(Wish.SLOW).orElseThrow();
        Reprint print =
                new Reprint(take.filmed().file(), slow, take.title(), form::size, form.page(take));
        return print.write(
                        target,
                        share ->
                                listener.accept(
                                        new TakeProgress(
                                                share, (int) (100 * share) + " % of the film")),
                        stop)
                .map(report -> new Taken(List.of(target), told(report), Optional.empty()));
    }

    private static String told(Reprint.Report report) {
        return String.format(
                        Locale.ROOT,
                        "%d frames, %.2f s, %d by %d pixels, %s",
                        report.frames(),
                        report.seconds(),
                        report.width(),
                        report.height(),
                        Taken.size(report.bytes()))
                + switch (report.sound()) {
                    case NONE -> "";
                    case KEPT -> "; with its sound";
                    case LEFT_OUT -> "; without its sound, which does not go slow";
                    case STRANGE -> "; without its sound, which an MP4 cannot hold";
                };
    }

    @Override
    public Optional<Preview> preview(Take take, boolean calm, BooleanSupplier stop)
            throws IOException {
        return FilmPictureEnding.preview(take, FilmForm.wished(take), stop).map(Preview::moving);
    }
}
