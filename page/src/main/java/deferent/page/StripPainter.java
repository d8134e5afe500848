package deferent.page;

import deferent.motion.trace.Count;
import deferent.motion.trace.Counts;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * A scene's moments side by side in cells of one scale, in as many rows as make the cells largest,
 * each with its count below; a moment on no count with its time.
 */
final class StripPainter {
    private static final int LEAST = 4;

    /** Left free about a cell's picture, in its shorter edges: heads reach beyond the figure. */
    private static final double INSET = 0.095;

    private final Scene scene;
    private final Still still;
    private final Layout layout;
    private final List<Double> moments;
    private final Rectangle2D seen;
    private final Rectangle2D.Double room;
    private final double foot;
    private int columns = 1;
    private double size;

    StripPainter(Scene scene, Still still, Layout layout) {
        this.scene = scene;
        this.still = still;
        this.layout = layout;
        moments = PosePainter.moments(scene, still, LEAST);
        seen = Framing.extent(scene, still.view());
        double out = layout.margin() / 2;
        Rectangle2D.Double inside = layout.room();
        room =
                new Rectangle2D.Double(
                        inside.x - out,
                        inside.y - out,
                        inside.width + 2 * out,
                        inside.height + out);
        foot = 2.2 * layout.brush().type();
        for (int some = 1; some <= moments.size(); some++) {
            double fits = fits(some);
            if (fits >= size) {
                columns = some;
                size = fits;
            }
        }
        // As many rows, but filled as evenly as may be.
        columns = rows(rows(columns));
        size = fits(columns);
    }

    /** How many rows of so many cells; or cells of so many rows. */
    private int rows(int some) {
        return (moments.size() + some - 1) / some;
    }

    /** Pixels a metre where a row has so many cells. */
    private double fits(int some) {
        double across = room.width / some;
        double up = Math.max(1, room.height / rows(some) - foot);
        double inset = 2 * INSET * Math.min(across, up);
        return Math.min((across - inset) / seen.getWidth(), (up - inset) / seen.getHeight());
    }

    double paint(Paper paper) {
        double across = room.width / columns;
        double most = Math.max(1, room.height / rows(columns) - foot);
        double inset = INSET * Math.min(across, most);
        double up = Math.min(most, seen.getHeight() * size + 2 * inset);
        double top = room.y + (room.height - rows(columns) * (up + foot)) / 2;
        Brush brush = Brush.of(still.theme(), 1.3 * Math.min(across, up));
        Set<Layer> layers = EnumSet.allOf(Layer.class);
        layers.retainAll(still.layers());
        for (int i = 0; i < moments.size(); i++) {
            Rectangle2D.Double cell =
                    new Rectangle2D.Double(
                            room.x + i % columns * across,
                            top + Math.floorDiv(i, columns) * (up + foot),
                            across,
                            up);
            paint(paper, i, cell, inset, brush, layers);
        }
        return size;
    }

    private void paint(
            Paper paper,
            int i,
            Rectangle2D.Double cell,
            double inset,
            Brush brush,
            Set<Layer> layers) {
        double time = moments.get(i);
        Framing framing =
                Framing.of(
                        scene,
                        still.view(),
                        new Rectangle2D.Double(
                                cell.x + inset,
                                cell.y + inset,
                                cell.width - 2 * inset,
                                cell.height - 2 * inset));
        MomentPainter painter = new MomentPainter(scene, framing, brush, layers, cell);
        String id = "moment-" + (i + 1);
        String said = said(time);
        paper.within(
                id,
                "moment " + said,
                () -> {
                    painter.behind(paper, id + "-", time);
                    painter.trails(paper, id + "-", time);
                    painter.moving(paper, id + "-", time);
                    painter.labels(paper, id + "-", time, new LabelRoom(cell, brush.gap()));
                    paper.group(id + "-count", said, g -> count(Brush.smooth(g), cell, said, i));
                });
    }

    private String said(double time) {
        for (Count count : Counts.of(scene.trace(), 4)) {
            if (Counts.same(scene.trace(), count.time(), time)) {
                return count.said();
            }
        }
        return String.format(Locale.ROOT, "%.2f s", time);
    }

    private void count(Graphics2D g, Rectangle2D.Double cell, String said, int i) {
        Brush brush = layout.brush();
        Lettering lettering =
                brush.lettering(Character.isDigit(said.charAt(0)) ? Face.BOLD : Face.REGULAR, 1.25);
        g.setColor(brush.ink(Palette.Ink.TEXT));
        lettering.write(
                g,
                said,
                cell.getCenterX() - lettering.length(said) / 2,
                cell.getMaxY() + 0.95 * lettering.size());
        if (i % columns > 0) {
            g.setColor(brush.ink(Palette.Ink.FAINT));
            g.setStroke(new BasicStroke((float) Math.max(0.5, 0.8 * brush.unit())));
            g.draw(
                    new Line2D.Double(
                            cell.x,
                            cell.y + 0.08 * cell.height,
                            cell.x,
                            cell.getMaxY() + 0.4 * foot));
        }
    }
}
