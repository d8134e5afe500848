package deferent.page.sheet;

import java.util.Optional;

/**
 * What a mark is to somebody who has the page read aloud or goes from heading to heading: an
 * element of the document's structure (PDF 1.7, 14.8.4). Marks of one tag belong together, from row
 * to row and page to page; tags are told apart as objects. Marks without one are decoration.
 */
public final class Tag {
    /** Kinds of element, by the names that PDF has for them. */
    public enum Kind {
        TITLE("H1"),
        HEADING("H2"),
        PARAGRAPH("P"),
        LIST("L"),
        ITEM("LI"),
        SIGN("Lbl"),
        SAID("LBody"),
        TABLE("Table"),
        ROW("TR"),
        HEAD("TH"),
        CELL("TD"),
        CONTENTS("TOC"),
        ENTRY("TOCI"),
        LINK("Link"),
        FIGURE("Figure");

        private final String type;

        Kind(String type) {
            this.type = type;
        }

        String type() {
            return type;
        }
    }

    private final Kind kind;
    private final Optional<Tag> within;
    private final String said;

    private Tag(Kind kind, Optional<Tag> within, String said) {
        this.kind = kind;
        this.within = within;
        this.said = said;
    }

    static Tag of(Kind kind) {
        return new Tag(kind, Optional.empty(), "");
    }

    static Tag of(Kind kind, Tag within) {
        return new Tag(kind, Optional.of(within), "");
    }

    /**
     * A picture.
     *
     * @param said what is seen in it
     */
    static Tag figure(String said) {
        return new Tag(Kind.FIGURE, Optional.empty(), said);
    }

    /** A place that leads elsewhere. */
    static Tag link(Tag within, String where) {
        return new Tag(Kind.LINK, Optional.of(within), where);
    }

    public Kind kind() {
        return kind;
    }

    Optional<Tag> within() {
        return within;
    }

    /** Of a picture, what is seen in it; of a link, where it leads; else empty. */
    public String said() {
        return said;
    }

    @Override
    public String toString() {
        return kind + (said.isEmpty() ? "" : " " + said);
    }
}
