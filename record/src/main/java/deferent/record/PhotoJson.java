package deferent.record;

import deferent.reading.photo.PhotoReading;
import deferent.record.number.PhotoTables;
import tools.jackson.databind.node.ObjectNode;

/**
 * A photo reading as JSON, in the manner of {@link ReadingsJson}: lengths end in _m, times in _s.
 */
public final class PhotoJson {
    private PhotoJson() {}

    public static String write(PhotoReading photo) {
        return PrettyJson.text(tree(photo));
    }

    /** The reading as a tree, to be part of a larger answer. */
    public static ObjectNode tree(PhotoReading photo) {
        return PhotoTables.PHOTO.json(photo);
    }
}
