package deferent.record.api;

import deferent.record.Kept;
import deferent.record.PatternDocument;
import deferent.record.Shelf;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * The shelf: a folder of pattern documents, one file each, the same that the program uses. Several
 * programs may have it open at once; a file is whole or not there.
 */
public final class PatternShelf {
    private final Shelf shelf;

    private PatternShelf(Shelf shelf) {
        this.shelf = shelf;
    }

    /**
     * The shelf in a folder.
     *
     * @param folder where it is; made with the first document where it is not there
     * @return the shelf
     */
    public static PatternShelf at(Path folder) {
        return new PatternShelf(Shelf.at(folder));
    }

    /**
     * The names of its patterns.
     *
     * @return by file; files that cannot be read are passed over
     * @throws deferent.motion.shared.Refused where the folder cannot be read
     */
    public List<String> names() {
        return shelf.look().patterns().stream().map(PatternDocument::name).toList();
    }

    /**
     * The pattern of a name.
     *
     * @param name in any case of letters, or its file's name without ".json"
     * @return empty where there is none, or something else than a pattern has that name
     * @throws deferent.motion.shared.Refused where it cannot be read
     */
    public Optional<PatternFile> find(String name) {
        return shelf.find(name)
                .map(Kept::document)
                .filter(PatternDocument.class::isInstance)
                .map(PatternDocument.class::cast)
                .map(PatternFile::new);
    }

    /**
     * Keeps a pattern in a new file. What is there already is never written over.
     *
     * @param pattern what is kept
     * @return the file, named after the pattern
     * @throws deferent.motion.shared.Refused where it cannot be written
     */
    public Path keep(PatternFile pattern) {
        return shelf.file(shelf.saveNew(pattern.document()).id());
    }
}
