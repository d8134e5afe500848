package deferent.film.practice;

import deferent.motion.shared.Side;
import deferent.page.Face;
import deferent.page.Palette;
import deferent.page.Palette.Ink;
import deferent.record.Practice;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Practice over the weeks in a picture: a row a kind of thing that is off, each time a mark with
 * the stretch in which it lies by 90 %, the line in the middle being as meant; below, what the
 * heads drew the first time and the last. What colour tells, the mark's shape and a dash tell too.
 */
public final class WeeksPicture {
    /** Narrower ones would leave no room for the words. */
    public static final int NARROWEST = 320;

    public static final int USUAL = 900;

    private static final int MOST_ROWS = 6;
    private static final int ROOM = 560; // pixels; from here on words stand beside their row
    private static final int BESIDE = 230;
    private static final int ROW = 96;
    private static final int MARGIN = 18;
    private static final double SMALL = 13;
    private static final double PLAIN = 15;

    private final OverWeeks progress;
    private final List<OffKind> rows;
    private final int width;
    private final boolean wide;

    private WeeksPicture(OverWeeks progress, int width) {
        this.progress = progress;
        this.width = Math.max(NARROWEST, width);
        this.wide = this.width >= ROOM;
        List<OffKind> worth = progress.kinds().stream().filter(OffKind::worthSaying).toList();
        List<OffKind> shown = worth.isEmpty() ? progress.kinds() : worth;
        this.rows = shown.subList(0, Math.min(MOST_ROWS, shown.size()));
    }

    /** As an SVG document, so many pixels wide. */
    public static String svg(OverWeeks progress, int width, Palette.Theme theme) {
        WeeksPicture picture = new WeeksPicture(progress, width);
        SvgPen pen = new SvgPen(theme);
        picture.draw(pen);
        return pen.drawn(
                picture.width,
                picture.height(),
                progress.pattern() + ": " + progress.told().get(0).text());
    }

    /** As a PNG file's bytes. */
    public static byte[] png(OverWeeks progress, int width, Palette.Theme theme) {
        WeeksPicture picture = new WeeksPicture(progress, width);
        PixelPen pen = new PixelPen(picture.width, picture.height(), theme);
        picture.draw(pen);
        return pen.png();
    }

    private int row() {
        return wide ? ROW : ROW + 44;
    }

    private int figure() {
        return Math.min(360, (width - 3 * MARGIN) / 2);
    }

    private int height() {
        return MARGIN + rows.size() * row() + 34 + figure() + 40;
    }

    private void draw(Pen pen) {
        for (int i = 0; i < rows.size(); i++) {
            row(pen, rows.get(i), MARGIN + i * row());
        }
        double foot = MARGIN + rows.size() * row() + 6;
        days(pen, foot + 10);
        double top = foot + 28;
        figure(pen, progress.first(), MARGIN, top);
        if (progress.entries().size() > 1) {
            figure(pen, progress.last(), width - MARGIN - figure(), top);
        }
    }

    private double left() {
        return wide ? MARGIN + BESIDE : MARGIN + 6;
    }

    private double right() {
        return width - MARGIN - 6;
    }

    private double across(Practice practice) {
        long from = progress.first().date().getEpochSecond();
        long to = progress.last().date().getEpochSecond();
        if (to <= from) {
            int i = 0;
            while (!progress.entries().get(i).practice().equals(practice)) {
                i++;
            }
            int n = progress.entries().size();
            return n == 1 ? (left() + right()) / 2 : left() + (right() - left()) * i / (n - 1.0);
        }
        double share = (practice.date().getEpochSecond() - from) / (double) (to - from);
        return left() + (right() - left()) * share;
    }

    private static Ink ink(OffKind kind) {
        return kind.side().map(s -> s == Side.LEFT ? Ink.LEFT : Ink.RIGHT).orElse(Ink.TEXT);
    }

