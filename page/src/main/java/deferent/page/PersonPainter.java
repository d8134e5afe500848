package deferent.page;

import deferent.reading.body.Person;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Area;
import java.util.Optional;

/**
 * The performer at a moment, quietly: trunk, head and legs as one silhouette, and either arm as one
 * of its own, so that it shows before the trunk as well. What is nearer to the onlooker is painted
 * later.
 */
final class PersonPainter {
    /** How much of the outline's ink is in the fill, of the trunk and of an arm (our choice). */
    private static final double TRUNK = 0.24;

    private static final double ARM = 0.36;

    private final Brush brush;

    PersonPainter(Brush brush) {
        this.brush = brush;
    }

    /** The performer at a moment; what is seen of whom is painted from the back to the front. */
    void paint(Graphics2D g, Silhouette seen) {
        Palette.Look look = Palette.of(Role.BODY, Optional.empty());
        for (Silhouette.Part part : seen.order()) {
            Area shape = part.area();
            g.setColor(fill(look, part.group() == Person.Group.TRUNK ? TRUNK : ARM));
            g.fill(shape);
            brush.draw(g, shape, look);
        }
    }

    private Color fill(Palette.Look look, double share) {
        Color paper = brush.ink(Palette.Ink.PAPER);
        Color ink = brush.ink(look.ink());
        return new Color(
                mixed(paper.getRed(), ink.getRed(), share),
                mixed(paper.getGreen(), ink.getGreen(), share),
                mixed(paper.getBlue(), ink.getBlue(), share));
    }

    private static int mixed(int a, int b, double share) {
        return (int) Math.round((1 - share) * a + share * b);
    }
}
