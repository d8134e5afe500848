package deferent.page;

import deferent.motion.pairing.Part;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The light behind a head: the whole figure faintly, and over it what is younger, the stronger and
 * the broader the younger. Its dashes lie still on the figure, as many as fit it, and the light
 * runs over them.
 *
 * <p>On pixels every age has a strength of its own ({@link TrailPixels}). In strokes, for papers
 * that know nothing else, coats lie over ever younger parts; each covers the next, so that no end
 * shows, and many thin coats come near the same law.
 *
 * <p>Where it crosses a trail that is nearer to the onlooker it has a gap, as has a knot in a
 * drawing; behind the body it is seen faintly, so that the figure can be guessed.
 */
final class Trail {
    /** How much of the cycle a trail takes to fade. */
    static final double FADE = 0.72;

    /** How strong the figure is where all light has faded. */
    static final double OLD = 0.26;

    /** How broad that faint figure is, in widths of the trail. */
    static final double OLD_WIDTH = 0.55;

    /** How much of it is seen where it passes behind the body (our choice). */
    static final double BEHIND = 0.3;

    /** What still shines through all the coats at the head. */
    private static final double THROUGH = 0.044;

    /** Coats a thousand pixels of the picture's shorter edge, from fewest to most. */
    private static final double COATS = 18;

    private static final int FEWEST = 8;
    private static final int MOST = 20;

    private final PaperRun lane;
    private final Palette.Look look;
    private final Brush brush;
    private final double[] dash;

    /** Where what is nearer passes before it: from and to, pixels along the lane, in order. */
    private final List<double[]> gaps;

    private Trail(
            PaperRun lane, Palette.Look look, Brush brush, double[] dash, List<double[]> gaps) {
        this.lane = lane;
        this.look = look;
        this.brush = brush;
        this.dash = dash;
        this.gaps = List.copyOf(gaps);
    }

    static Trail of(Scene scene, Framing framing, Brush brush, Item item, Item.Shape.Run run) {
        PaperRun lane = PaperRun.of(scene, framing, run);
        Palette.Look look = Brush.look(item);
        Part part = scene.trace().pairing().part(run.track().side());
        int laps =
                part.cycles()
                        * (part.still() ? Math.max(1, Math.abs(part.motion().spin().turns())) : 1);
        return new Trail(lane, look, brush, lane.fitted(brush.dash(look), laps), List.of());
    }

    /**
     * The same trails, the farthest first, each interrupted where another or it itself passes
     * before it.
     */
    static <T> Map<T, Trail> crossing(Map<T, Trail> trails) {
        List<Trail> all = List.copyOf(trails.values());
        List<List<double[]>> gaps = new ArrayList<>();
        all.forEach(trail -> gaps.add(new ArrayList<>()));
        for (Crossings.Cut cut : Crossings.of(all.stream().map(t -> t.lane.seen()).toList())) {
            PaperRun lane = all.get(cut.lane()).lane;
            double at = lane.comeAt(cut.at() / (lane.count() - 1));
            double half = (all.get(cut.over()).width(0) / 2 + all.get(0).brush.gap()) / cut.sine();
            gaps.get(cut.lane()).add(new double[] {at - half, at + half});
            // What begins before the lane's start ends it, and the other way round.
            if (lane.closed() && at < half) {
                gaps.get(cut.lane()).add(new double[] {at - half + lane.length(), lane.length()});
            } else if (lane.closed() && at + half > lane.length()) {
                gaps.get(cut.lane()).add(new double[] {0, at + half - lane.length()});
            }
        }
        List<Map.Entry<T, Trail>> order = new ArrayList<>(trails.entrySet());
        order.sort(Comparator.comparingDouble(entry -> entry.getValue().nearness()));
        Map<T, Trail> crossed = new LinkedHashMap<>();
        for (Map.Entry<T, Trail> entry : order) {
            Trail plain = entry.getValue();
            crossed.put(entry.getKey(), plain.with(merged(gaps.get(all.indexOf(plain)))));
        }
        return crossed;
    }

    // To a millimetre, so that equals stay in the order in which they came.
    private double nearness() {
        return Math.rint(1000 * lane.near());
    }

    private static List<double[]> merged(List<double[]> gaps) {
        gaps.sort(Comparator.comparingDouble(gap -> gap[0]));
        List<double[]> merged = new ArrayList<>();
        for (double[] gap : gaps) {
            double[] last =
                    merged.isEmpty() ? new double[] {-1, -1} : merged.get(merged.size() - 1);
            if (gap[0] <= last[1]) {
                last[1] = Math.max(last[1], gap[1]);
            } else {
                merged.add(gap);
            }
        }
        return merged;
    }

    private Trail with(List<double[]> interrupted) {
        return new Trail(lane, look, brush, dash, interrupted);
    }

    /** How much of the trail there is at a place, pixels along the lane: 0 in a gap, else 1. */
    double kept(double come) {
        double kept = 1;
        for (double[] gap : gaps) {
            double into = Math.min(come - gap[0], gap[1] - come);
            kept = Math.min(kept, Math.max(0, Math.min(1, 0.5 - into)));
        }
        return kept;
    }

    /**
     * How strongly each point of the lane is seen: faintly through the body where that is before
     * it.
     */
    double[] seen(Optional<Silhouette> body) {
        double[] seen = new double[lane.count()];
        for (int i = 0; i < seen.length; i++) {
            double x = lane.x(i);
            double y = lane.y(i);
            double near = lane.near(i);
            seen[i] = body.map(one -> one.side(x, y, near)).orElse(0) < 0 ? BEHIND : 1;
        }
        return seen;
    }

    /** A part of the lane, in shares of the period, as strong all along. */
    private record Stretch(double from, double to, double strength) {}

