package deferent.page.sheet;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.shared.Side;
import deferent.page.View;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * From where a pairing is seen so that its planes don't look like lines: from the front wherever
 * that will do, else from above or from the performer's left, and slantwise where no one place
 * shows both hands.
 *
 * @param view for the picture
 * @param said for the reader: "Seen by the audience, from above"
 */
record Outlook(View view, String said) {
    // Cosine of the angle at which a plane is seen too slantwise: sixty degrees.
    private static final double SLANT = 0.5;
    private static final double QUARTER = Math.PI / 2;

    static Outlook of(Pairing pairing, View.Stand stand) {
        return of(List.of(pairing), stand);
    }

    /** From where several can be seen in one picture. */
    static Outlook of(List<Pairing> pairings, View.Stand stand) {
        // Walking to one's own right leads to the performer's left only from the audience.
        double left = stand == View.Stand.AUDIENCE ? 1 : -1;
        List<Outlook> places =
                List.of(
                        new Outlook(new View(stand, 0, 0), ""),
                        new Outlook(new View(stand, 0, QUARTER), ", from above"),
                        new Outlook(
                                new View(stand, left * QUARTER, 0), ", from the performer's left"));
        return places.stream()
                .filter(place -> pairings.stream().allMatch(p -> shows(place.view(), p)))
                .findFirst()
                .orElse(
                        new Outlook(
                                new View(stand, left * Math.toRadians(32), Math.toRadians(24)),
                                ", from a little to the side and above"))
                .seenBy(stand);
    }

    private Outlook seenBy(View.Stand stand) {
        return new Outlook(view, Foot.capital(stand.seenBy()) + said);
    }

    /** From where beside who looks, such as "from above"; empty straight from the front. */
    String place() {
        String seen = view.stand().seenBy();
        return said.length() == seen.length() ? "" : said.substring(seen.length() + 2);
    }

    /** Whose left and right the words mean, and where those lie in the picture. */
    String whoseLeft() {
        return "Left, right and clockwise are the performer's own"
                + (slant()
                        ? "."
                        : "; in the picture, " + view.stand().seenBy() + ", " + where() + ".");
    }

    /** Where the performer's left is in the picture. */
    String leftOfPicture() {
        return slant() ? "left and right in the words are the performer's" : where();
    }

    private boolean slant() {
        return Math.abs(across()) < SLANT;
    }

    private String where() {
        return "the performer's left is on the " + (across() > 0 ? "right" : "left");
    }

    /** How far along the picture, to its right, a metre to the performer's left goes. */
    private double across() {
        return view.see(Vector3D.PLUS_I).right();
    }

    private static boolean shows(View view, Pairing pairing) {
        // What passes across would cover itself where its planes are seen full.
        if (pairing.weaves()) {
            return false;
        }
        for (Side side : Side.values()) {
            Part part = pairing.part(side);
            Vector3D across = part.place().plane().normal();
            if (part.place().turn().turns() != 0 || Math.abs(view.see(across).near()) < SLANT) {
                return false;
            }
        }
        return true;
    }
}
