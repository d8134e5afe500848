package deferent.record.number;

import deferent.reading.photo.Blinks;
import deferent.reading.photo.FigureTime;
import deferent.reading.photo.HeadLight;
import deferent.reading.photo.Led;
import deferent.reading.photo.Persistence;
import deferent.reading.photo.PhotoReading;
import deferent.reading.photo.Shutter;
import deferent.reading.photo.Spread;
import deferent.tell.TellPhoto;
import java.util.OptionalDouble;

/** How to photograph a pairing: a table a part, and {@link #PHOTO} for the whole. */
public final class PhotoTables {
    private PhotoTables() {}

    private record Exposure(Shutter shutter, FigureTime figure) {
        double figures() {
            return figure.figures(shutter.seconds());
        }
    }

    private record OneLight(HeadLight light, OptionalDouble shutter) {
        OptionalDouble figures() {
            return shutter.stream().map(light.figure()::figures).findFirst();
        }
    }

    private static final Table<Exposure> EXPOSURE =
            Table.<Exposure>named("exposure")
                    .text("mark", "as a camera shows it", one -> one.shutter().mark())
                    .number("marked_s", "what the mark says", one -> one.shutter().marked())
                    .number("time_s", "what it stands for", one -> one.shutter().seconds())
                    .number("figures", "figures it draws", Exposure::figures);

    private static final Table<FigureTime> FIGURE_TIME =
            Table.<FigureTime>named("figure_time")
                    .number("time_s", "one figure", FigureTime::time)
                    .part("nearest_full_stop", EXPOSURE, f -> new Exposure(f.full(), f))
                    .part("nearest_third_stop", EXPOSURE, f -> new Exposure(f.third(), f))
                    .maybe(
                            "shortest_that_closes",
                            EXPOSURE,
                            f -> f.closes().map(s -> new Exposure(s, f)));

    private static final Table<Spread> SPREAD =
            Table.<Spread>named("spread")
                    .number("least_m", "least", Spread::least)
                    .number("mean_m", "mean", Spread::mean)
                    .number("greatest_m", "greatest", Spread::greatest);

    private static final Table<Blinks> BLINKS =
            Table.<Blinks>named("blinks")
                    .number("a_figure", "blinks a figure", Blinks::figure)
                    .yes("stands", "they fall as in the last round", Blinks::stands)
                    .part("pitch", SPREAD, Blinks::pitch)
                    .part("dash", SPREAD, Blinks::dash)
                    .part("dark", SPREAD, Blinks::dark)
                    .number("unbroken_share", "unbroken", Blinks::unbroken);

    private static final Table<Persistence> SEEN =
            Table.<Persistence>named("seen_at_once")
                    .word("whole", "seen whole", Persistence.Whole.class, Persistence::whole)
                    .number("least_share", "least", Persistence::least)
                    .number("usual_share", "usual", Persistence::usual)
                    .number("greatest_share", "greatest", Persistence::most);

    private static final Table<OneLight> LIGHT =
            Table.<OneLight>named("light")
                    .part("figure", FIGURE_TIME, one -> one.light().figure())
                    .number("length_m", "figure's length", one -> one.light().length())
                    .number("speed_m_per_s", "greatest speed", one -> one.light().speed())
                    .number("frames_per_s", "frames without gaps", one -> one.light().frames())
                    .number("frames_mean_per_s", "on average", one -> one.light().framesMean())
                    .number("turns_per_s", "turns of the tether", one -> one.light().turns())
                    .maybe("figures_in_shutter", "figures in the exposure", OneLight::figures)
                    .part("seen_at_once", SEEN, one -> one.light().seen())
                    .maybe("blinks", BLINKS, one -> one.light().blinks());

    private static final Table<PhotoReading> PERSISTENCE =
            Table.<PhotoReading>named("persistence")
                    .number("shortest_s", "shortest", photo -> Persistence.SHORTEST)
                    .number("about_s", "about", photo -> Persistence.ABOUT)
                    .number("longest_s", "longest", photo -> Persistence.LONGEST);

    private static final Table<Led> LED =
            Table.<Led>named("led")
                    .number("rate_hz", "blinks", Led::hertz)
                    .number("duty", "lit share of each", Led::duty);

    public static final Table<PhotoReading> PHOTO =
            Table.<PhotoReading>named("photo")
                    .number("tempo_cycles_per_min", "tempo", PhotoReading::tempo)
                    .number("light_diameter_m", "diameter of the light", PhotoReading::diameter)
                    .part("common", FIGURE_TIME, PhotoReading::common)
                    .number("frames_per_s", "frames without gaps", PhotoReading::frames)
                    .maybe("shutter_s", "exposure asked about", PhotoReading::shutter)
                    .part("persistence", PERSISTENCE, photo -> photo)
                    .maybe("led", LED, PhotoReading::led)
                    .sides(
                            "lights",
                            LIGHT.written().maybe(),
                            (photo, side) ->
                                    photo.light(side)
                                            .map(light -> new OneLight(light, photo.shutter())))
                    .list("told", "in sentences", ReadingTables.TOLD.written(), TellPhoto::of)
                    .list("cautions", "what to mind", Written.text(), TellPhoto::cautions);
}
