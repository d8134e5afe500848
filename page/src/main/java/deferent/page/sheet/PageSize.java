package deferent.page.sheet;

import java.util.Locale;

/** Papers that printers hold, upright, in points of 1/72 inch. */
public enum PageSize {
    /** 210 mm by 297 mm (ISO 216). */
    A4(210 * 72 / 25.4, 297 * 72 / 25.4, "A4"),
    /** 8.5 inches by 11 inches. */
    LETTER(612, 792, "Letter");

    private final double width;
    private final double height;
    private final String said;

    PageSize(double width, double height, String said) {
        this.width = width;
        this.height = height;
        this.said = said;
    }

    public double width() {
        return width;
    }

    public double height() {
        return height;
    }

    /** As people say it: "A4", "Letter". */
    public String said() {
        return said;
    }

    /** As requests and options spell it: "a4", "letter". */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
