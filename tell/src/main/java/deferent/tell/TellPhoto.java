package deferent.tell;

import deferent.reading.photo.Blinks;
import deferent.reading.photo.FigureTime;
import deferent.reading.photo.HeadLight;
import deferent.reading.photo.Led;
import deferent.reading.photo.Persistence;
import deferent.reading.photo.PhotoReading;
import deferent.reading.photo.Shutter;
import deferent.reading.photo.Spread;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Says how to photograph a pairing, and what an onlooker sees of it. */
public final class TellPhoto {
    /** Frame rates that cameras offer (common practice, no source). */
    private static final List<Integer> FILM = List.of(24, 25, 30, 50, 60, 100, 120, 240, 480, 960);

    private static final double SAME = 1e-6;

    private final PhotoReading photo;
    private final List<Told> all = new ArrayList<>();

    private TellPhoto(PhotoReading photo) {
        this.photo = photo;
    }

    public static List<Told> of(PhotoReading photo) {
        TellPhoto tell = new TellPhoto(photo);
        tell.told();
        return List.copyOf(tell.all);
    }

    /** What to beware of: none where nothing turns or blinks fast enough to trouble anybody. */
    public static List<String> cautions(PhotoReading photo) {
        List<String> all = new ArrayList<>();
        fastLights(photo, 1).ifPresent(all::add);
        photo.led()
                .filter(led -> led.duty() < 1)
                .filter(led -> led.hertz() > PhotoReading.FLASHES)
                .filter(led -> led.hertz() <= PhotoReading.FLICKER)
                .ifPresent(
                        led ->
                                all.add(
                                        "A light that blinks "
                                                + hertz(led)
                                                + " flashes more than three times a second (the"
                                                + " threshold of WCAG 2.3.1) and slowly enough to be"
                                                + " seen to flicker: it can trouble people with"
                                                + " photosensitive epilepsy. Use a faster or a steady"
                                                + " light."));
        return List.copyOf(all);
    }

    /**
     * What to say beside lights that move, if they move fast.
     *
     * @param speed at which they are shown: 1 as spun, 0.5 half as fast
     */
    public static Optional<String> fastLights(PhotoReading photo, double speed) {
        double turns = photo.turns() * speed;
        return turns > PhotoReading.FLASHES
                ? Optional.of(
                        "At this speed a light passes the same place "
                                + Say.trimmed(turns, 1)
                                + " times a second. Moving lights like that can trouble people with"
                                + " photosensitive epilepsy: more than three flashes a second are"
                                + " the threshold of WCAG 2.3.1. Warn before you show them.")
                : Optional.empty();
    }

    private void told() {
        if (photo.lights().isEmpty()) {
            all.add(
                    new Told(
                            "photo.still",
                            Tone.NOTE,
                            "Both heads stay in place: there is no figure to photograph.",
                            "Any shutter time shows two points of light."));
            return;
        }
        if (photo.shutter().isPresent()) {
            photo.lights().forEach(this::asked);
        } else {
            advised();
        }
        frames();
        photo.lights().forEach(this::seen);
        photo.lights().forEach(this::blinks);
        alike();
    }

    /** What is told alike of both lights is told once. */
    private void alike() {
        for (String key : List.of("photo.asked", "photo.seen", "photo.led")) {
            List<Told> both = all.stream().filter(t -> t.key().startsWith(key + ".")).toList();
            if (both.size() != 2) {
                continue;
            }
            Told left = both.get(0);
            String text = left.text().replaceFirst("the left (light|figure)", "either $1");
            if (text.equals(
                    both.get(1).text().replaceFirst("the right (light|figure)", "either $1"))) {
                String why =
                        left.why().equals(both.get(1).why())
                                ? left.why()
                                : "Left: " + left.why() + " Right: " + both.get(1).why();
                all.set(all.indexOf(left), new Told(key, left.tone(), text, why));
                all.remove(both.get(1));
            }
        }
    }

    private static boolean same(FigureTime a, FigureTime b) {
        return Math.abs(a.time() - b.time()) < SAME * b.time();
    }

    private void advised() {
        FigureTime common = photo.common();
        boolean both = photo.lights().size() == 2;
        all.add(
                new Told(
                        "photo.shutter",
                        Tone.NOTE,
                        "Open the shutter for "
                                + time(photo.open())
                                + " for exactly one whole figure"
                                + (both ? " of both lights." : ".")
                                + (common.closes().isEmpty()
                                        ? " No camera marks so long a time: hold the shutter open."
                                        : ""),
                        "At "
                                + Say.tempo(photo.tempo())
                                + " that is the shortest time after which "
                                + (both ? "both lights are" : "the light is")
                                + " back on the same way. "
                                + marked(common)
                                + " Held open by hand or remote, any whole number of figures"
                                + " closes."));
        for (HeadLight light : photo.lights()) {
            if (!same(light.figure(), common)) {
                own(light);
            }
        }
    }

