package deferent.app;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Size;
import deferent.motion.phrase.Lexicon;
import deferent.motion.shared.Side;
import deferent.reading.worked.Detail;
import deferent.reading.worked.Worked;
import deferent.record.FitJson;
import deferent.record.Kept;
import deferent.record.PatternDocument;
import deferent.search.fit.ArmsFit;
import deferent.search.fit.CordedFit;
import deferent.search.fit.Fit;
import deferent.search.fit.FitReading;
import deferent.search.fit.Limits;
import deferent.search.fit.Neighbours;
import deferent.search.fit.Remedy;
import deferent.search.fit.Sensitivity;
import deferent.search.whole.Readings;
import deferent.tell.TellArms;
import deferent.tell.TellFit;
import deferent.tell.Told;
import java.io.PrintWriter;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

@Command(
        name = "fit",
        mixinStandardHelpOptions = true,
        description = "Finds the sizes that close a pairing's link, or says why none do.")
final class FitCommand implements Callable<Integer> {
    @Spec private CommandSpec spec;

    @Mixin private AskedPairing asked;

    @Option(
            names = "--free",
            split = ",",
            paramLabel = "SIZE",
            description =
                    "Sizes it may change, such as right.hand_radius or tether (of both); unsaid,"
                            + " all that leave both motions what they are.")
    private List<String> free = List.of();

    @Option(
            names = "--carrier",
            paramLabel = "HAND",
            description =
                    "Whose head leads: left or right; unsaid, the one that comes nearer to a"
                            + " link.")
    private @Nullable Side carrier;

    @Option(
            names = "--save",
            paramLabel = "NAME",
            description = "Save the first answer on the shelf under this name.")
    private @Nullable String save;

    @Option(
            names = "--cord",
            description =
                    "Close it on real cords: tempo and sizes for which the rider's hand, keeping its"
                            + " figure, stays on the carrier's head.")
    private boolean cord;

    @Option(
            names = "--arms",
            description =
                    "Make it the largest that the performer's arms reach, its link closed first where"
                            + " head and hand can touch.")
    private boolean arms;

    @Option(
            names = "--owned",
            split = ",",
            paramLabel = "LENGTH",
            converter = Quantity.Length.class,
            description = "With --arms: the tethers there are, such as 40cm,50cm.")
    private List<Double> owned = List.of();

    @Option(names = "--why", description = "Say below each sentence where it comes from.")
    private boolean why;

    @Override
    public Integer call() {
        PatternDocument pattern = asked.pattern();
        Pairing pairing = pattern.pairing();
        Lexicon own = asked.words();
        Side leads =
                carrier != null
                        ? carrier
                        : Readings.of(pairing, pattern.performer(), pattern.kit(), Detail.LIVE, own)
                                .carrier();
        if (cord) {
            return corded(pattern, leads, own);
        }
        FitReading fit =
                Worked.orRefusal(
                        "the numbers of the fit",
                        () ->
                                free.isEmpty()
                                        ? Fit.of(pairing, leads)
                                        : Fit.of(pairing, leads, sizes(pairing)));
        if (arms) {
            return arms(pattern, fit, own);
        }
        PrintWriter out = spec.commandLine().getOut();
        if (Manners.of(spec).json()) {
            out.print(FitJson.write(pattern, fit, own));
        } else {
            tell(pattern, fit, own);
        }
        if (save != null) {
            if (!fit.closes()) {
                throw nothing("since nothing closes it", "free more sizes");
            }
            save(pattern.saying(fit.answers().get(0).pairing(), own));
        }
        return code(fit.closes());
    }

    private static int code(boolean found) {
        return found ? Exit.FOUND.code() : Exit.NOT_FOUND.code();
    }

    private int arms(PatternDocument pattern, FitReading link, Lexicon own) {
        Optional<ArmsFit> fit =
                Worked.orRefusal(
                        "the numbers of the fit to the arms",
                        () -> ArmsFit.linked(pattern.pairing(), link, pattern.performer(), owned));
        PrintWriter out = spec.commandLine().getOut();
        if (Manners.of(spec).json()) {
            out.print(FitJson.arms(pattern, fit, own));
        } else {
            out.println(pattern.name());
            say("", TellArms.of(fit));
            fit.ifPresent(found -> phrase(pattern, found, own));
        }
        if (save != null) {
            save(
                    pattern.saying(
                            fit.orElseThrow(
                                            () ->
                                                    nothing(
                                                            "since no size of it is within reach",
                                                            "bring its centres nearer"))
                                    .pairing(),
                            own));
        }
        return code(fit.isPresent());
    }

