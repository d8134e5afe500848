package deferent.take;

import deferent.page.Caption;
import deferent.page.Layer;
import deferent.page.Still;
import deferent.page.StillForm;
import java.util.List;
import java.util.Set;

/** The still that wishes ask for. */
final class Pictures {
    static final List<String> FORMS = List.of("moment", "figure", "poses", "strip", "exposure");

    /** What a PDF may be. */
    static final List<String> PRINTS =
            List.of("sheet", "booklet", "cards", "moment", "figure", "poses", "strip", "exposure");

    private static final int EDGE = 1200;
    private static final int EDGE_CLIP = 1080;
    private static final int EDGE_SMALL = 540;

    private Pictures() {}

    /** How large a picture is where nothing is said, pixels. */
    static int edge(Ending ending) {
        return switch (ending) {
            // Animated pictures go into messages and pages, where less is more.
            case GIF, WEBP -> EDGE_SMALL;
            case MP4, WEBM, MOV, ZIP -> EDGE_CLIP;
            default -> EDGE;
        };
    }

    static Still still(Subject subject, Wishes wishes) {
        Ending.Family family = wishes.ending().family();
        boolean clip = family == Ending.Family.CLIP;
        String form = wishes.word(Wish.FORM, family == Ending.Family.PRINT ? PRINTS : FORMS);
        int edge = edge(wishes.ending());
        int[] size = wishes.size(edge, edge);
        Set<Layer> layers = wishes.layers();
        double start = subject.trace().interval().start();
        List<Double> moments =
                wishes.numbers(Wish.AT).stream()
                        .map(share -> start + share * subject.trace().period())
                        .toList();
        StillForm kind = wishes.form(form);
        // A single picture has one moment; poses and strips take as many as are said.
        boolean many = kind.equals(StillForm.POSES) || kind.equals(StillForm.STRIP);
        if (!many && moments.size() > 1) {
            throw wishes.wrong(Wish.AT, "give one moment, or wish for poses or a strip");
        }
        Still still =
                Still.of(size[0], size[1])
                        .with(wishes.view())
                        .with(wishes.theme())
                        .with(layers)
                        .with(kind, many ? moments : List.of())
                        .at(many || moments.isEmpty() ? start : moments.get(0));
        if (wishes.yes(Wish.CAPTION, !clip)) {
            still = still.with(Caption.of(subject.said(), subject.document().pairing()));
        }
        return wishes.yes(Wish.TRANSPARENT, false) ? still.clear() : still;
    }
}
