package deferent.record;

import deferent.motion.pairing.Drawn;
import deferent.motion.pairing.Refusal;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.batik.parser.DefaultPathHandler;
import org.apache.batik.parser.ParseException;
import org.apache.batik.parser.PathParser;
import org.apache.batik.util.io.NormalizingReader;

/**
 * A hand path from an SVG path string: one closed outline, which an open end closes with a straight
 * piece. The picture's box is centred, its y turned up, and the whole made so large that the point
 * farthest from the centre is at the wanted radius. Curves of every kind become cubic Bézier
 * pieces; an elliptical arc becomes pieces of at most a sixteenth of a turn, which depart from it
 * by less than 1e-7 of its radius. Sources: SVG 1.1, 8.3 (path data) and F.6 (elliptical arcs).
 */
public final class SvgPath {
    static final int MOST_CHARACTERS = 20_000;

    private SvgPath() {}

    /**
     * The outline of that text at that size.
     *
     * @param text the d attribute, such as "M0 0 C 0 1 1 1 1 0 Z"
     * @param targetRadius metres from the centre to the farthest point
     */
    public static Drawn parse(String text, double targetRadius) {
        Refusal.positive(targetRadius, 10, "radius of a drawn hand path", "m");
        if (text.length() > MOST_CHARACTERS) {
            throw refusal(
                    "has " + text.length() + " characters", "give at most " + MOST_CHARACTERS);
        }
        if (text.isBlank()) {
            throw refusal("is empty", "write an outline such as \"M0 0 C 0 1 1 1 1 0 Z\"");
        }
        Pieces pieces = new Pieces(text);
        Counting parser = new Counting(text);
        parser.setPathHandler(pieces);
        try {
            parser.parse(text);
        } catch (ParseException unreadable) {
            throw notUnderstood(text, parser.count);
        }
        return pieces.drawn(targetRadius);
    }

    /** The parser, reading through a counter, since it does not say where it stopped. */
    private static final class Counting extends PathParser {
        private final String text;
        private int count;

        Counting(String text) {
            this.text = text;
        }

        @Override
        protected void doParse() throws IOException {
            reader =
                    new NormalizingReader() {
                        @Override
                        public int read() {
                            count++;
                            return count <= text.length() ? text.charAt(count - 1) : -1;
                        }

                        @Override
                        public int getLine() {
                            return 1;
                        }

                        @Override
                        public int getColumn() {
                            return count;
                        }

                        @Override
                        public void close() {}
                    };
            super.doParse();
        }
    }

    private static Refusal notUnderstood(String text, int column) {
        int at = Math.max(1, Math.min(column, text.length() + 1));
        String rest = text.substring(at - 1);
        return refusal(
                at > text.length()
                        ? "breaks off after character " + text.length()
                        : "is not understood at character "
                                + at
                                + ", from \""
                                + (rest.length() > 20 ? rest.substring(0, 20) + "…" : rest)
                                + "\"",
                "write moves and curves as in \"M0 0 C 0 1 1 1 1 0 Z\": one of the letters"
                        + " M L H V C S Q T A Z, then its numbers");
    }

    private static Refusal refusal(String what, String right) {
        return new Refusal(what, "SVG path", right);
    }

    /** What the parser hears, gathered as cubic pieces in the picture's own units, y down. */
    private static final class Pieces extends DefaultPathHandler {
        private final String text;
        private final List<double[]> cubics = new ArrayList<>();
        private int moves;
        private boolean closed;
        private double startX;
        private double startY;
        private double x;
        private double y;
        private double smoothX;
        private double smoothY;
        private char before = ' ';

        Pieces(String text) {
            this.text = text;
        }

        // The parser hands over single precision; the shortest decimal is what was written.
        private static double exact(float f) {
            return Double.parseDouble(Float.toString(f));
        }

        private void moveTo(double toX, double toY) {
            moves++;
            if (moves > 1) {
                int second = 0;
                for (int i = 0, seen = 0; i < text.length() && seen < 2; i++) {
                    if ("Mm".indexOf(text.charAt(i)) >= 0) {
                        seen++;
                        second = i + 1;
                    }
                }
                throw refusal(
                        "starts a second outline at character " + second,
                        "a hand draws one outline: keep a single M at the beginning");
            }
            startX = x = toX;
            startY = y = toY;
            before = 'M';
        }

        private void cubic(double x1, double y1, double x2, double y2, double x3, double y3) {
            if (moves == 0) {
                throw refusal("does not say where it starts", "begin with M and a point");
            }
            if (closed) {
                throw refusal("goes on after it is closed", "end with Z");
            }
            if (cubics.size() >= 399) {
                throw refusal("has more than 399 pieces", "draw it with fewer curves");
            }
            boolean point = x == x1 && x == x2 && x == x3 && y == y1 && y == y2 && y == y3;
            if (!point) {
                cubics.add(new double[] {x, y, x1, y1, x2, y2, x3, y3});
            }
            smoothX = 2 * x3 - x2;
            smoothY = 2 * y3 - y2;
            x = x3;
            y = y3;
            before = 'C';
        }

