package deferent.take;

import deferent.page.Layer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A wish as it can be made of one ending, so that a panel can draw a control for it without knowing
 * it by name.
 *
 * @param choices what may be said; none of what is free
 * @param open whether something else than the choices may be said as well
 * @param unsaid what nothing said stands for; empty where that is worked out
 * @param often whether it is looked for often, or only now and then
 * @param forms the forms it has a meaning for; empty for all
 * @param many the choices that suit many patterns; empty for all
 * @param insteadOf another wish that it takes the place of
 */
public record Offer(
        Wish wish,
        List<Choice> choices,
        boolean open,
        String unsaid,
        boolean often,
        List<String> forms,
        List<String> many,
        Optional<Wish> insteadOf) {
    /** What may be said, and what that is in words. */
    public record Choice(String value, String words) {}

    private static final List<String> PRINTED = List.of("sheet", "booklet", "cards");

    public Offer {
        choices = List.copyOf(choices);
        forms = List.copyOf(forms);
        many = List.copyOf(many);
    }

    /** All that can be wished of an ending. */
    public static List<Offer> of(Ending ending) {
        List<Offer> offers = new ArrayList<>();
        for (Wish wish : Wish.values()) {
            boolean picture = ending == Ending.PDF && wish.fits(Ending.Family.PICTURE);
            if ((wish.fits(ending.family()) || picture) && !senseless(wish, ending)) {
                offers.add(of(wish, ending));
            }
        }
        return offers;
    }

    private static boolean senseless(Wish wish, Ending ending) {
        return switch (wish) {
            case MOVING -> ending != Ending.SVG;
            case TRANSPARENT -> ending == Ending.MP4 || ending == Ending.GIF;
            case CAPTIONS -> ending == Ending.WEBP || ending == Ending.GIF;
            default -> false;
        };
    }

    private static Offer of(Wish wish, Ending ending) {
        boolean print = ending == Ending.PDF;
        List<String> forms =
                switch (wish) {
                    case SHUTTER, LED -> List.of("exposure");
                    case AT -> List.of("moment", "poses", "strip", "exposure");
                    case MOVING -> List.of("moment");
                    case CROSSINGS -> List.of("sheet", "booklet");
                    case PAPER, MIRRORED -> PRINTED;
                    case FORM, VIEW -> List.of();
                    default -> print ? Pictures.FORMS : List.of();
                };
        return new Offer(
                wish,
                choices(wish, ending),
                wish == Wish.SIZE,
                unsaid(wish, ending),
                often(wish),
                forms,
                wish == Wish.FORM && print ? List.of("booklet", "cards") : List.of(),
                wish == Wish.SECONDS ? Optional.of(Wish.CYCLES) : Optional.empty());
    }

    private static boolean often(Wish wish) {
        return switch (wish) {
            case FORM, AT, SIZE, TRANSPARENT, SHUTTER, LED, MOVING, FPS, CYCLES, SECONDS -> true;
            case SLOW, PAPER, MIRRORED, CROSSINGS, RATE -> true;
            default -> false;
        };
    }

    private static String unsaid(Wish wish, Ending ending) {
        return switch (wish) {
            case FORM -> ending == Ending.PDF ? "sheet" : "moment";
            case CORD -> "ideal";
            case VIEW -> "audience";
            case TURN, LIFT -> "0";
            case SIZE -> Integer.toString(Pictures.edge(ending));
            case DARK, TRANSPARENT, MOVING, MIRRORED -> "no";
            case CAPTION -> ending.family() == Ending.Family.CLIP ? "no" : "yes";
            case CAPTIONS, CROSSINGS -> "yes";
            case FPS -> ending == Ending.GIF ? "50" : "60";
            case CYCLES, SLOW -> "1";
            case PAPER -> "a4";
            case RATE -> "100";
            case AT, WITH, WITHOUT, SHUTTER, LED, SECONDS -> "";
        };
    }

    private static List<Choice> choices(Wish wish, Ending ending) {
        return switch (wish) {
            case FORM ->
                    ending == Ending.PDF
                            ? Stream.concat(
                                            choices("sheet", "a sheet", "booklet", "a booklet")
                                                    .stream(),
                                            Stream.concat(
                                                    choices("cards", "cards to cut").stream(),
                                                    pictures().stream()))
                                    .toList()
                            : pictures();
            case CORD ->
                    choices(
                            "ideal",
                            "a rod, as said",
                            "figure",
                            "a cord that keeps the figure",
                            "hand-path",
                            "a cord that keeps the hand path");
            case VIEW ->
                    choices(
                            "audience",
                            "the audience",
                            "performer",
                            "the performer",
                            "mirror",
                            "a mirror");
            case SIZE -> sizes(ending);
            case FPS ->
                    ending == Ending.GIF
                            ? same("10", "12.5", "20", "25", "50")
                            : same("23.976", "24", "25", "29.97", "30", "50", "59.94", "60");
            case SLOW ->
                    choices(
                            "1",
                            "as spun",
                            "1/2",
                            "half",
                            "1/4",
                            "a quarter",
                            "1/8",
                            "an eighth",
                            "2",
                            "twice");
            case PAPER -> choices("a4", "A4", "letter", "Letter");
            case WITH ->
                    ending == Ending.HTML
                            ? layers(Layer.BODY)
                            : layers(Layer.BODY, Layer.LABELS, Layer.COUNTS);
            case WITHOUT ->
                    layers(
                            Layer.TRAIL,
                            Layer.LINK,
                            Layer.TETHER,
                            Layer.HAND,
                            Layer.HEAD,
                            Layer.HAND_PATH,
                            Layer.CENTRE);
            default -> List.of();
        };
    }

    private static List<Choice> pictures() {
        return choices(
                "moment",
                "one moment",
                "figure",
                "the figure alone",
                "poses",
                "the figure with poses",
                "strip",
                "moments side by side",
                "exposure",
                "a long exposure");
    }

    private static List<Choice> sizes(Ending ending) {
        String usual = Integer.toString(Pictures.edge(ending));
        List<Choice> usually = choices(usual, "square, " + usual + " pixels");
        List<Choice> others =
                choices(
                        "square",
                        "square, 1080 pixels",
                        "wide",
                        "wide, 1920 by 1080",
                        "tall",
                        "tall, 1080 by 1920",
                        "2160",
                        "square, 2160 pixels",
                        "3840x2160",
                        "wide, 3840 by 2160");
        return Stream.concat(
                        usually.stream(),
                        others.stream().filter(c -> !(usual + "square").equals("1080" + c.value())))
                .toList();
    }

    private static List<Choice> layers(Layer... layers) {
        return Stream.of(layers).map(l -> new Choice(l.key(), l.words())).toList();
    }

    private static List<Choice> same(String... values) {
        return Stream.of(values).map(v -> new Choice(v, v)).toList();
    }

    private static List<Choice> choices(String... pairs) {
        List<Choice> all = new ArrayList<>();
        for (int i = 0; i < pairs.length; i += 2) {
            all.add(new Choice(pairs[i], pairs[i + 1]));
        }
        return all;
    }
}