    private void own(HeadLight light) {
        FigureTime figure = light.figure();
        all.add(
                new Told(
                        "photo.shutter." + light.side().word(),
                        Tone.NOTE,
                        drawn(light),
                        "Alone it closes its figure in "
                                + time(figure.time())
                                + ", "
                                + Say.length(light.length())
                                + " each time. "
                                + marked(figure)));
    }

    /** What the speeds that cameras mark make of a figure. */
    private static String marked(FigureTime figure) {
        Shutter full = figure.full();
        Shutter third = figure.third();
        String nearest =
                "Of the speeds that cameras mark, "
                        + drawn(figure, third)
                        + (full.equals(third) ? "" : " and " + drawn(figure, full));
        return nearest
                + figure.closes()
                        .map(closes -> "; the shortest that closes it is " + closes.mark() + ".")
                        .orElse("; none is long enough to close it.")
                + " Marks are rounded names for thirds of a stop: 1/15 stands for 1/16 s (full"
                + " stops: ISO 516, from memory; thirds: common practice, no source).";
    }

    private static String drawn(FigureTime figure, Shutter shutter) {
        double share = figure.figures(shutter.seconds());
        return shutter.mark() + " draws " + Say.percent(share) + " of it";
    }

    private void asked(HeadLight light) {
        FigureTime figure = light.figure();
        double figures = figure.figures(photo.open());
        all.add(
                new Told(
                        "photo.asked." + light.side().word(),
                        figures < 1 && !whole(figures) ? Tone.WARN : Tone.NOTE,
                        drawn(light),
                        "Exposure over the time of one figure, "
                                + time(figure.time())
                                + "; "
                                + Say.length(light.length() * Math.min(1, figures))
                                + " of "
                                + Say.length(light.length())
                                + " is lit. "
                                + marked(figure)));
    }

    /** What a light draws while the shutter is open. */
    private String drawn(HeadLight light) {
        return "In "
                + time(photo.open())
                + " the "
                + light.side().word()
                + " light draws "
                + rounds(light.figure().figures(photo.open()))
                + ".";
    }

    private static boolean whole(double figures) {
        return Math.rint(figures) >= 1 && Math.abs(figures - Math.rint(figures)) < 0.005;
    }

    private static String rounds(double figures) {
        if (whole(figures)) {
            int count = (int) Math.round(figures);
            return count == 1 ? "its figure exactly once" : "its figure " + Say.times(count);
        }
        return figures < 1
                ? "only " + Say.percent(figures) + " of its figure"
                : "its figure "
                        + Say.times((int) figures)
                        + " and "
                        + Say.percent(figures - Math.floor(figures))
                        + " of it once more, which comes out brighter";
    }

    private void frames() {
        double frames = photo.frames();
        Optional<Integer> film = FILM.stream().filter(f -> f > frames).findFirst();
        HeadLight fastest =
                photo.lights().stream()
                        .max((a, b) -> Double.compare(a.frames(), b.frames()))
                        .orElseThrow();
        all.add(
                new Told(
                        "photo.frames",
                        Tone.NOTE,
                        "Film it faster than "
                                + Say.trimmed(Math.ceil(frames), 0)
                                + " frames a second and a light leaves no gap from frame to frame"
                                + film.map(f -> ": " + f + " does.").orElse("; few cameras do."),
                        "The "
                                + fastest.side().word()
                                + " light, "
                                + Say.size(photo.diameter())
                                + " across, goes up to "
                                + Say.trimmed(fastest.speed(), 2)
                                + " m/s, so at that rate it moves its own width between two frames; on"
                                + " average "
                                + Say.trimmed(fastest.framesMean(), 0)
                                + " a second would do. Frames whose shutter is open for part of the time"
                                + " only still show the light at as many places."));
    }

