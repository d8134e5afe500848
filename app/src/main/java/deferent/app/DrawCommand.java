package deferent.app;

import deferent.motion.body.Outline;
import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Trace;
import deferent.page.Caption;
import deferent.page.Palette;
import deferent.page.Png;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.Svg;
import deferent.page.View;
import deferent.record.PatternDocument;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

@Command(
        name = "draw",
        mixinStandardHelpOptions = true,
        description = "Draws a still of a pairing, as SVG or PNG.")
final class DrawCommand implements Callable<Integer> {
    @Spec private CommandSpec spec;

    @Mixin private Asked asked;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "FILE",
            description = "Where to: a name that ends in .svg or .png.")
    private Path file = Path.of("");

    @Option(
            names = "--view",
            paramLabel = "VIEW",
            defaultValue = "AUDIENCE",
            description = "From where: audience, performer or mirror; unsaid, audience.")
    private View.Stand stand = View.Stand.AUDIENCE;

    @Option(
            names = "--at",
            paramLabel = "SHARE",
            defaultValue = "0",
            description = "The moment, as a share of the cycle: 0, 1/4, 0.5.")
    private String moment = "0";

    @Option(
            names = "--edge",
            paramLabel = "PIXELS",
            defaultValue = "1200",
            description = "Width and height; unsaid, ${DEFAULT-VALUE}.")
    private int edge = 1200;

    @Option(names = "--dark", description = "On a dark ground.")
    private boolean dark;

    @Option(names = "--body", description = "With the performer's outline behind.")
    private boolean body;

    @Override
    public Integer call() {
        String name = file.toString().toLowerCase(Locale.ROOT);
        boolean png = name.endsWith(".png");
        if (!png && !name.endsWith(".svg")) {
            throw new Refusal("is no picture's name", "--out " + file, "end it in .svg or .png");
        }
        PatternDocument pattern = asked.pattern();
        Trace trace = Trace.of(pattern.pairing());
        Scene scene =
                Scene.of(
                        trace,
                        Scene.USUAL_COUNT,
                        Scene.nearer(trace),
                        body ? Outline.of(pattern.performer()).drawn() : List.of());
        Still still =
                Still.square(edge)
                        .with(new View(stand, 0, 0))
                        .at(Amount.share(moment) * trace.period())
                        .with(dark ? Palette.Theme.DARK : Palette.Theme.LIGHT)
                        .with(Caption.of(pattern.name(), pattern.pairing()));
        byte[] picture =
                png ? Png.of(scene, still) : Svg.of(scene, still).getBytes(StandardCharsets.UTF_8);
        try {
            Files.write(file, picture);
        } catch (IOException cannot) {
            throw new NotMade(
                    file + " cannot be written (" + cannot.getClass().getSimpleName() + ")",
                    "name a file in a folder that is there and yours to write");
        }
        spec.commandLine().getOut().println("Drawn: " + file);
        return 0;
    }
}
