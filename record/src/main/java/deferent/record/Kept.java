package deferent.record;

/**
 * A document as it stands on the shelf.
 *
 * @param id its place on the shelf, the file's name without ".json"
 * @param revision a hash of the file's bytes; give it back when saving, so that nobody's change in
 *     between is lost
 */
public record Kept(String id, String revision, Document document) {}
