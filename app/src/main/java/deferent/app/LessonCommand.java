package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.take.ClassTake;
import deferent.take.HallTake;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

@Command(
        name = "lesson",
        mixinStandardHelpOptions = true,
        description = {
            "Makes a lesson for a class of a pattern or of a set, in one folder: the student's sheet and"
                    + " the teacher's (.pdf), the hall file (.html), and clips (.mp4): how it begins, each hand"
                    + " alone, both.",
            "  deferent lesson static spin vs triquetra --out lesson",
            "  deferent lesson \"Two rings\" --out lesson --left-handed"
        })
final class LessonCommand implements Callable<Integer> {
    private static final Map<String, String> VIEWS =
            Map.of("mirror", "mirror", "audience", "audience", "own", "performer");

    @Spec private CommandSpec spec;

    @Mixin private AskedPairing asked;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "FOLDER",
            description = "The folder that the files are written into; made where it is not there.")
    private Path folder = Path.of("");

    @Option(
            names = "--left-handed",
            description = "The left-handed version: each hand does what the other did, mirrored.")
    private boolean leftHanded;

    @Option(
            names = "--view",
            paramLabel = "VIEW",
            description =
                    "From where sheets and clips show it: mirror, audience or own (the spinner's own"
                            + " eyes); unsaid, ${DEFAULT-VALUE}, so that left is left.")
    private String view = "mirror";

    @Mixin private ProgressOption progress;

    @Override
    public Integer call() {
        String seen = VIEWS.get(view);
        if (seen == null) {
            throw new Refusal("is \"" + view + "\"", "--view", "say mirror, audience or own");
        }
        ClassTake lesson = new ClassTake(hall(), leftHanded, seen);
        if (folder.toString().equals(Incoming.STANDARD)) {
            throw new Refusal(
                    "is standard output, which holds one file and a lesson is many",
                    "--out -",
                    "give a folder, or draw one of its files");
        }
        try (Stopping stop = new Stopping();
                AsOption nowhere = new AsOption()) {
            Drawing.answer(lesson::write, folder, nowhere, Manners.of(spec), progress.line(), stop);
        }
        return Exit.FOUND.code();
    }

    private HallTake hall() {
        return AskedHall.of(asked, Optional.empty())
                .orElseGet(
                        () ->
                                new HallTake(
                                        asked.pattern().name(),
                                        List.of(asked.pattern()),
                                        List.of(),
                                        asked.words()));
    }
}
