package deferent.app;

import deferent.search.crossing.Compared;
import deferent.search.crossing.CrossingRequest;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What counts as a crossing: how near two states must be, and in which time they are blended. */
final class CrossingOption {
    @Option(
            names = "--tolerance",
            paramLabel = "LENGTH",
            converter = Quantity.Length.class,
            description = "How far hands and heads may be apart at a crossing; unsaid, 8cm.")
    private @Nullable Double place;

    @Option(
            names = "--speed",
            paramLabel = "SPEED",
            converter = Quantity.Speed.class,
            description =
                    "How far their velocities may differ, such as 1m/s, which is what counts unsaid,"
                            + " or any.")
    private @Nullable Double speed;

    @Option(
            names = "--blend",
            paramLabel = "TIME",
            converter = Quantity.Time.class,
            description = "In which time a passage takes up what differs; unsaid, 0.25s.")
    private @Nullable Double blend;

    @Option(
            names = "--lights",
            description = "Compare the heads alone: where the lights cross for an audience.")
    private boolean lights;

    CrossingRequest request() {
        CrossingRequest usual = CrossingRequest.USUAL;
        CrossingRequest asked =
                usual.withTolerance(
                        place == null ? usual.place() : place,
                        speed == null ? usual.speed() : speed);
        asked = blend == null ? asked : asked.withBlend(blend);
        return lights ? asked.with(Compared.HEADS) : asked;
    }
}
