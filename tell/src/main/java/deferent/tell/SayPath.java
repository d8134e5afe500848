package deferent.tell;

import deferent.reading.link.PathKind;

/** Says what kind of path one is. */
final class SayPath {
    private SayPath() {}

    /** What goes along it does: "goes round a circle". */
    static String goes(PathKind path) {
        return switch (path.sort()) {
            case POINT -> "stays still";
            case LINE -> "goes along a line";
            case CIRCLE -> "goes round a circle";
            case ARC -> "goes along an arc";
            case FIGURE -> "draws a figure";
        };
    }

    /** "smaller", "longer": the first's size beside another's of its sort. */
    static String against(PathKind path, PathKind other) {
        boolean less = path.size() < other.size();
        return path.sort() == PathKind.Sort.LINE
                ? (less ? "shorter" : "longer")
                : (less ? "smaller" : "larger");
    }

    /** "circle (radius 30 cm)", "line (60 cm long)". */
    static String sized(PathKind path) {
        return path.noun()
                + switch (path.sort()) {
                    case POINT -> "";
                    case LINE -> " (" + Say.length(2 * path.size()) + " long)";
                    case CIRCLE, ARC -> " (radius " + Say.length(path.size()) + ")";
                    case FIGURE -> " (" + Say.length(2 * path.size()) + " across)";
                };
    }
}
