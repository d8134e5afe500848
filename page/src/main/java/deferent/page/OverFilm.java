package deferent.page;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is laid over the picture of a film: what the heads drew, broad; what was meant, thin; the
 * hands with how surely they are known. Inks, dashes and markers are the {@link Palette}'s, as on
 * the stage, so which hand's is told by dash and shape as well as by colour, and by a letter.
 */
public final class OverFilm {
    private static final double BROAD = 0.8; // strength of the light, so that the film shows
    private static final double BAND = 0.12; // of a disc that stands for how unsure a hand is
    private static final double NOW = 0.3; // the same, at its moment
    private static final double LESS = 0.4; // width of what was meant, of that of the light
    private static final double WIDEST = 20; // of an outline
    private static final double MARKS = 0.75; // of the stage's markers: the film's own stay seen

    /**
     * One side's. Places are pixels, whole numbers being the middles of pixels.
     *
     * @param light where the head was, x and y at even moments of a cycle
     * @param meant where it was meant to be, likewise
     * @param meantHand where the hand was meant to be, likewise
     * @param hands where the hand was
     */
    public record Lines(
            double[][] light, double[][] meant, double[][] meantHand, List<Disc> hands) {
        public Lines {
            hands = List.copyOf(hands);
        }
    }

    /**
     * A hand.
     *
     * @param share of the cycle, 0 to 1
     * @param x pixels
     * @param y pixels
     * @param error standard deviation on either axis, pixels
     */
    public record Disc(double share, double x, double y, double error) {}

    private final Map<Side, Lines> sides;
    private final Brush brush;
    private final Rectangle2D picture;

    /**
     * Over pictures of that size.
     *
     * @param width pixels
     * @param height pixels
     */
    public OverFilm(Map<Side, Lines> sides, int width, int height) {
        this.sides = Map.copyOf(sides);
        this.picture = new Rectangle2D.Double(0, 0, width, height);
        this.brush = Brush.of(Palette.Theme.DARK, Math.min(width, height)).marking(MARKS);
    }

    /**
     * Paints it over a picture, with an outline round all of it that stands on any footage.
     *
     * @param print what is painted on
     * @param by how many times as large as the film that is
     * @param share of the cycle, 0 to 1
     * @param outline its width, thousandths of the print's shorter edge, 0 to 20; 0 for none
     */
    public void paint(BufferedImage print, double by, double share, double outline) {
        Refusal.within(outline, 0, WIDEST, "outline", "thousandths of the shorter edge");
        int across = print.getWidth();
        int up = print.getHeight();
        BufferedImage own = new BufferedImage(across, up, BufferedImage.TYPE_INT_ARGB_PRE);
        Graphics2D lines = own.createGraphics();
        lines.scale(by, by);
        paint(lines, share);
        lines.dispose();
        if (outline > 0) {
            double pixels = outline * Math.min(across, up) / 1000;
            new Outline(across, up, pixels, Palette.Theme.DARK).under(Pixels.of(own, 0).argb());
        }
        Graphics2D g = print.createGraphics();
        g.drawImage(own, 0, 0, null);
        g.dispose();
    }

    private void paint(Graphics2D g, double share) {
        Graphics2D own = (Graphics2D) Brush.smooth(g).create();
        try {
            // Pixels are named by their middles; paper is measured from its edge.
            own.translate(0.5, 0.5);
            for (Side side : Side.values()) {
                lines(own, side);
            }
            for (Side side : Side.values()) {
                moment(own, side, share);
            }
            letters(own, share, marked(share));
        } finally {
            own.dispose();
        }
    }

    /**
     * Adds to a picture that is exposed on and on what a head drew from one moment to another.
     *
     * @param g on the picture
     * @param from share of the cycle, 0 to 1
     * @param to later, at most a cycle
     */
    public void expose(Graphics2D g, double from, double to) {
        Graphics2D own = (Graphics2D) Brush.smooth(g).create();
        try {
            own.translate(0.5, 0.5);
            for (Side side : Side.values()) {
                Palette.Look light = Brush.unbroken(Palette.of(Role.HEAD_TRAIL, Optional.of(side)));
                double[][] line = of(side).light();
                int parts = Math.max(1, (int) Math.ceil((to - from) * line[0].length));
                double[] xy = new double[2 * parts + 2];
                for (int i = 0; i <= parts; i++) {
                    Point2D at = at(line, from + (to - from) * i / parts);
                    xy[2 * i] = at.getX();
                    xy[2 * i + 1] = at.getY();
                }
                brush.draw(own, Brush.path(false, xy), light);
            }
        } finally {
            own.dispose();
        }
    }

    /** Puts beside each head whose it is. */
    public void letters(Graphics2D g, double share) {
        Graphics2D own = (Graphics2D) Brush.smooth(g).create();
        try {
            own.translate(0.5, 0.5);
            letters(own, share, room(share));
        } finally {
            own.dispose();
        }
    }

    /** Up to the right of each head, or wherever beside it no mark and no cord lies. */
    private void letters(Graphics2D g, double share, LabelRoom room) {
        Lettering lettering = brush.lettering(Face.BOLD, 1);
        for (Side side : Side.values()) {
            Palette.Look head = Palette.of(Role.HEAD, Optional.of(side));
            String letter = side == Side.LEFT ? "L" : "R";
            LabelRoom.Placed label =
                    room.place(
                            at(of(side).light(), share),
                            -Math.PI / 4,
                            brush.round(head),
                            Brush.plate(lettering, letter, 0, 0));
            label.tie(g, brush, head.ink());
            brush.plate(g, label.plate(), letter, lettering, head.ink());
        }
    }

