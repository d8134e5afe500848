package deferent.take;

import deferent.motion.pairing.Refusal;
import deferent.page.Layer;
import deferent.page.Palette;
import deferent.page.StillForm;
import deferent.page.View;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What is wished of one file, as it was said; whatever was not said is as usual. Words and numbers
 * are read here alone, so that the command line and the page take the same.
 */
public final class Wishes {
    private final Ending ending;
    private final Map<Wish, String> said;

    private Wishes(Ending ending, Map<Wish, String> said) {
        this.ending = ending;
        this.said = said;
    }

    /**
     * What was wished for an ending.
     *
     * @param said by {@link Wish#key}
     * @throws Refusal of a wish that means nothing for that ending
     */
    public static Wishes of(Ending ending, Map<String, String> said) {
        Map<Wish, String> known = new EnumMap<>(Wish.class);
        said.forEach((key, value) -> known.put(Wish.named(key), value.strip()));
        Wishes wishes = new Wishes(ending, known);
        for (Wish wish : known.keySet()) {
            if (wishes.offer(wish).isEmpty()) {
                throw wishes.meaningless(wish);
            }
        }
        return wishes;
    }

    private Refusal meaningless(Wish wish) {
        Optional<Offer> other =
                ending.offers().stream().filter(offer -> offer.wish() == wish).findFirst();
        return new Refusal(
                "means nothing for "
                        + (other.isPresent() ? "that form of a ." : "a .")
                        + ending.key(),
                wish.key(),
                "leave it out, or "
                        + other.map(o -> "wish for the form " + String.join(" or ", o.forms()))
                                .orElseGet(
                                        () ->
                                                "end the file in "
                                                        + Endings.list(e -> e.takes(wish))));
    }

    public Ending ending() {
        return ending;
    }

    /** The same with one more wish. */
    Wishes with(Wish wish, String value) {
        Map<Wish, String> more = new EnumMap<>(Wish.class);
        more.putAll(said);
        more.put(wish, value);
        return new Wishes(ending, more);
    }

    /** How a wish is made of the ending in its form; empty where it means nothing there. */
    private Optional<Offer> offer(Wish wish) {
        return ending.offers(said.getOrDefault(Wish.FORM, "").toLowerCase(Locale.ROOT)).stream()
                .filter(offer -> offer.wish() == wish)
                .findFirst();
    }

    boolean has(Wish wish) {
        return said.containsKey(wish);
    }

    /** What was said, or is meant where nothing is; empty where that is worked out. */
    Optional<String> text(Wish wish) {
        String unsaid = offer(wish).orElse(wish.usual()).unsaid();
        return Optional.ofNullable(said.get(wish))
                .or(() -> Optional.of(unsaid).filter(usual -> !usual.isEmpty()));
    }

    /** One of some words. */
    String word(Wish wish) {
        List<String> values = offer(wish).orElse(wish.usual()).values();
        String word = text(wish).orElse("").toLowerCase(Locale.ROOT);
        if (!values.contains(word)) {
            throw wrong(wish, "say " + String.join(" or ", values));
        }
        return word;
    }

    boolean yes(Wish wish) {
        String word = text(wish).orElse("no").toLowerCase(Locale.ROOT);
        if (!word.equals("yes") && !word.equals("no")) {
            throw wrong(wish, "say yes or no");
        }
        return word.equals("yes");
    }

    /** A number, or a fraction such as 1/2, or a share such as 30%. */
    OptionalDouble number(Wish wish) {
        return text(wish)
                .map(text -> OptionalDouble.of(number(wish, text)))
                .orElse(OptionalDouble.empty());
    }

    private double number(Wish wish, String text) {
        Refusal wrong = wrong(wish, "give a number such as 2, 0.5 or 1/2");
        String[] parts = text.strip().replaceFirst("%$", "/100").split("/", -1);
        try {
            double bottom = parts.length == 2 ? Double.parseDouble(parts[1]) : 1;
            double number = Double.parseDouble(parts[0]) / bottom;
            if (parts.length <= 2 && Double.isFinite(number)) {
                return number;
            }
        } catch (NumberFormatException none) {
            throw wrong;
        }
        throw wrong;
    }

