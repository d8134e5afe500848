package deferent.take;

import deferent.page.Layer;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * A wish as it can be made of one ending, so that a panel can draw a control for it without knowing
 * it by name.
 *
 * @param choices what may be said; none of what is free
 * @param unsaid what nothing said stands for; empty where that is worked out
 * @param forms the forms it has a meaning for; empty for all
 * @param many the choices that suit many patterns; empty for all
 */
public record Offer(
        Wish wish, List<Choice> choices, String unsaid, List<String> forms, List<String> many) {
    /** What may be said, and what that is in words. */
    public record Choice(String value, String words) {
        /** A line each: the value, and the words behind it. */
        static List<Choice> table(String lines) {
            return lines.lines()
                    .map(line -> line.split(" +", 2))
                    .map(parts -> new Choice(parts[0], parts[1]))
                    .toList();
        }

        static List<Choice> layers(Layer... layers) {
            return Stream.of(layers).map(l -> new Choice(l.key(), l.words())).toList();
        }
    }

    public Offer {
        choices = List.copyOf(choices);
        forms = List.copyOf(forms);
        many = List.copyOf(many);
    }

    /** Some wishes as most endings take them, and some as one does; in order. */
    static List<Offer> all(List<Wish> usual, Offer... own) {
        return Stream.concat(usual.stream().map(Wish::usual), Stream.of(own))
                .sorted(Comparator.comparing(Offer::wish))
                .toList();
    }

    /** A size that is a square of that edge where nothing is said, pixels. */
    static Offer size(int edge) {
        Choice square = new Choice(Integer.toString(edge), "square, " + edge + " pixels");
        return Wish.SIZE
                .usual()
                .choosing(
                        Stream.concat(
                                        Stream.of(square),
                                        Wish.SIZE.usual().choices().stream()
                                                .filter(c -> !c.words().equals(square.words())))
                                .toList())
                .unsaid(square.value());
    }

    Offer choosing(List<Choice> other) {
        return new Offer(wish, other, unsaid, forms, many);
    }

    Offer unsaid(String other) {
        return new Offer(wish, choices, other, forms, many);
    }

    /** With a meaning for some forms alone. */
    Offer only(List<String> these) {
        return new Offer(wish, choices, unsaid, these, many);
    }

    /** The choices as they are said. */
    List<String> values() {
        return choices.stream().map(Choice::value).toList();
    }
}
