package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Trace;
import deferent.reading.photo.Led;
import deferent.reading.photo.PhotoReading;
import deferent.reading.worked.Worked;
import deferent.record.PatternDocument;
import deferent.record.PhotoJson;
import deferent.tell.TellPhoto;
import deferent.tell.Told;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

@Command(
        name = "photo",
        mixinStandardHelpOptions = true,
        description =
                "Tells how to photograph a pairing: shutter time, frame rate, what an eye sees, what"
                        + " a blinking light leaves.")
final class PhotoCommand implements Callable<Integer> {
    @Spec private CommandSpec spec;

    @Mixin private AskedPairing asked;

    @Option(
            names = "--led-hz",
            paramLabel = "HZ",
            description = "The lights blink so many times a second, such as 400.")
    private @Nullable Double hertz;

    @Option(
            names = "--duty",
            paramLabel = "SHARE",
            converter = Quantity.Share.class,
            description = "The share of each blink that they are lit, such as 50%%; unsaid, 50%%.")
    private @Nullable Double duty;

    @Option(
            names = "--shutter",
            paramLabel = "TIME",
            converter = Quantity.Exposure.class,
            description =
                    "Tell what this exposure draws: 1/2, 0.5s, 1.3s; unsaid, the one that draws one"
                            + " whole figure of both lights.")
    private @Nullable Double shutter;

    @Option(
            names = "--light-size",
            paramLabel = "LENGTH",
            converter = Quantity.Length.class,
            description = "Diameter of the light; unsaid, the head's.")
    private @Nullable Double light;

    @Option(
            names = "--preview",
            paramLabel = "FILE",
            description =
                    "Draw the light that exposure leaves, or one whole figure, to a name that ends in"
                            + " .png or .svg.")
    private @Nullable Path preview;

    @Mixin private AsOption as;

    @Option(names = "--why", description = "Say below each sentence where it comes from.")
    private boolean why;

    @Override
    public Integer call() {
        PatternDocument pattern = asked.pattern();
        PhotoReading photo =
                Worked.orRefusal(
                        "the numbers of the photograph",
                        () ->
                                PhotoReading.of(
                                        Trace.of(pattern.pairing()),
                                        light == null ? pattern.kit().headDiameter() : light,
                                        led(),
                                        shutter == null
                                                ? OptionalDouble.empty()
                                                : OptionalDouble.of(shutter)));
        try (AsOption sent = as) {
            if (preview != null) {
                Path file = sent.place(preview, "--preview");
                new PhotoPreview(file).draw(pattern, photo);
                sent.send(file);
            }
            PrintWriter out = spec.commandLine().getOut();
            if (Manners.of(spec).json()) {
                out.print(PhotoJson.write(photo));
            } else {
                say(pattern, photo, out);
            }
        }
        return Exit.FOUND.code();
    }

    private Optional<Led> led() {
        if (hertz == null) {
            if (duty != null) {
                throw new Refusal(
                        "says how much of each blink is lit, but nothing blinks",
                        "--duty",
                        "give --led-hz as well");
            }
            return Optional.empty();
        }
        return Optional.of(new Led(hertz, duty == null ? 0.5 : duty));
    }

    private void say(PatternDocument pattern, PhotoReading photo, PrintWriter out) {
        int width = Paragraphs.width();
        out.println(pattern.name());
        out.println();
        for (Told one : TellPhoto.of(photo)) {
            String mark = one.tone() == Told.Tone.WARN ? "! " : "  ";
            Paragraphs.wrapped(mark, one.text(), width).forEach(out::println);
            if (why) {
                Paragraphs.wrapped("      why: ", one.why(), width).forEach(out::println);
            }
        }
        List<String> cautions = TellPhoto.cautions(photo);
        if (!cautions.isEmpty()) {
            out.println();
            out.println("Take care");
            cautions.forEach(c -> Paragraphs.wrapped("  - ", c, width).forEach(out::println));
        }
    }
}
