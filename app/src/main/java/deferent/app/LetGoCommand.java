package deferent.app;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.reading.tether.Cord;
import deferent.reading.tether.Kit;
import deferent.reading.tether.LetGoTable;
import deferent.record.LetGoJson;
import deferent.tell.TellLetGo;
import java.io.PrintWriter;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

@Command(
        name = "letgo",
        mixinStandardHelpOptions = true,
        description = {
            "Tells how a poi swings that is let go at a still hand: its angle over time, to be held"
                    + " against a swing that was measured.",
            "  deferent letgo --angle 60deg --air",
            "  deferent letgo --angle 60deg --tether 55cm --air --seconds 60s --csv > swing.csv"
        })
final class LetGoCommand implements Callable<Integer> {
    @Spec private CommandSpec spec;

    @Option(
            names = "--angle",
            required = true,
            paramLabel = "ANGLE",
            converter = Quantity.Angle.class,
            description =
                    "Where it is let go, from straight down, positive to the performer's left, such"
                            + " as 60deg.")
    private double angle;

    @Option(
            names = "--speed",
            paramLabel = "SPEED",
            converter = Quantity.Speed.class,
            description =
                    "The head's speed then, across the cord, positive toward greater angles, such as"
                            + " 1.5m/s; unsaid, 0.")
    private double speed;

    @Option(
            names = "--tether",
            paramLabel = "LENGTH",
            converter = Quantity.Length.class,
            description = "From the hand to the head's centre; unsaid, 60cm.")
    private double tether = Tether.USUAL.length();

    @Option(
            names = "--head-mass",
            paramLabel = "MASS",
            converter = Quantity.Mass.class,
            description = "Of the head; unsaid, 120g.")
    private double headMass = Kit.USUAL.headMass();

    @Option(
            names = "--head-size",
            paramLabel = "LENGTH",
            converter = Quantity.Length.class,
            description = "Diameter of the head; unsaid, 7cm.")
    private double headSize = Kit.USUAL.headDiameter();

    @Option(names = "--air", description = "Let the air's drag on the head count.")
    private boolean air;

    @Option(
            names = "--seconds",
            paramLabel = "TIME",
            converter = Quantity.Time.class,
            description = "How long it is followed; unsaid, 10s.")
    private double seconds = 10;

    @Option(
            names = "--step",
            paramLabel = "TIME",
            converter = Quantity.Time.class,
            description = "From one row to the next; unsaid, 100ms.")
    private double step = 0.1;

    @Option(names = "--csv", description = "Answer in lines with commas, for tables.")
    private boolean csv;

    @Option(names = "--why", description = "Say below each sentence where it comes from.")
    private boolean why;

    @Override
    public Integer call() {
        if (Manners.of(spec).json() && csv) {
            throw new Refusal("are said together", "--json and --csv", "give one of them");
        }
        Kit kit = new Kit(headMass, headSize, 0, air);
        Cord cord = new Cord(tether, kit, Gravity.STANDARD);
        LetGoTable table = LetGoTable.of(cord, angle, speed, seconds, step);
        PrintWriter out = spec.commandLine().getOut();
        if (Manners.of(spec).json()) {
            out.print(LetGoJson.write(table));
        } else if (csv) {
            out.print(LetGoJson.lines(table));
        } else {
            tell(table, out);
        }
        return Exit.FOUND.code();
    }

    private void tell(LetGoTable table, PrintWriter out) {
        TextOut text = new TextOut(out, why);
        TellLetGo.of(table).forEach(one -> text.told("", one));
        out.println();
        out.printf("%9s %10s %11s %8s%n", "time, s", "angle, °", "speed, m/s", "pull, N");
        for (LetGoTable.Row row : table.rows()) {
            out.printf(
                    Locale.ROOT,
                    "%9.3f %10.2f %11.3f %8s%n",
                    row.time(),
                    Math.toDegrees(row.angle()) + 0.0,
                    row.speed(),
                    row.slack() ? "slack" : String.format(Locale.ROOT, "%.3f", row.pull()));
        }
    }
}
