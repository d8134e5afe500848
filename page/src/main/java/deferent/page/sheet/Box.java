package deferent.page.sheet;

/**
 * A rectangle on a page, in points from the page's upper left corner, y downward.
 *
 * @param x of its left edge
 * @param y of its upper edge
 * @param width 0 or more
 * @param height 0 or more
 */
public record Box(double x, double y, double width, double height) {
    public double right() {
        return x + width;
    }

    public double bottom() {
        return y + height;
    }

    /** Whether another lies in this one, give or take {@code slack} points. */
    public boolean holds(Box other, double slack) {
        return other.x >= x - slack
                && other.y >= y - slack
                && other.right() <= right() + slack
                && other.bottom() <= bottom() + slack;
    }

    /** Whether the two share more than a strip {@code slack} points wide. */
    public boolean overlaps(Box other, double slack) {
        return Math.min(right(), other.right()) - Math.max(x, other.x) > slack
                && Math.min(bottom(), other.bottom()) - Math.max(y, other.y) > slack;
    }

    /** The same with {@code by} points less on every side. */
    Box inset(double by) {
        return new Box(x + by, y + by, width - 2 * by, height - 2 * by);
    }

    /** The greatest square in it, in its middle. */
    Box square() {
        double edge = Math.min(width, height);
        return new Box(x + (width - edge) / 2, y + (height - edge) / 2, edge, edge);
    }
}
