package deferent.page.sheet;

import deferent.page.Face;
import deferent.page.Palette.Ink;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The line at the foot of a page.
 *
 * @param words at its left, cut where they are too long
 * @param page at its right, where pages are numbered
 */
record Foot(String words, OptionalInt page) {
    static final double SIZE = 7.6;
    private static final double NUMBER = 9;

    static Foot of(String words) {
        return new Foot(words, OptionalInt.empty());
    }

    Foot on(int number) {
        return new Foot(words, OptionalInt.of(number));
    }

    /** The words with a capital, where they stand alone. */
    static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    Block block(Grid grid) {
        Box box = grid.foot();
        double baseline = box.bottom() - Face.BOLD.descent() * NUMBER;
        List<Mark> marks = new ArrayList<>();
        String number = page.isPresent() ? Integer.toString(page.getAsInt()) : "";
        double length = Face.BOLD.width(number, NUMBER);
        String left =
                Face.REGULAR.fitted(Face.REGULAR.known(words), SIZE, box.width() - length - 12);
        if (!left.isEmpty()) {
            marks.add(
                    new Mark.Text(
                            left,
                            Face.REGULAR,
                            SIZE,
                            Ink.QUIET,
                            box.x(),
                            baseline,
                            Optional.empty()));
        }
        if (!number.isEmpty()) {
            marks.add(
                    new Mark.Text(
                            number,
                            Face.BOLD,
                            NUMBER,
                            Ink.TEXT,
                            box.right() - length,
                            baseline,
                            Optional.empty()));
        }
        return new Block("foot", box, marks);
    }
}