    int whole(Wish wish) {
        double number = number(wish).orElse(0);
        if (number != Math.rint(number) || Math.abs(number) > 1e9) {
            throw wrong(wish, "give a whole number");
        }
        return (int) number;
    }

    private Stream<String> parts(Wish wish) {
        return text(wish).stream()
                .flatMap(text -> Stream.of(text.split(",", -1)))
                .map(String::strip);
    }

    /** Numbers with commas between. */
    List<Double> numbers(Wish wish) {
        return parts(wish).map(part -> number(wish, part)).toList();
    }

    View view() {
        return new View(
                View.Stand.valueOf(word(Wish.VIEW).toUpperCase(Locale.ROOT)),
                Math.toRadians(number(Wish.TURN).orElse(0)),
                Math.toRadians(number(Wish.LIFT).orElse(0)));
    }

    Palette.Theme theme() {
        return yes(Wish.DARK) ? Palette.Theme.DARK : Palette.Theme.LIGHT;
    }

    /** Width and height, pixels. */
    int[] size() {
        String text = text(Wish.SIZE).orElse("").toLowerCase(Locale.ROOT);
        return switch (text) {
            case "square" -> new int[] {1080, 1080};
            case "wide" -> new int[] {1920, 1080};
            case "tall" -> new int[] {1080, 1920};
            default -> {
                String[] parts = text.split("[x×]", -1);
                if (parts.length > 2
                        || !Arrays.stream(parts).allMatch(p -> p.matches("\\d{1,6}"))) {
                    throw wrong(Wish.SIZE, "give 1200, 1920x1080, or square, wide or tall");
                }
                yield new int[] {
                    Integer.parseInt(parts[0]), Integer.parseInt(parts[parts.length - 1])
                };
            }
        };
    }

    /** What is shown, of what is shown usually. */
    Set<Layer> layers() {
        EnumSet<Layer> layers = EnumSet.copyOf(Layer.usual());
        layers.remove(Layer.BODY);
        parts(Wish.WITH).forEach(key -> layers.add(layer(Wish.WITH, key)));
        parts(Wish.WITHOUT).forEach(key -> layers.remove(layer(Wish.WITHOUT, key)));
        return layers;
    }

    private Layer layer(Wish wish, String key) {
        return Arrays.stream(Layer.values())
                .filter(layer -> layer.key().equals(key) || layer.words().equals(key))
                .findFirst()
                .orElseThrow(
                        () ->
                                wrong(
                                        wish,
                                        "give "
                                                + Arrays.stream(Layer.values())
                                                        .map(Layer::key)
                                                        .collect(Collectors.joining(", "))));
    }

    /** The form of a picture. */
    StillForm form() {
        return switch (word(Wish.FORM)) {
            case "figure" -> StillForm.FIGURE;
            case "poses" -> StillForm.POSES;
            case "strip" -> StillForm.STRIP;
            case "exposure" -> exposure();
            default -> StillForm.MOMENT;
        };
    }

    private StillForm exposure() {
        Optional<StillForm.Blink> blink = Optional.empty();
        if (has(Wish.LED)) {
            List<Double> numbers = numbers(Wish.LED);
            if (numbers.size() > 2) {
                throw wrong(Wish.LED, "give 200 or 200,30%");
            }
            blink =
                    Optional.of(
                            new StillForm.Blink(
                                    numbers.get(0), numbers.size() == 2 ? numbers.get(1) : 0.5));
        }
        return new StillForm.Exposure(number(Wish.SHUTTER), blink);
    }

    Refusal wrong(Wish wish, String right) {
        return new Refusal("is \"" + said.get(wish) + "\"", wish.key(), right);
    }
}
