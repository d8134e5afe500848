package deferent.page;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Size;
import deferent.motion.shared.Side;
import deferent.record.number.Scale;
import java.util.ArrayList;
import java.util.List;

/** What stands under a picture: the phrase, and the sizes it was drawn with. */
public final class Caption {
    private Caption() {}

    /**
     * What stands below a picture, line by line.
     *
     * @param said the pairing in words
     * @param view from where it is seen
     */
    public static List<String> of(String said, Pairing pairing, View view) {
        String left = sizes(pairing, Side.LEFT);
        String right = sizes(pairing, Side.RIGHT);
        String hands =
                left.equals(right) ? "both: " + left : "left: " + left + "  ·  right: " + right;
        return List.of(
                said,
                hands,
                Scale.TEMPO.said(pairing.tempo())
                        + ", "
                        + Scale.TIME.said(pairing.period())
                        + " a cycle  ·  "
                        + view.stand().seenBy());
    }

    private static String sizes(Pairing pairing, Side side) {
        Part part = pairing.part(side);
        List<String> sizes = new ArrayList<>();
        if (part.motion().riding()) {
            sizes.add("hand rides the " + side.other().word() + " head");
        } else if (part.motion().weave().isPresent()) {
            sizes.add(
                    switch (part.motion().weave().get().between()) {
                        case LEFT_AND_RIGHT -> "hand passes across";
                        case BEFORE_AND_BEHIND -> "hand passes overhead";
                        case ABOVE_AND_BELOW -> "hand rises and sinks";
                    });
        } else {
            Size.of(side, Size.Kind.HAND_RADIUS)
                    .read(pairing)
                    .ifPresentOrElse(
                            r -> sizes.add("hand radius " + Scale.LENGTH.said(r)),
                            () -> sizes.add("hand still"));
        }
        sizes.add("tether " + Scale.LENGTH.said(part.tether().length()));
        return String.join(", ", sizes);
    }
}
