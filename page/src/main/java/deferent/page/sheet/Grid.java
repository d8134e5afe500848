package deferent.page.sheet;

/**
 * Where things stand on every page: margins, a foot, and columns with a gutter between them.
 *
 * @param size of the paper
 */
record Grid(PageSize size) {
    static final double GUTTER = 22;
    private static final double SIDE = 48;
    private static final double TOP = 44;
    private static final double BOTTOM = 32;
    private static final double FOOT = 13;

    Box margins() {
        return new Box(SIDE, TOP, size.width() - 2 * SIDE, size.height() - TOP - BOTTOM);
    }

    Box foot() {
        Box all = margins();
        return new Box(all.x(), all.bottom() - FOOT, all.width(), FOOT);
    }

    /** What is left for contents. */
    Box body() {
        Box all = margins();
        return new Box(all.x(), all.y(), all.width(), all.height() - FOOT - 12);
    }

    /** Column i of so many, from y down. */
    Box column(int i, int of, double y, double height) {
        Box all = margins();
        double width = columnWidth(of);
        return new Box(all.x() + i * (width + GUTTER), y, width, height);
    }

    double columnWidth(int of) {
        return (margins().width() - (of - 1) * GUTTER) / of;
    }
}