    private LabelRoom room(double share) {
        LabelRoom room = new LabelRoom(picture, brush.gap());
        for (Side side : Side.values()) {
            room.mark(
                    at(of(side).light(), share),
                    brush.round(Palette.of(Role.HEAD, Optional.of(side))));
        }
        return room;
    }

    private LabelRoom marked(double share) {
        LabelRoom room = room(share);
        for (Side side : Side.values()) {
            Lines lines = of(side);
            Point2D meant = at(lines.meant(), share);
            room.mark(meant, brush.round(Palette.of(Role.HEAD, Optional.of(side))));
            room.cord(at(lines.meantHand(), share), meant);
            near(lines, share)
                    .ifPresent(
                            hand -> {
                                Point2D there = new Point2D.Double(hand.x(), hand.y());
                                room.mark(
                                        there,
                                        brush.round(Palette.of(Role.HAND, Optional.of(side))));
                                room.cord(there, at(lines.light(), share));
                            });
        }
        return room;
    }

    private Lines of(Side side) {
        Lines lines = sides.get(side);
        if (lines == null) {
            throw new IllegalStateException("a film has both sides");
        }
        return lines;
    }

    private void lines(Graphics2D g, Side side) {
        Lines lines = of(side);
        Palette.Look light = Palette.of(Role.HEAD_TRAIL, Optional.of(side));
        Palette.Look meant = Palette.of(Role.TETHER, Optional.of(side));
        g.setColor(brush.ink(light.ink()));
        Brush.strength(g, BAND);
        for (Disc hand : lines.hands()) {
            g.fill(disc(hand));
        }
        brush.draw(g, path(lines.light()), light, light.width(), BROAD, brush.dash(light), 0);
        brush.draw(g, path(lines.meant()), meant, LESS * light.width(), 1, brush.dash(meant), 0);
    }

    private void moment(Graphics2D g, Side side, double share) {
        Lines lines = of(side);
        Optional<Side> whose = Optional.of(side);
        Palette.Look tether = Palette.of(Role.TETHER, whose);
        Palette.Look hand = Palette.of(Role.HAND, whose);
        Palette.Look head = Palette.of(Role.HEAD, whose);
        Point2D seen = at(lines.light(), share);
        Point2D meant = at(lines.meant(), share);
        brush.draw(g, new Line2D.Double(at(lines.meantHand(), share), meant), thin(tether));
        near(lines, share)
                .ifPresent(
                        disc -> {
                            Point2D there = new Point2D.Double(disc.x(), disc.y());
                            g.setColor(brush.ink(hand.ink()));
                            Brush.strength(g, NOW);
                            g.fill(disc(disc));
                            Brush.strength(g, 1);
                            brush.draw(g, new Line2D.Double(there, seen), tether);
                            brush.mark(g, there, hand);
                        });
        // What was meant is hollow: the hand's marker where the head should be would mislead.
        ring(g, meant, head);
        brush.mark(g, seen, head);
    }

    private void ring(Graphics2D g, Point2D at, Palette.Look head) {
        double r = brush.reach(head);
        g.setColor(brush.ink(head.ink()));
        g.draw(
                head.marker() == Palette.Marker.DIAMOND
                        ? Brush.path(
                                true,
                                at.getX(),
                                at.getY() - r,
                                at.getX() + r,
                                at.getY(),
                                at.getX(),
                                at.getY() + r,
                                at.getX() - r,
                                at.getY())
                        : new Ellipse2D.Double(at.getX() - r, at.getY() - r, 2 * r, 2 * r));
    }

    private static Palette.Look thin(Palette.Look look) {
        return new Palette.Look(
                look.ink(),
                LESS * look.width(),
                look.dash(),
                look.marker(),
                look.markerSize(),
                0.8);
    }

    private static Ellipse2D disc(Disc hand) {
        double r = Math.max(1, hand.error());
        return new Ellipse2D.Double(hand.x() - r, hand.y() - r, 2 * r, 2 * r);
    }

    /** The hand at a moment; empty where it is not known. */
    private static Optional<Disc> near(Lines lines, double share) {
        double step = 1.0 / lines.light()[0].length;
        return lines.hands().stream()
                .filter(h -> Math.abs(Math.IEEEremainder(h.share() - share, 1)) < 0.75 * step)
                .findFirst();
    }

    private static Path2D path(double[][] line) {
        Path2D.Double path = new Path2D.Double();
        for (int i = 0; i < line[0].length; i++) {
            if (i == 0) {
                path.moveTo(line[0][i], line[1][i]);
            } else {
                path.lineTo(line[0][i], line[1][i]);
            }
        }
        path.closePath();
        return path;
    }

    private static Point2D at(double[][] line, double share) {
        int n = line[0].length;
        double i = share * n;
        int from = Math.floorMod((int) Math.floor(i), n);
        int to = (from + 1) % n;
        double f = i - Math.floor(i);
        return new Point2D.Double(
                line[0][from] + f * (line[0][to] - line[0][from]),
                line[1][from] + f * (line[1][to] - line[1][from]));
    }
}
