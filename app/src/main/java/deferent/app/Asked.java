package deferent.app;

import deferent.motion.body.Performer;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Size;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.phrase.PhraseError;
import deferent.motion.tether.Kit;
import deferent.record.Document;
import deferent.record.Kept;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import deferent.record.Shelf;
import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.TypeConversionException;

/**
 * The pairing a command line asks about: a phrase, a pattern document's file, or a name on the
 * shelf, in that order; and the sizes its options set.
 */
final class Asked {
    @Parameters(
            arity = "1..*",
            paramLabel = "PHRASE|FILE|NAME",
            description =
                    "A phrase such as: isolation vs four-petal antispin, split time. Or a pattern"
                            + " document's file, or a name on the shelf.")
    private List<String> words = List.of();

    @Option(
            names = "--tether",
            paramLabel = "LENGTH",
            converter = Amount.Length.class,
            description = "Tether of hands whose tether is unsaid, such as 60cm.")
    private @Nullable Double tether;

    @Option(
            names = "--hand-radius",
            paramLabel = "LENGTH",
            converter = Amount.Length.class,
            description = "Hand circle (or other path) of every hand that moves, such as 30cm.")
    private @Nullable Double handRadius;

    @Option(
            names = "--tempo",
            paramLabel = "TEMPO",
            converter = Amount.Tempo.class,
            description = "Hand cycles a minute, or poi beats where both hands are still.")
    private @Nullable Double tempo;

    @Option(
            names = "--set",
            paramLabel = "SIZE=VALUE",
            description =
                    "Any one size, such as left.hand_radius=45cm, right.tilt=30deg,"
                            + " right.centre_x=10cm or timing=1/4. May be repeated.")
    private List<String> sets = List.of();

    @Option(
            names = "--stature",
            paramLabel = "LENGTH",
            converter = Amount.Length.class,
            description = "The performer's, such as 172cm.")
    private @Nullable Double stature;

    @Option(
            names = "--arm",
            paramLabel = "LENGTH",
            converter = Amount.Length.class,
            description = "Shoulder joint to the middle of the closed fist, where measured.")
    private @Nullable Double arm;

    @Option(
            names = "--shoulders",
            paramLabel = "LENGTH",
            converter = Amount.Length.class,
            description = "Shoulder joint to shoulder joint, where measured.")
    private @Nullable Double shoulders;

    @Option(
            names = "--head-mass",
            paramLabel = "MASS",
            converter = Amount.Mass.class,
            description = "Of a poi's head, such as 120g.")
    private @Nullable Double headMass;

    @Option(
            names = "--head-size",
            paramLabel = "LENGTH",
            converter = Amount.Length.class,
            description = "Diameter of a poi's head, such as 7cm.")
    private @Nullable Double headSize;

    @Option(names = "--air", description = "Let the air's drag on the heads count.")
    private boolean air;

    @Mixin private ShelfOption shelf;

    Shelf shelf() {
        return shelf.shelf();
    }

    /** What was asked, joined to one text. */
    String text() {
        return String.join(" ", words);
    }

    /** The pattern asked about, with what the options set. */
    PatternDocument pattern() {
        PatternDocument found = found();
        Pairing pairing = sized(found.pairing());
        return found.withPairing(pairing)
                .withPerformer(performer(found.performer()))
                .withKit(kit(found.kit()));
    }

    private PatternDocument found() {
        Optional<Path> file = file(text());
        if (file.isPresent()) {
            return read(file.get());
        }
        Shelf onShelf = shelf.shelf();
        Tether usual = tether == null ? Tether.USUAL : Tether.of(tether);
        try {
            Lexicon own = onShelf.motions();
            Pairing pairing = Phrase.parse(text(), own).with(usual);
            return named(text(), pairing).withPhrase(Optional.of(text()));
        } catch (PhraseError noPhrase) {
            Kept kept = onShelf.find(text()).orElseThrow(() -> noPhrase);
            return tethered(pattern(kept.document(), kept.id()));
        }
    }

    private static PatternDocument named(String phrase, Pairing pairing) {
        String name = phrase.length() > 120 ? phrase.substring(0, 119) + "…" : phrase;
        return PatternDocument.of(name, pairing, Performer.USUAL);
    }

