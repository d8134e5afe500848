package deferent.reel;

import deferent.page.Frames;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;

/** What a clip is written as. */
public enum Kind {
    /** H.264 by OpenH264: plays everywhere, knows no transparency. */
    MP4(
            "mp4",
            "video/mp4",
            "H.264",
            "H.264 clip that plays everywhere",
            1080,
            film(Recipe::mp4),
            Trait.FILM,
            Trait.EVEN_SIZES,
            Trait.CAPTIONS,
            Trait.CAPTIONS_BESIDE),
    /** VP9 by libvpx; on a transparent ground with a second picture for the alpha. */
    WEBM(
            "webm",
            "video/webm",
            "VP9",
            "VP9 clip, with alpha if transparent",
            1080,
            film(Recipe::webm),
            Trait.FILM,
            Trait.EVEN_SIZES,
            Trait.ALPHA,
            Trait.CAPTIONS),
    /** ProRes 4444, for an editing timeline; alpha where the ground is transparent. */
    MOV(
            "mov",
            "video/quicktime",
            "ProRes 4444",
            "ProRes 4444 clip for an editing timeline",
            1080,
            film(Recipe::mov),
            Trait.FILM,
            Trait.ALPHA,
            Trait.CAPTIONS,
            Trait.CAPTIONS_BESIDE),
    /** Animated WebP by libwebp. */
    WEBP(
            "webp",
            "image/webp",
            "animated WebP",
            "animated picture, with alpha if transparent",
            540,
            film(Recipe::webp),
            Trait.ALPHA),
    /** GIF, 256 colours chosen from the whole clip. */
    GIF(
            "gif",
            "image/gif",
            "GIF",
            "animated picture of few colours",
            540,
            film(Recipe::gif),
            Trait.HUNDREDTHS),
    /** Numbered PNG files in one zip file; needs no natives. */
    PNGS(
            "zip",
            "application/zip",
            "PNG files",
            "numbered PNG files of a clip",
            1080,
            (clip, loop, cues, frames, target, channel) ->
                    new PngSpool(clip, loop, cues, target, channel),
            Trait.ALPHA,
            Trait.CAPTIONS,
            Trait.EVERYWHERE);

    /** What sets kinds apart. */
    public enum Trait {
        /** A film, with luma and chroma and a title. */
        FILM,
        /** Two by two pixels share one colour, so that both sizes must be even. */
        EVEN_SIZES,
        /** The ground may be transparent. */
        ALPHA,
        /** The counts can go along as captions. */
        CAPTIONS,
        /** Players look for captions in a file of their own. */
        CAPTIONS_BESIDE,
        /** Counts time in hundredths of a second, and browsers slow down a frame of one. */
        HUNDREDTHS,
        /** Written on every machine, where {@link Natives} do not load too. */
        EVERYWHERE
    }

    /** Begins a clip's file. */
    interface Opening {
        /**
         * What takes the clip's frames.
         *
         * @param frames for looking the clip over beforehand, where its kind asks for that
         */
        Spool<?> open(
                Clip clip,
                Loop loop,
                List<Cue> cues,
                Frames frames,
                Path target,
                FileChannel channel)
                throws IOException;
    }

    private final String ending;
    private final String mediaType;
    private final String words;
    private final String about;
    private final int edge;
    private final Opening opening;
    private final Set<Trait> traits;

    Kind(
            String ending,
            String mediaType,
            String words,
            String about,
            int edge,
            Opening opening,
            Trait... traits) {
        this.ending = ending;
        this.mediaType = mediaType;
        this.words = words;
        this.about = about;
        this.edge = edge;
        this.opening = opening;
        this.traits = Set.of(traits);
    }

    private static Opening film(Recipe.Writer recipe) {
        return (clip, loop, cues, frames, target, channel) ->
                Film.open(clip, recipe.of(clip, loop, cues.size()), loop, cues, frames, channel);
    }

    /** Without the dot: "mp4". */
    public String ending() {
        return ending;
    }

    public String mediaType() {
        return mediaType;
    }

    /** For people: "H.264". */
    public String words() {
        return words;
    }

    /** For people who choose: "H.264 clip that plays everywhere". */
    public String about() {
        return about;
    }

    /** The usual edge of a square clip, pixels: less for what goes into messages and pages. */
    public int edge() {
        return edge;
    }

    /** Frames a second that suit it, the usual last. */
    public List<String> rates() {
        return has(Trait.HUNDREDTHS)
                ? List.of("10", "12.5", "20", "25", "50")
                : List.of("23.976", "24", "25", "29.97", "30", "50", "59.94", "60");
    }

    public String usualRate() {
        return rates().get(rates().size() - 1);
    }

    public boolean has(Trait trait) {
        return traits.contains(trait);
    }

    Opening opening() {
        return opening;
    }
}