    private void row(Pen pen, OffKind kind, double top) {
        double words = wide ? 0 : 44;
        double middle = top + words + ROW / 2.0 - 6;
        String noun = kind.noun().substring(0, 1).toUpperCase(Locale.ROOT);
        pen.words(
                MARGIN,
                wide ? middle - 6 : top + 16,
                PLAIN,
                Ink.TEXT,
                0,
                noun + kind.noun().substring(1));
        pen.words(
                MARGIN,
                wide ? middle + 14 : top + 34,
                SMALL,
                Ink.QUIET,
                0,
                "now " + kind.table(kind.last()));
        double most = 1e-9;
        for (OffKind.Value value : kind.values()) {
            most = Math.max(most, Math.abs(value.value()) + OffKind.NINETY * value.error());
        }
        double scale = (ROW / 2.0 - 14) / most;
        pen.line(
                new double[][] {{left() - 6, middle}, {right() + 6, middle}},
                Ink.FAINT,
                1,
                false,
                false);
        Ink ink = ink(kind);
        boolean dashed = kind.side().filter(s -> s == Side.RIGHT).isPresent();
        List<double[]> line = new ArrayList<>();
        for (OffKind.Value value : kind.values()) {
            double x = across(value.practice());
            double y = middle - scale * value.value();
            double half = scale * OffKind.NINETY * value.error();
            pen.line(new double[][] {{x, y - half}, {x, y + half}}, ink, 1.5, false, false);
            pen.line(new double[][] {{x - 4, y - half}, {x + 4, y - half}}, ink, 1.5, false, false);
            pen.line(new double[][] {{x - 4, y + half}, {x + 4, y + half}}, ink, 1.5, false, false);
            line.add(new double[] {x, y});
        }
        pen.line(line.toArray(double[][]::new), ink, 1.2, dashed, false);
        for (int i = 0; i < line.size(); i++) {
            double[] at = line.get(i);
            pen.mark(at[0], at[1], kind.side(), ink, i == line.size() - 1);
        }
    }

    private void days(Pen pen, double y) {
        if (wide) {
            pen.words(MARGIN, y, SMALL, Ink.QUIET, 0, "the line is as meant");
        }
        if (progress.entries().size() == 1) {
            double x = (left() + right()) / 2;
            pen.words(x, y, SMALL, Ink.QUIET, 0.5, OverWeeks.day(progress.first()));
            return;
        }
        pen.words(left() - 6, y, SMALL, Ink.QUIET, 0, OverWeeks.day(progress.first()));
        pen.words(right() + 6, y, SMALL, Ink.QUIET, 1, OverWeeks.day(progress.last()));
    }

    // Both in one scale, so that what grew is seen to have grown.
    private double pixels() {
        double most = 0.1;
        for (Practice practice : List.of(progress.first(), progress.last())) {
            for (Side side : Side.values()) {
                Practice.Track head = practice.head(side);
                for (int i = 0; i < head.x().size(); i++) {
                    most = Math.max(most, Math.abs(head.x().get(i)));
                    most = Math.max(most, Math.abs(head.y().get(i)));
                }
            }
        }
        return (figure() / 2.0 - 8) / most;
    }

    private void figure(Pen pen, Practice practice, double left, double top) {
        double middleX = left + figure() / 2.0;
        double middleY = top + figure() / 2.0;
        double scale = pixels();
        for (Side side : Side.values()) {
            Practice.Track head = practice.head(side);
            double[][] points = new double[head.x().size()][];
            for (int i = 0; i < points.length; i++) {
                // The performer faces the camera: their left is the picture's right.
                points[i] =
                        new double[] {
                            middleX + scale * head.x().get(i), middleY - scale * head.y().get(i)
                        };
            }
            Ink ink = side == Side.LEFT ? Ink.LEFT : Ink.RIGHT;
            pen.line(points, ink, 2.4, side == Side.RIGHT, true);
            pen.mark(points[0][0], points[0][1], Optional.of(side), ink, true);
        }
        String day = OverWeeks.day(practice);
        String name =
                practice.name().equals(practice.pattern()) ? day : practice.name() + ", " + day;
        String fitted = Face.REGULAR.fitted(Face.REGULAR.known(name), SMALL, figure());
        pen.words(middleX, top + figure() + 22, SMALL, Ink.QUIET, 0.5, fitted);
    }
}
