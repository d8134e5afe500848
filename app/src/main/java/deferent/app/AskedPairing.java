package deferent.app;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Size;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Lexicon;
import deferent.motion.shared.Side;
import deferent.reading.tether.Kit;
import deferent.record.PatternDocument;
import deferent.record.Shelf;
import deferent.record.number.Written;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.TypeConversionException;

/**
 * The pairing a command line asks about: a phrase, a pattern document's file, or a name on the
 * shelf, in that order; and the sizes its options set.
 */
final class AskedPairing {
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
            converter = Quantity.Length.class,
            description = "Tether of hands whose tether is unsaid, such as 60cm.")
    private @Nullable Double tether;

    @Option(
            names = "--hand-radius",
            paramLabel = "LENGTH",
            description = "Hand radius of every hand that moves, such as 30cm or 0.5tethers.")
    private @Nullable String handRadius;

    @Option(
            names = "--tempo",
            paramLabel = "TEMPO",
            converter = Quantity.Tempo.class,
            description =
                    "Hand cycles a minute, or poi beats of a weave or where both hands are still.")
    private @Nullable Double tempo;

    @Option(
            names = "--set",
            paramLabel = "SIZE=VALUE",
            description =
                    "Any one size, such as left.hand_radius=45cm, right.tilt=30deg,"
                            + " right.centre_x=10cm or timing=1/4. May be repeated.")
    private List<String> sets = List.of();

    @Mixin private PerformerOption performer;

    @Mixin private HandOption hand;

    @Option(
            names = "--head-mass",
            paramLabel = "MASS",
            converter = Quantity.Mass.class,
            description = "Of a poi's head, such as 120g.")
    private @Nullable Double headMass;

    @Option(
            names = "--head-size",
            paramLabel = "LENGTH",
            converter = Quantity.Length.class,
            description = "Diameter of a poi's head, such as 7cm.")
    private @Nullable Double headSize;

    @Option(
            names = "--heads",
            paramLabel = "KIND",
            converter = HeadsWord.class,
            description = "Of which the heads are: soft, hard or fire.")
    private Kit.@Nullable Heads heads;

    @Option(names = "--air", description = "Let the air's drag on the heads count.")
    private boolean air;

    @Mixin private ShelfOption shelf;

    Shelf shelf() {
        return shelf.shelf();
    }

    /** The user's own words for phrases. */
    Lexicon words() {
        return shelf.words();
    }

    /** What was asked, joined to one text. */
    String text() {
        return String.join(" ", words);
    }

    /** The pattern asked about, with what the options set. */
    PatternDocument pattern() {
        PatternDocument found = new Named(text(), shelf, tether()).pattern();
        Pairing pairing = sized(found.pairing());
        // What the options set, the words no longer say.
        return (pairing.equals(found.pairing()) ? found : found.saying(pairing, shelf.words()))
                .withPerformer(hand.of(performer.of(found.performer())))
                .withKit(kit(found.kit()));
    }

    private Optional<Tether> tether() {
        return tether == null ? Optional.empty() : Optional.of(Tether.of(tether));
    }

    private Pairing sized(Pairing asked) {
        Pairing pairing = asked;
        if (handRadius != null) {
            for (Side side : Side.values()) {
                Size size = Size.of(side, Size.Kind.HAND_RADIUS);
                if (size.read(pairing).isPresent()) {
                    pairing = set(pairing, size, handRadius, "--hand-radius " + handRadius);
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
        return set(
                pairing,
                size(said.substring(0, at).strip()),
                said.substring(at + 1),
                "--set " + said);
    }

    private static Pairing set(Pairing pairing, Size size, String value, String option) {
        Size.Kind kind = size.kind();
        OptionalDouble tether =
                kind == Size.Kind.TETHER || !kind.length()
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(pairing.part(size.side()).tether().length());
        try {
            return size.set(
                    pairing,
                    kind.angle()
                            ? Quantity.angle(value)
                            : kind.length()
                                    ? Quantity.length(value, tether)
                                    : kind == Size.Kind.TEMPO
                                            ? Quantity.tempo(value)
                                            : Quantity.share(value));
        } catch (Refusal refused) {
            throw Quantity.typed(refused, value);
        } catch (TypeConversionException unit) {
            throw new Refusal(String.valueOf(unit.getMessage()), option, "see read --help");
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
        return key.equals(said)
                || key.replaceFirst("_(m|deg|cycles|cycles_per_min)$", "").equals(said);
    }

    private Kit kit(Kit said) {
        Kit kit = headMass == null ? said : said.withHeadMass(headMass);
        kit = headSize == null ? kit : kit.withHeadDiameter(headSize);
        kit = heads == null ? kit : kit.withHeads(heads);
        return air ? kit.withAir(true) : kit;
    }

    /** One of the words that documents use. */
    static final class HeadsWord implements ITypeConverter<Kit.Heads> {
        @Override
        public Kit.Heads convert(String said) {
            for (Kit.Heads heads : Kit.Heads.values()) {
                if (Written.word(heads).equals(said.toLowerCase(Locale.ROOT))) {
                    return heads;
                }
            }
            throw new TypeConversionException("\"" + said + "\" is none of soft, hard, fire");
        }
    }
}