        private void line(double toX, double toY) {
            double dx = (toX - x) / 3;
            double dy = (toY - y) / 3;
            cubic(x + dx, y + dy, toX - dx, toY - dy, toX, toY);
            before = 'L';
        }

        private void quadratic(double cx, double cy, double toX, double toY) {
            double nextX = 2 * toX - cx;
            double nextY = 2 * toY - cy;
            cubic(
                    x + 2 * (cx - x) / 3,
                    y + 2 * (cy - y) / 3,
                    toX + 2 * (cx - toX) / 3,
                    toY + 2 * (cy - toY) / 3,
                    toX,
                    toY);
            smoothX = nextX;
            smoothY = nextY;
            before = 'Q';
        }

        @Override
        public void movetoAbs(float toX, float toY) {
            moveTo(exact(toX), exact(toY));
        }

        @Override
        public void movetoRel(float dx, float dy) {
            moveTo(x + exact(dx), y + exact(dy));
        }

        @Override
        public void closePath() {
            if (x != startX || y != startY) {
                line(startX, startY);
            }
            closed = true;
        }

        @Override
        public void linetoAbs(float toX, float toY) {
            line(exact(toX), exact(toY));
        }

        @Override
        public void linetoRel(float dx, float dy) {
            line(x + exact(dx), y + exact(dy));
        }

        @Override
        public void linetoHorizontalAbs(float toX) {
            line(exact(toX), y);
        }

        @Override
        public void linetoHorizontalRel(float dx) {
            line(x + exact(dx), y);
        }

        @Override
        public void linetoVerticalAbs(float toY) {
            line(x, exact(toY));
        }

        @Override
        public void linetoVerticalRel(float dy) {
            line(x, y + exact(dy));
        }

        @Override
        public void curvetoCubicAbs(float x1, float y1, float x2, float y2, float x3, float y3) {
            cubic(exact(x1), exact(y1), exact(x2), exact(y2), exact(x3), exact(y3));
        }

        @Override
        public void curvetoCubicRel(float x1, float y1, float x2, float y2, float x3, float y3) {
            cubic(
                    x + exact(x1),
                    y + exact(y1),
                    x + exact(x2),
                    y + exact(y2),
                    x + exact(x3),
                    y + exact(y3));
        }

        @Override
        public void curvetoCubicSmoothAbs(float x2, float y2, float x3, float y3) {
            boolean smooth = before == 'C';
            cubic(
                    smooth ? smoothX : x,
                    smooth ? smoothY : y,
                    exact(x2),
                    exact(y2),
                    exact(x3),
                    exact(y3));
        }

        @Override
        public void curvetoCubicSmoothRel(float x2, float y2, float x3, float y3) {
            boolean smooth = before == 'C';
            cubic(
                    smooth ? smoothX : x,
                    smooth ? smoothY : y,
                    x + exact(x2),
                    y + exact(y2),
                    x + exact(x3),
                    y + exact(y3));
        }

        @Override
        public void curvetoQuadraticAbs(float cx, float cy, float toX, float toY) {
            quadratic(exact(cx), exact(cy), exact(toX), exact(toY));
        }

        @Override
        public void curvetoQuadraticRel(float cx, float cy, float dx, float dy) {
            quadratic(x + exact(cx), y + exact(cy), x + exact(dx), y + exact(dy));
        }

        @Override
        public void curvetoQuadraticSmoothAbs(float toX, float toY) {
            boolean smooth = before == 'Q';
            quadratic(smooth ? smoothX : x, smooth ? smoothY : y, exact(toX), exact(toY));
        }

        @Override
        public void curvetoQuadraticSmoothRel(float dx, float dy) {
            boolean smooth = before == 'Q';
            quadratic(smooth ? smoothX : x, smooth ? smoothY : y, x + exact(dx), y + exact(dy));
        }

        @Override
        public void arcAbs(
                float rx,
                float ry,
                float turned,
                boolean large,
                boolean sweep,
                float toX,
                float toY) {
            arc(exact(rx), exact(ry), exact(turned), large, sweep, exact(toX), exact(toY));
        }

        @Override
        public void arcRel(
                float rx,
                float ry,
                float turned,
                boolean large,
                boolean sweep,
                float dx,
                float dy) {
            arc(exact(rx), exact(ry), exact(turned), large, sweep, x + exact(dx), y + exact(dy));
        }