    /** The lane without its gaps, cut where it passes behind the body and comes out again. */
    private List<Stretch> parts(Optional<Silhouette> body) {
        List<Stretch> parts = new ArrayList<>();
        if (body.isEmpty() && gaps.isEmpty()) {
            return List.of(new Stretch(0, 1, 1));
        }
        double[] seen = seen(body);
        int last = seen.length - 1;
        double begun = 0;
        for (int i = 1; i <= last; i++) {
            if (i == last || seen[i] != seen[i - 1]) {
                double end = i == last ? 1 : (i - 0.5) / last;
                without(begun, end, seen[i - 1], parts);
                begun = end;
            }
        }
        return parts;
    }

    private void without(double from, double to, double strength, List<Stretch> into) {
        double begun = from;
        for (double[] gap : gaps) {
            double low = lane.shareAt(gap[0]);
            double high = lane.shareAt(gap[1]);
            if (high <= begun || low >= to) {
                continue;
            }
            if (low > begun) {
                into.add(new Stretch(begun, low, strength));
            }
            begun = high;
        }
        if (begun < to) {
            into.add(new Stretch(begun, to, strength));
        }
    }

    PaperRun lane() {
        return lane;
    }

    Palette.Look look() {
        return look;
    }

    /** On and off, pixels; empty for unbroken. A stroke's middle is where the lane starts. */
    double[] dash() {
        return dash;
    }

    /** How broad a coat is that reaches back over a share of the fade, pixels. */
    double width(double share) {
        return look.width() * brush.unit() * (1.05 - 0.5 * share);
    }

    /** How broad the faint figure is, pixels. */
    double oldWidth() {
        return look.width() * brush.unit() * OLD_WIDTH;
    }

    /** What shines through coats over so large a share of the fade. */
    static double through(double share) {
        return Math.pow(THROUGH, share);
    }

    /** The figure alone, evenly. */
    void even(Graphics2D g, double strength, Optional<Silhouette> body) {
        draw(g, parts(body), 0, 1, look, look.width(), strength, dash);
    }

    /** Faint: how the figure looks where no light is left. */
    private void old(Graphics2D g, List<Stretch> parts) {
        double width = look.width() * OLD_WIDTH;
        draw(g, parts, 0, 1, Brush.unbroken(look), width, OLD, new double[0]);
    }

    // Those parts of a stretch of the lane that are seen. What is whole keeps its round ends.
    private void draw(
            Graphics2D g,
            List<Stretch> parts,
            double from,
            double to,
            Palette.Look as,
            double width,
            double strength,
            double[] dashed) {
        if (parts.size() == 1 && parts.get(0).to() - parts.get(0).from() == 1) {
            double start = lane.closed() ? from : Math.max(0, from);
            Shape whole = to - from == 1 ? lane.whole() : lane.between(start, to);
            double share = parts.get(0).strength() * strength;
            brush.draw(g, whole, as, width, share, dashed, phase(come(start), dashed));
            return;
        }
        for (double lap = Math.floor(from); lap < to; lap++) {
            for (Stretch part : parts) {
                double low = Math.max(from, lap + part.from()) - lap;
                double high = Math.min(to, lap + part.to()) - lap;
                if (high - low > 1e-9 && (lane.closed() || lap == 0)) {
                    brush.cut(
                            g,
                            lane.between(low, high),
                            as,
                            width,
                            part.strength() * strength,
                            dashed,
                            phase(lane.comeAt(low), dashed));
                }
            }
        }
    }

    /**
     * A part of the trail as it is seen about a body that keeps still.
     *
     * @param line the part
     * @param strength how strongly it is seen
     */
    record Shown(Path2D.Double line, double strength) {}

    /** The trail in parts; none where all of it is seen in full. */
    List<Shown> shown(Optional<Silhouette> body) {
        List<Stretch> parts = parts(body);
        boolean whole = parts.size() == 1 && parts.get(0).strength() == 1;
        return whole
                ? List.of()
                : parts.stream()
                        .map(one -> new Shown(lane.between(one.from(), one.to()), one.strength()))
                        .toList();
    }

    private double come(double share) {
        double rounds = lane.closed() ? Math.floor(share) : 0;
        return lane.comeAt(share - rounds);
    }

    /** The ground's colour beside what of it passes before the body. */
    void casing(Graphics2D g, Silhouette body) {
        int last = lane.count() - 1;
        int begun = -1;
        for (int i = 0; i <= last; i++) {
            boolean before = body.side(lane.x(i), lane.y(i), lane.near(i)) > 0;
            if (before && begun < 0) {
                begun = i;
            }
            if (begun >= 0 && (!before || i == last)) {
                double from = Math.max(0, lane.come(begun) - brush.gap());
                double to = Math.min(lane.length(), lane.come(i) + brush.gap());
                Shape line = lane.between(lane.shareAt(from), lane.shareAt(to));
                brush.casing(g, line, look.width());
                begun = -1;
            }
        }
    }

    /** In strokes. */
    void strokes(Graphics2D g, double time, double edge, Optional<Silhouette> body) {
        List<Stretch> parts = parts(body);
        old(g, parts);
        int coats = (int) Math.max(FEWEST, Math.min(MOST, COATS * edge / 1000));
        double strength = 1 - through(1.0 / coats);
        double head = lane.share(time);
        for (int coat = coats; coat >= 1; coat--) {
            double share = (coat - 0.5) / coats;
            double width = look.width() * (1.05 - 0.5 * share);
            draw(g, parts, head - share * FADE, head, look, width, strength, dash);
        }
    }

    /** How far into the dash a line begins that starts {@code come} pixels on. */
    private static double phase(double come, double[] dash) {
        return dash.length == 0 ? 0 : (come + dash[0] / 2) % (dash[0] + dash[1]);
    }
}
