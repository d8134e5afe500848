package deferent.app;

import deferent.take.Wish;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import picocli.CommandLine.Help;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.UsageMessageSpec;

/** Options that help lists together, by what is wished, where a command has many. */
enum OptionGroup {
    FILE("The file", "--out", "--as", "--preview"),
    DRAWN("What is drawn"),
    LOOK("How it looks"),
    EXPOSURE("A long exposure"),
    CLIP("A clip, or a picture that moves"),
    PRINT("A print"),
    TABLE("A table"),
    PATTERN("The pattern", "--tether", "--hand-radius", "--tempo", "--set"),
    POI("The poi", "--head-mass", "--head-size", "--heads", "--air"),
    SPINNER(
            "Who spins",
            "--stature",
            "--arm",
            "--shoulders",
            "--hand-speed",
            "--hand-acceleration",
            "--hand-leave"),
    REST("Besides");

    /** From so many options on, a list without headings is hard to find anything in. */
    private static final int MANY = 15;

    private final String heading;
    private final Set<String> names;

    OptionGroup(String heading, String... names) {
        this.heading = heading;
        this.names = Set.of(names);
    }

    /** Where what may be wished of a file stands. */
    private static OptionGroup of(Wish wish) {
        return switch (wish) {
            case FORM, CORD, VIEW, TURN, LIFT, AT, LEFT_HANDED, WITH, WITHOUT -> DRAWN;
            case SIZE, DARK, TRANSPARENT, OUTLINE, CAPTION -> LOOK;
            case SHUTTER, LED -> EXPOSURE;
            case MOVING, FPS, CYCLES, SECONDS, SLOW, CAPTIONS -> CLIP;
            case PAPER, TRANSITIONS -> PRINT;
            case RATE -> TABLE;
        };
    }

    private static OptionGroup of(OptionSpec option) {
        String name = option.longestName();
        Optional<OptionGroup> wished =
                Arrays.stream(Wish.values())
                        .filter(wish -> name.equals("--" + wish.key()))
                        .findFirst()
                        .map(OptionGroup::of);
        return wished.orElseGet(
                () ->
                        Arrays.stream(values())
                                .filter(group -> group.names.contains(name))
                                .findFirst()
                                .orElse(REST));
    }

    /** Gives the options of a command with many their headings. */
    static void head(CommandSpec spec) {
        if (spec.options().size() < MANY) {
            return;
        }
        spec.usageMessage().optionListHeading("");
        spec.usageMessage()
                .sectionMap()
                .put(UsageMessageSpec.SECTION_KEY_OPTION_LIST, OptionGroup::list);
    }

    private static String list(Help help) {
        List<OptionSpec> shown =
                help.commandSpec().options().stream().filter(option -> !option.hidden()).toList();
        return Arrays.stream(values())
                .map(
                        group ->
                                list(
                                        help,
                                        group.heading,
                                        shown.stream().filter(o -> of(o) == group).toList()))
                .collect(Collectors.joining());
    }

    private static String list(Help help, String heading, List<OptionSpec> options) {
        if (options.isEmpty()) {
            return "";
        }
        // Of all options, so that the columns of all groups are as wide.
        Help.Layout layout =
                help.createDefaultLayout(
                        help.commandSpec().options(), List.of(), help.colorScheme());
        layout.addOptions(options, help.parameterLabelRenderer());
        return String.format("%n%s:%n%s", heading, layout);
    }
}
