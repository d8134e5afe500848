package deferent.reel;

import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Rate;
import deferent.page.Chapters;
import deferent.page.Frames;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.StillForm;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What a clip shows and as what.
 *
 * @param scene what is seen
 * @param still how a single frame looks: view, size, ground, what is switched on; its moment is
 *     passed over
 * @param kind of file
 * @param rate frames a second
 * @param cycles how many common cycles; 1 for what is not periodic
 * @param slow seconds spun in a second of the clip: 1 as spun, 0.5 half as fast
 * @param title said by players; empty for none
 * @param captions whether the counts go along as captions, where the kind can hold them
 * @param outline width of an outline round all that is drawn, for laying it over footage,
 *     thousandths of the shorter edge, 0 to 20; 0 for none
 * @param chapters what is seen one after the other in the place of the scene, which then gives
 *     framing and length alone
 * @param song that it is made to; what comes round again and again is made to none
 */
public record Clip(
        Scene scene,
        Still still,
        Kind kind,
        Rate rate,
        int cycles,
        double slow,
        String title,
        boolean captions,
        double outline,
        Optional<Chapters> chapters,
        Optional<Accompaniment> song) {
    /** The longer edge of 4K, and as many pixels as it has, pixels. */
    private static final int LONGEST = 3840;

    private static final int MOST = 3840 * 2160;
    private static final int MOST_CYCLES = 10_000;
    private static final int MOST_FRAMES = 120;

    /** Containers count time in units no finer than about this many a second. */
    private static final int MOST_TERM = 1_000_000;

    /** The same where time is counted in hundredths of a second. */
    private static final int MOST_HUNDREDTHS = 50;

    public Clip {
        size("width of a clip", still.width(), kind);
        size("height of a clip", still.height(), kind);
        if (still.width() * still.height() > MOST) {
            throw new Refusal(
                    "is " + still.width() + " by " + still.height() + " pixels",
                    "size of a clip",
                    "give at most 3840 by 2160 or as many pixels in another shape, such as 2880 by"
                            + " 2880");
        }
        if (!(still.form() instanceof StillForm.Moment)) {
            throw new Refusal("stands still", "form of a clip", "leave it a moment, which moves");
        }
        if (still.transparent() && !kind.has(Kind.Trait.ALPHA)) {
            throw new Refusal(
                    kind.words() + " has no half-transparent ground",
                    "transparent clip",
                    "choose "
                            + Arrays.stream(Kind.values())
                                    .filter(other -> other.has(Kind.Trait.ALPHA))
                                    .map(Kind::ending)
                                    .collect(Collectors.joining(", "))
                            + ", or a ground");
        }
        if (rate.perSecond() < 1
                || rate.perSecond() > MOST_FRAMES
                || Math.max(rate.num(), rate.den()) > MOST_TERM) {
            throw new Refusal(
                    "is " + rate.said() + " frames a second",
                    "frame rate",
                    "give "
                            + String.join(", ", kind.rates())
                            + ", or another from 1 to "
                            + MOST_FRAMES);
        }
        if (kind.has(Kind.Trait.HUNDREDTHS) && rate.num() > MOST_HUNDREDTHS * rate.den()) {
            throw new Refusal(
                    "is " + rate.said() + " for a " + kind.words(),
                    "frame rate",
                    "give at most " + MOST_HUNDREDTHS + ": browsers slow a faster one down");
        }
        if (cycles < 1 || cycles > MOST_CYCLES) {
            throw new Refusal(
                    "is " + cycles,
                    "cycles of a clip",
                    "give from 1 to " + MOST_CYCLES + " cycles");
        }
        if (cycles > 1 && !scene.trace().periodic()) {
            throw new Refusal(
                    "is " + cycles + " for what does not come round again",
                    "cycles of a clip",
                    "give 1");
        }
        Refusal.within(slow, 0.02, 4, "slow motion", "times as fast as spun");
        Refusal.within(outline, 0, 20, "outline of a clip", "thousandths of its shorter edge");
        if (outline > 0 && !still.transparent()) {
            throw new Refusal(
                    "is " + outline + " on a ground of its own",
                    "outline of a clip",
                    "leave it out, or wish for a transparent ground");
        }
        if (song.isPresent() && (slow != 1 || scene.trace().periodic())) {
            throw new Refusal(
                    slow != 1 ? "is " + slow + " beside a song" : "comes round again and again",
                    slow != 1 ? "slow motion" : "a clip to a song",
                    "leave one of the two out");
        }
        title = title.strip();
    }

    public Clip(Scene scene, Still still, Kind kind, Rate rate, int cycles, double slow) {
        this(
                scene,
                still,
                kind,
                rate,
                cycles,
                slow,
                "",
                false,
                0,
                Optional.empty(),
                Optional.empty());
    }

    /** One cycle as spun, at 60 frames a second, or 50 where that is the most. */
    public static Clip of(Scene scene, Still still, Kind kind) {
        return new Clip(scene, still, kind, Rate.of(kind.usualRate()), 1, 1);
    }

    private static void size(String where, int pixels, Kind kind) {
        if (pixels > LONGEST) {
            throw new Refusal(
                    "is " + pixels + " pixels", where, "give at most " + LONGEST + " pixels");
        }
        if (kind.has(Kind.Trait.EVEN_SIZES) && pixels % 2 != 0) {
            throw new Refusal(
                    "is " + pixels + " pixels, and " + kind.words() + " wants an even number",
                    where,
                    "give " + (pixels - 1) + " or " + (pixels + 1));
        }
    }

    public Clip at(Rate other) {
        return new Clip(
                scene, still, kind, other, cycles, slow, title, captions, outline, chapters, song);
    }

    public Clip cycles(int count) {
        return new Clip(
                scene, still, kind, rate, count, slow, title, captions, outline, chapters, song);
    }

    public Clip slow(double times) {
        return new Clip(
                scene, still, kind, rate, cycles, times, title, captions, outline, chapters, song);
    }

    public Clip titled(String name) {
        return new Clip(
                scene, still, kind, rate, cycles, slow, name, captions, outline, chapters, song);
    }

    public Clip counted(boolean counts) {
        return new Clip(
                scene, still, kind, rate, cycles, slow, title, counts, outline, chapters, song);
    }

    /** With an outline that stands on any footage. */
    public Clip outlined(double thousandths) {
        return new Clip(
                scene,
                still,
                kind,
                rate,
                cycles,
                slow,
                title,
                captions,
                thousandths,
                chapters,
                song);
    }

    /** With scenes one after the other in the place of the one. */
    public Clip in(Chapters seen) {
        return new Clip(
                scene,
                still,
                kind,
                rate,
                cycles,
                slow,
                title,
                captions,
                outline,
                Optional.of(seen),
                song);
    }

    /** To a song, as fast as that is. */
    public Clip to(Accompaniment heard) {
        return new Clip(
                scene,
                still,
                kind,
                rate,
                cycles,
                slow,
                title,
                captions,
                outline,
                chapters,
                Optional.of(heard));
    }

    Frames painter() {
        return chapters.map(c -> Frames.of(scene, c, still))
                .orElseGet(() -> Frames.of(scene, still))
                .outlined(outline);
    }

    /** As many whole cycles as come nearest to a time in seconds; one at least. */
    public Clip filling(double seconds) {
        return scene.trace().periodic()
                ? cycles(Loop.filling(seconds, scene.period(), slow))
                : this;
    }

    Loop loop() {
        if (song.isPresent()) {
            return Loop.along(song.get().pace(), scene.period(), rate);
        }
        return scene.trace().periodic()
                ? Loop.of(scene.period(), slow, cycles, rate)
                : Loop.once(scene.period(), slow, rate);
    }

    /** Frames the clip will have. */
    public int frames() {
        return loop().frames();
    }

    /** How long the clip will be, seconds. */
    public double seconds() {
        return loop().seconds();
    }
}