    /** The file of that name, where the text looks like one or is one. */
    static Optional<Path> file(String text) {
        try {
            Path path = Path.of(text);
            return text.endsWith(".json") || Files.isRegularFile(path)
                    ? Optional.of(path)
                    : Optional.empty();
        } catch (InvalidPathException noFile) {
            return Optional.empty();
        }
    }

    static String contents(Path file) {
        if (!Files.isRegularFile(file)) {
            throw new Refusal("is not there", "file " + file, "give the path of a file");
        }
        try {
            if (Files.size(file) > 4L * 16_000_000) {
                throw new Refusal(
                        "is " + Files.size(file) + " bytes long",
                        "file " + file,
                        "give a pattern document or a bundle of them");
            }
            return Files.readString(file);
        } catch (MalformedInputException binary) {
            throw new Refusal("is not UTF-8 text", "file " + file, "give a pattern document");
        } catch (IOException unreadable) {
            throw new NotMade(
                    file + " cannot be read (" + unreadable.getClass().getSimpleName() + ")",
                    "see that it is yours to read");
        }
    }

    private PatternDocument read(Path file) {
        String text = contents(file);
        try {
            return tethered(pattern(PatternJson.read(text), file.toString()));
        } catch (deferent.record.DocumentError wrong) {
            throw wrong.in(file.toString());
        }
    }

    private static PatternDocument pattern(Document document, String where) {
        if (document instanceof PatternDocument pattern) {
            return pattern;
        }
        throw new Refusal(
                "is a motion of one hand, not a pattern of two",
                "\"" + where + "\"",
                "say it in a phrase: " + document.name() + " vs ...");
    }

    private PatternDocument tethered(PatternDocument pattern) {
        if (tether == null) {
            return pattern;
        }
        Pairing pairing = pattern.pairing();
        for (Side side : Side.values()) {
            Part part = pairing.part(side);
            pairing = pairing.with(side, part.with(Tether.of(tether)));
        }
        return pattern.withPairing(pairing);
    }

    private Pairing sized(Pairing asked) {
        Pairing pairing = asked;
        if (handRadius != null) {
            for (Side side : Side.values()) {
                Size size = Size.of(side, Size.Kind.HAND_RADIUS);
                if (size.read(pairing).isPresent()) {
                    pairing = size.set(pairing, handRadius);
                }
            }
        }
        for (String set : sets) {
            pairing = set(pairing, set);
        }
        return tempo == null ? pairing : pairing.withTempo(OptionalDouble.of(tempo));
    }

    /** One size from "left.hand_radius=45cm"; the key's unit suffix may be left out. */
    private static Pairing set(Pairing pairing, String said) {
        int at = said.indexOf('=');
        if (at < 1) {
            throw new Refusal(
                    "says no value", "--set " + said, "give one such as left.hand_radius=45cm");
        }
        Size size = size(said.substring(0, at).strip());
        String value = said.substring(at + 1);
        try {
            return size.set(
                    pairing,
                    size.kind().angle()
                            ? Amount.angle(value)
                            : size.kind().length()
                                    ? Amount.length(value)
                                    : size.kind() == Size.Kind.TEMPO
                                            ? Amount.tempo(value)
                                            : Amount.share(value));
        } catch (TypeConversionException unit) {
            throw new Refusal(
                    String.valueOf(unit.getMessage()), "--set " + said, "see read --help");
        }
    }

    private static Size size(String key) {
        for (Size.Kind kind : Size.Kind.values()) {
            for (Side side : Side.values()) {
                Size size = Size.of(side, kind);
                if (keys(size.key(), key)) {
                    return size;
                }
            }
        }
        return Size.named(key);
    }

    /** Whether that is a size's key as said, with or without its unit at the end. */
    static boolean keys(String key, String said) {
        return key.equals(said) || key.replaceFirst("_(m|deg|cycles|bpm)$", "").equals(said);
    }

    private Performer performer(Performer said) {
        return new Performer(
                stature == null ? said.statureSaid() : OptionalDouble.of(stature),
                arm == null ? said.armSaid() : OptionalDouble.of(arm),
                shoulders == null ? said.shoulderWidthSaid() : OptionalDouble.of(shoulders));
    }

    private Kit kit(Kit said) {
        Kit kit = headMass == null ? said : said.withHeadMass(headMass);
        kit = headSize == null ? kit : kit.withHeadDiameter(headSize);
        return air ? kit.withAir(true) : kit;
    }
}