        // From end points to centre and angles: SVG 1.1, F.6.5 and F.6.6.
        private void arc(
                double saidRx,
                double saidRy,
                double degrees,
                boolean large,
                boolean sweep,
                double toX,
                double toY) {
            double rx = Math.abs(saidRx);
            double ry = Math.abs(saidRy);
            if (rx == 0 || ry == 0 || (x == toX && y == toY)) {
                line(toX, toY);
                return;
            }
            double cos = Math.cos(Math.toRadians(degrees));
            double sin = Math.sin(Math.toRadians(degrees));
            double halfX = (x - toX) / 2;
            double halfY = (y - toY) / 2;
            double px = cos * halfX + sin * halfY;
            double py = cos * halfY - sin * halfX;
            double grow = Math.sqrt(px * px / (rx * rx) + py * py / (ry * ry));
            if (grow > 1) {
                rx *= grow;
                ry *= grow;
            }
            double below = rx * rx * py * py + ry * ry * px * px;
            double root = Math.sqrt(Math.max(0, rx * rx * ry * ry / below - 1));
            double sign = large == sweep ? -1 : 1;
            double mx = sign * root * rx * py / ry;
            double my = -sign * root * ry * px / rx;
            double centreX = cos * mx - sin * my + (x + toX) / 2;
            double centreY = sin * mx + cos * my + (y + toY) / 2;
            double from = Math.atan2((py - my) / ry, (px - mx) / rx);
            double turn = Math.atan2((-py - my) / ry, (-px - mx) / rx) - from;
            if (sweep && turn < 0) {
                turn += 2 * Math.PI;
            } else if (!sweep && turn > 0) {
                turn -= 2 * Math.PI;
            }
            int parts = Math.max(1, (int) Math.ceil(Math.abs(turn) / (Math.PI / 8) - 1e-9));
            double step = turn / parts;
            double reach = 4.0 / 3 * Math.tan(step / 4);
            for (int i = 0; i < parts; i++) {
                double a = from + i * step;
                double b = a + step;
                double ax = Math.cos(a) - reach * Math.sin(a);
                double ay = Math.sin(a) + reach * Math.cos(a);
                double bx = Math.cos(b) + reach * Math.sin(b);
                double by = Math.sin(b) - reach * Math.cos(b);
                boolean last = i == parts - 1;
                cubic(
                        centreX + cos * rx * ax - sin * ry * ay,
                        centreY + sin * rx * ax + cos * ry * ay,
                        centreX + cos * rx * bx - sin * ry * by,
                        centreY + sin * rx * bx + cos * ry * by,
                        last ? toX : centreX + cos * rx * Math.cos(b) - sin * ry * Math.sin(b),
                        last ? toY : centreY + sin * rx * Math.cos(b) + cos * ry * Math.sin(b));
            }
            before = 'A';
        }

        Drawn drawn(double targetRadius) {
            if (x != startX || y != startY) {
                line(startX, startY);
            }
            if (cubics.isEmpty()) {
                throw refusal("draws nothing", "add lines or curves after M");
            }
            double[] box = box();
            double middleX = (box[0] + box[1]) / 2;
            double middleY = (box[2] + box[3]) / 2;
            double far = 0;
            for (double[] c : cubics) {
                for (int i = 0; i <= 32; i++) {
                    far =
                            Math.max(
                                    far,
                                    Math.hypot(
                                            along(c, 0, i / 32.0) - middleX,
                                            along(c, 1, i / 32.0) - middleY));
                }
            }
            if (!(far > 0 && far < 1e9)) {
                throw refusal("is as large as " + far, "draw it between 0 and 1e9 units large");
            }
            double scale = targetRadius / far;
            List<Drawn.Cubic> pieces = new ArrayList<>();
            for (double[] c : cubics) {
                double[] p = new double[8];
                for (int i = 0; i < 8; i += 2) {
                    p[i] = (c[i] - middleX) * scale;
                    p[i + 1] = 0.0 - (c[i + 1] - middleY) * scale;
                }
                pieces.add(new Drawn.Cubic(p[0], p[1], p[2], p[3], p[4], p[5], p[6], p[7]));
            }
            return new Drawn(pieces);
        }

        /** Least and greatest x, then y, from the ends and from where a coordinate turns back. */
        private double[] box() {
            double[] box = {
                Double.MAX_VALUE, -Double.MAX_VALUE, Double.MAX_VALUE, -Double.MAX_VALUE
            };
            for (double[] c : cubics) {
                for (int axis = 0; axis < 2; axis++) {
                    double a = c[axis + 6] - 3 * c[axis + 4] + 3 * c[axis + 2] - c[axis];
                    double b = 2 * (c[axis + 4] - 2 * c[axis + 2] + c[axis]);
                    double d = c[axis + 2] - c[axis];
                    double root = Math.sqrt(Math.max(0, b * b - 4 * a * d));
                    double stable = -(b + (b < 0 ? -root : root)) / 2;
                    for (double t : new double[] {0, 1, stable / a, d / stable}) {
                        if (t >= 0 && t <= 1) {
                            double at = along(c, axis, t);
                            box[2 * axis] = Math.min(box[2 * axis], at);
                            box[2 * axis + 1] = Math.max(box[2 * axis + 1], at);
                        }
                    }
                }
            }
            return box;
        }

        private static double along(double[] c, int axis, double t) {
            double s = 1 - t;
            return s * s * s * c[axis]
                    + 3 * s * s * t * c[axis + 2]
                    + 3 * s * t * t * c[axis + 4]
                    + t * t * t * c[axis + 6];
        }
    }
}
