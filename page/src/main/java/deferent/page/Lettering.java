package deferent.page;

import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;

/**
 * How words are set in a picture.
 *
 * @param size pixels
 */
public record Lettering(Face face, double size) {
    /** How long a line is. */
    double length(String line) {
        return face.width(face.known(line), size);
    }

    /** The same, or as much smaller as lets a line into the room; not below 0.45 of it. */
    Lettering fitted(String line, double room) {
        double length = length(line);
        return length <= room ? this : new Lettering(face, size * Math.max(0.45, room / length));
    }

    /** Writes a line from a point on, in the colour that is set. */
    public void write(Graphics2D g, String line, double x, double y) {
        if (g.getRenderingHint(Typesetter.KEY) instanceof Typesetter setter) {
            setter.set(g, face, size, line, x, y);
        } else {
            AffineTransform place = new AffineTransform(size, 0, 0, size, x, y);
            g.fill(place.createTransformedShape(face.outline(face.known(line))));
        }
    }

    /** Writes a line about a middle. */
    void centre(Graphics2D g, String line, double x, double y) {
        write(g, line, x - length(line) / 2, y + 0.36 * size);
    }
}
