package deferent.page.sheet;

import deferent.page.Face;
import deferent.page.Palette;
import java.util.Optional;

/** Single lines of known length set by hand. */
final class HandSetLines {
    private HandSetLines() {}

    /** In the middle of a line whose top is given. */
    static Mark.Text at(
            String words,
            Face face,
            double size,
            Palette.Ink ink,
            double x,
            double top,
            double leading,
            Optional<Tag> tag) {
        double rise = (face.ascent() + face.descent()) * size;
        return new Mark.Text(
                face.known(words),
                face,
                size,
                ink,
                x,
                top + (leading - rise) / 2 + face.ascent() * size,
                tag);
    }
}
