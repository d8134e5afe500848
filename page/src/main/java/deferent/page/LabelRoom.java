package deferent.page;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Finds room for labels beside what they name. A label never lies on a mark, a cord or another
 * label while the paper has any room at all. It crosses a drawn line only where no place nearby is
 * free of lines, and then the plate behind its word keeps the line off the letters. What had to go
 * further off is tied to its mark by a thin line.
 */
final class LabelRoom {
    /** How much a turn away from the way that is wished for costs, half a turn being one. */
    private static final double TURN = 0.8;

    /** What it costs to stand off by a label's height, and to lie on a drawn line (our choice). */
    private static final double OFF = 0.25;

    private static final double LINE = 2;

    /** What it costs that the line to the mark passes over something. */
    private static final double TIED_OVER = 1;

    /**
     * What it costs to lie on what no label may lie on, and to leave the paper: never, if it can be
     * helped.
     */
    private static final double ON = 1e3;

    private static final double OUTSIDE = 1e6;
    private static final int WAYS = 48;
    private static final double FURTHER = 0.5; // steps outward, in heights of the label
    private static final double NEAR = 0.9; // further off than so many heights a label is tied

    private final Rectangle2D paper;
    private final double gap;
    private final List<Mark> marks = new ArrayList<>();
    private final List<Rectangle2D> labels = new ArrayList<>();
    private final List<Line2D> cords = new ArrayList<>();
    private final List<double[]> lines = new ArrayList<>();

    /**
     * @param paper what labels stay on, pixels
     * @param gap how far they keep off marks and cords, pixels
     */
    LabelRoom(Rectangle2D paper, double gap) {
        this.paper = paper;
        this.gap = gap;
    }

    /**
     * A label where it found room.
     *
     * @param plate what it covers
     * @param tie from the plate to its mark, where it stands off
     */
    record Placed(Rectangle2D.Double plate, Optional<Line2D.Double> tie) {
        /** The line to the mark, if there is one; the plate goes over it. */
        void tie(Graphics2D g, Brush brush, Palette.Ink ink) {
            if (tie.isPresent()) {
                Shape line = tie.get();
                g.setColor(brush.ink(ink));
                g.setStroke(
                        new BasicStroke(
                                (float) (1.3 * brush.unit()),
                                BasicStroke.CAP_ROUND,
                                BasicStroke.JOIN_ROUND));
                g.draw(line);
            }
        }
    }

    private record Mark(Point2D at, double reach) {
        double from(Rectangle2D plate) {
            return at.distance(nearest(plate, at)) - reach;
        }
    }

    /** What no label may lie on: a head, a hand, an arrow. */
    void mark(Point2D at, double reach) {
        marks.add(new Mark(at, reach));
    }

    /** A cord, which no label may lie on either. */
    void cord(Point2D from, Point2D to) {
        cords.add(new Line2D.Double(from, to));
    }

    /**
     * A drawn line.
     *
     * @param xy x, y, x, y, … close together
     */
    void line(double... xy) {
        lines.add(xy);
    }

    /** The line that a point runs along. */
    void line(PaperRun run) {
        double[] xy = new double[2 * run.count()];
        for (int i = 0; i < run.count(); i++) {
            xy[2 * i] = run.x(i);
            xy[2 * i + 1] = run.y(i);
        }
        line(xy);
    }

    /**
     * Places a label, which is in the way of all that come after it.
     *
     * @param at the middle of what it names
     * @param way where it would best stand, radians clockwise from the right
     * @param reach how far what it names reaches, pixels
     * @param size as large as its plate
     */
    Placed place(Point2D at, double way, double reach, Rectangle2D size) {
        Placed best = new Placed(plate(at.getX(), at.getY(), size), Optional.empty());
        double least = Double.POSITIVE_INFINITY;
        double step = FURTHER * size.getHeight();
        double far = Math.hypot(paper.getWidth(), paper.getHeight());
        for (int ring = 0; ring * step < far && OFF * FURTHER * ring < least; ring++) {
            for (int turned = 0; turned < WAYS; turned++) {
                int steps = turned % 2 == 0 ? -turned / 2 : (turned + 1) / 2;
                double cost = OFF * FURTHER * ring + TURN * 2 * Math.abs(steps) / WAYS;
                if (cost >= least) {
                    break;
                }
                Placed there =
                        there(at, way + 2 * Math.PI * steps / WAYS, reach, ring * step, size);
                cost += cost(there, at);
                if (cost < least) {
                    least = cost;
                    best = there;
                }
            }
        }
        labels.add(best.plate());
        return best;
    }

    private Placed there(Point2D at, double way, double reach, double further, Rectangle2D size) {
        double ux = Math.cos(way);
        double uy = Math.sin(way);
        double off =
                reach
                        + gap
                        + further
                        + Math.abs(ux) * size.getWidth() / 2
                        + Math.abs(uy) * size.getHeight() / 2;
        Rectangle2D.Double plate = plate(at.getX() + off * ux, at.getY() + off * uy, size);
        Point2D edge = nearest(plate, at);
        double away = at.distance(edge);
        if (away - reach < NEAR * size.getHeight()) {
            return new Placed(plate, Optional.empty());
        }
        double share = reach / away;
        Point2D rim =
                new Point2D.Double(
                        at.getX() + share * (edge.getX() - at.getX()),
                        at.getY() + share * (edge.getY() - at.getY()));
        return new Placed(plate, Optional.of(new Line2D.Double(edge, rim)));
    }

    private static Point2D nearest(Rectangle2D plate, Point2D to) {
        return new Point2D.Double(
                Math.max(plate.getMinX(), Math.min(plate.getMaxX(), to.getX())),
                Math.max(plate.getMinY(), Math.min(plate.getMaxY(), to.getY())));
    }

    private static Rectangle2D.Double plate(double x, double y, Rectangle2D size) {
        return new Rectangle2D.Double(
                x - size.getWidth() / 2,
                y - size.getHeight() / 2,
                size.getWidth(),
                size.getHeight());
    }

    private double cost(Placed label, Point2D at) {
        Rectangle2D.Double plate = label.plate();
        if (!paper.contains(plate)) {
            return OUTSIDE
                    + Math.hypot(
                            plate.getCenterX() - paper.getCenterX(),
                            plate.getCenterY() - paper.getCenterY());
        }
        Rectangle2D clear =
                new Rectangle2D.Double(
                        plate.x - gap,
                        plate.y - gap,
                        plate.width + 2 * gap,
                        plate.height + 2 * gap);
        double on =
                marks.stream().filter(mark -> mark.from(plate) < gap).count()
                        + cords.stream().filter(cord -> cord.intersects(clear)).count()
                        + labels.stream().filter(clear::intersects).count();
        if (on > 0) {
            return ON * on;
        }
        double over = LINE * lines.stream().filter(line -> crosses(clear, line)).count();
        if (label.tie().isPresent()) {
            Line2D tie = label.tie().get();
            over +=
                    TIED_OVER
                            * marks.stream()
                                    .filter(mark -> mark.at().distance(at) > 0)
                                    .filter(mark -> tie.ptSegDist(mark.at()) < mark.reach())
                                    .count();
            over += TIED_OVER * cords.stream().filter(tie::intersectsLine).count();
            over += TIED_OVER * labels.stream().filter(tie::intersects).count();
        }
        return over;
    }

    private static boolean crosses(Rectangle2D plate, double[] line) {
        for (int i = 2; i < line.length; i += 2) {
            if (plate.intersectsLine(line[i - 2], line[i - 1], line[i], line[i + 1])) {
                return true;
            }
        }
        return false;
    }
}