    private void phrase(PatternDocument pattern, ArmsFit fit, Lexicon own) {
        PrintWriter out = spec.commandLine().getOut();
        pattern.saying(fit.pairing(), own)
                .phrase()
                .ifPresent(
                        phrase ->
                                Paragraphs.wrapped("  = ", phrase, Paragraphs.width())
                                        .forEach(out::println));
    }

    private int corded(PatternDocument pattern, Side leads, Lexicon own) {
        Pairing pairing = pattern.pairing();
        CordedFit fit =
                Worked.orRefusal(
                        "the numbers of the fit on cords",
                        () ->
                                free.isEmpty()
                                        ? CordedFit.of(pairing, leads, pattern.kit())
                                        : CordedFit.of(
                                                pairing,
                                                leads,
                                                pattern.kit(),
                                                sizes(pairing),
                                                Limits.USUAL));
        PrintWriter out = spec.commandLine().getOut();
        if (Manners.of(spec).json()) {
            out.print(FitJson.write(pattern, fit, own));
        } else {
            out.println(pattern.name());
            say("", TellFit.corded(fit, pairing));
        }
        if (save != null) {
            if (!fit.closes()) {
                throw nothing("since it does not close on real cords", "free more sizes");
            }
            save(pattern.saying(fit.pairing(), own));
        }
        return code(fit.closes());
    }

    private Set<Size> sizes(Pairing pairing) {
        List<Size> there = Size.of(pairing);
        Set<Size> sizes = new LinkedHashSet<>();
        for (String key : free) {
            List<Size> meant =
                    there.stream()
                            .filter(
                                    s ->
                                            AskedPairing.keys(s.key(), key)
                                                    || AskedPairing.keys(s.kind().key(), key))
                            .toList();
            if (meant.isEmpty()) {
                throw new Refusal(
                        "is no size of this pairing",
                        "--free " + key,
                        "give some of "
                                + there.stream().map(Size::key).collect(Collectors.joining(", ")));
            }
            sizes.addAll(meant);
        }
        return sizes;
    }

    private void tell(PatternDocument pattern, FitReading fit, Lexicon own) {
        PrintWriter out = spec.commandLine().getOut();
        Pairing pairing = pattern.pairing();
        out.println(pattern.name());
        out.println(
                "  the "
                        + fit.carrier().word()
                        + " head leads, the "
                        + fit.carrier().other().word()
                        + " hand follows");
        out.println();
        List<Told> told = TellFit.of(fit, pairing);
        say("", told.get(0));
        for (int i = 1; i < told.size(); i++) {
            say("  " + i + ". ", told.get(i));
            Remedy answer = fit.answers().get(i - 1);
            pattern.saying(answer.pairing(), own)
                    .phrase()
                    .ifPresent(
                            phrase ->
                                    Paragraphs.wrapped("     = ", phrase, Paragraphs.width())
                                            .forEach(out::println));
        }
        ArmsFit.beside(pairing, fit, pattern.performer())
                .ifPresent(
                        reached -> {
                            out.println();
                            say("", TellArms.beside(reached));
                            phrase(pattern, reached, own);
                        });
        section(
                "What it costs to be a little out, once closed",
                fit.closes()
                        ? TellFit.costs(
                                Sensitivity.of(fit.nearest().pairing(), fit.carrier()), pairing)
                        : List.of());
        for (Side side : Side.values()) {
            section(
                    "What the " + side.word() + " motion turns into",
                    TellFit.neighbours(Neighbours.of(pairing, side), side, pairing));
        }
    }

    private void section(String title, List<Told> told) {
        if (!told.isEmpty()) {
            spec.commandLine().getOut().println();
            spec.commandLine().getOut().println(title);
            told.forEach(one -> say("  - ", one));
        }
    }

    private void say(String first, Told one) {
        PrintWriter out = spec.commandLine().getOut();
        int width = Paragraphs.width();
        Paragraphs.wrapped(first, one.text(), width).forEach(out::println);
        if (why) {
            Paragraphs.wrapped("      why: ", one.why(), width).forEach(out::println);
        }
    }

    private void save(PatternDocument pattern) {
        PatternDocument changed = pattern.withName(String.valueOf(save));
        Kept kept = asked.shelf().saveNew(changed);
        Manners.of(spec)
                .beside("On the shelf: " + kept.id() + "  (" + asked.shelf().file(kept.id()) + ")");
    }

    private NotFound nothing(String because, String right) {
        return new NotFound("nothing is saved, " + because, "--save " + save, right);
    }
}