    private void seen(HeadLight light) {
        Persistence seen = light.seen();
        double figure = light.figure().time();
        String side = "the " + light.side().word() + " figure";
        String text =
                switch (seen.whole()) {
                    case ALWAYS -> "An eye sees " + side + " whole at once, however bright it is.";
                    case PERHAPS ->
                            "Some eyes see "
                                    + side
                                    + " whole at once, others "
                                    + Say.percent(seen.least())
                                    + " of it or more: that depends on brightness, surroundings and eye.";
                    case NEVER ->
                            "An eye sees between "
                                    + Say.percent(seen.least())
                                    + " and "
                                    + Say.percent(seen.most())
                                    + " of "
                                    + side
                                    + " at once, never all of it: the light is seen to move.";
                };
        all.add(
                new Told(
                        "photo.seen." + light.side().word(),
                        Tone.NOTE,
                        text,
                        "It takes "
                                + time(figure)
                                + ", and a light stays visible for about a tenth of a second, roughly 60"
                                + " to 200 thousandths with brightness and spacing (Coltheart 1980, from"
                                + " memory; Farrell 1984, from memory; Gauch and Kerzel 2009: at least 60"
                                + " to 80). Whole at once it would need "
                                + Say.tempo(photo.tempo() * figure / Persistence.LONGEST)
                                + " where it stays longest, "
                                + Say.tempo(photo.tempo() * figure / Persistence.SHORTEST)
                                + " where shortest."));
    }

    private void blinks(HeadLight light) {
        light.blinks().ifPresent(blinks -> all.add(blinks(light, blinks)));
    }

    private Told blinks(HeadLight light, Blinks blinks) {
        Led led = blinks.led();
        boolean dots = blinks.dash().greatest() < photo.diameter();
        String marks = dots ? "dots" : "dashes";
        boolean line = led.duty() >= 1 || blinks.unbroken() > 0.995;
        String text =
                "Blinking "
                        + hertz(led)
                        + ", lit for "
                        + Say.percent(led.duty())
                        + " of the time, the "
                        + light.side().word()
                        + " light leaves "
                        + count(left(light, blinks))
                        + " "
                        + marks
                        + " in "
                        + time(photo.open())
                        + ", "
                        + apart(blinks.pitch())
                        + (line
                                ? ", which run together into an unbroken line"
                                : blinks.unbroken() > 0.005
                                        ? ", which run together on "
                                                + Say.percent(blinks.unbroken())
                                                + " of the way"
                                        : "")
                        + ".";
        return new Told(
                "photo.led." + light.side().word(),
                Tone.NOTE,
                text,
                count(blinks.figure())
                        + " blinks a figure, from one to the next "
                        + spread(blinks.pitch())
                        + "; lit "
                        + spread(blinks.dash())
                        + ", dark "
                        + spread(blinks.dark())
                        + ". A gap shows where the dark stretch is longer than the light is wide, "
                        + Say.size(photo.diameter())
                        + " (of a bare light, give its own size). "
                        + (blinks.stands()
                                ? "Round after round they fall in the same places."
                                : "The next round they fall elsewhere, so a longer exposure fills the gaps."));
    }

    // Rounds that fall in the same places leave no more than one of them does.
    private double left(HeadLight light, Blinks blinks) {
        double figures = light.figure().figures(photo.open());
        return blinks.figure() * (blinks.stands() ? Math.min(1, figures) : figures);
    }

    private static String count(double blinks) {
        double whole = Math.rint(blinks);
        return Math.abs(blinks - whole) < 0.005
                ? Say.trimmed(whole, 0)
                : "about " + Say.trimmed(blinks, blinks < 10 ? 1 : 0);
    }

    private static boolean even(Spread spread) {
        return spread.greatest() - spread.least() < 0.01 * spread.mean();
    }

    private static String apart(Spread pitch) {
        return (even(pitch)
                        ? length(pitch.mean())
                        : length(pitch.least()) + " to " + length(pitch.greatest()))
                + " apart";
    }

    private static String spread(Spread spread) {
        return even(spread)
                ? length(spread.mean()) + " everywhere"
                : length(spread.least())
                        + " to "
                        + length(spread.greatest())
                        + ", "
                        + length(spread.mean())
                        + " on average";
    }

    /** Down to a tenth of a millimetre. */
    private static String length(double metres) {
        return metres < 0.00995 ? Say.trimmed(1000 * metres, 1) + " mm" : Say.length(metres);
    }

    private static String hertz(Led led) {
        return Say.trimmed(led.hertz(), led.hertz() < 10 ? 1 : 0) + " times a second";
    }

    private static String time(double seconds) {
        // Two figures at least, as short as shutters get.
        int places = seconds < 0.1 ? 1 - (int) Math.floor(Math.log10(seconds)) : 2;
        return Say.trimmed(seconds, places) + " s";
    }
}
