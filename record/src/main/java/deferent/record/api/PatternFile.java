package deferent.record.api;

import deferent.motion.api.TwoPoi;
import deferent.motion.api.opened.Opened;
import deferent.motion.phrase.Lexicon;
import deferent.reading.body.Performer;
import deferent.reading.worked.Detail;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import deferent.record.ReadingsJson;
import deferent.search.whole.Readings;

/**
 * A pattern document: a pairing under a name, with a note, the performer and the poi it is read
 * for. Immutable.
 */
public final class PatternFile {
    private final PatternDocument document;

    PatternFile(PatternDocument document) {
        this.document = document;
    }

    PatternDocument document() {
        return document;
    }

    /**
     * A new document, for a performer and poi of usual sizes.
     *
     * @param name how it is called, one line
     * @param pairing what is spun
     * @return the document, with the phrase that says the pairing where there is one
     * @throws deferent.motion.shared.Refused where that cannot be a name
     */
    public static PatternFile of(String name, TwoPoi pairing) {
        return new PatternFile(
                PatternDocument.of(name, Opened.pairing(pairing), Performer.USUAL)
                        .saying(Opened.pairing(pairing), Lexicon.EMPTY));
    }

    /**
     * Reads a document.
     *
     * @param json its text
     * @return the document; keys of other programs stay in it
     * @throws deferent.motion.shared.Refused where it is no pattern document, or says what cannot
     *     be
     */
    public static PatternFile read(String json) {
        return new PatternFile(PatternJson.readPattern(json));
    }

    /**
     * The document's text.
     *
     * @return JSON, which {@link #read} reads back and {@link #schema} describes
     */
    public String json() {
        return PatternJson.write(document);
    }

    /**
     * How it is called.
     *
     * @return the name
     */
    public String name() {
        return document.name();
    }

    /**
     * What was written to it.
     *
     * @return free text; may be empty
     */
    public String note() {
        return document.note();
    }

    /**
     * The same with another note.
     *
     * @param note free text; may be empty
     * @return the other document; this one stays as it is
     * @throws deferent.motion.shared.Refused where it is too long
     */
    public PatternFile withNote(String note) {
        return new PatternFile(document.withNote(note));
    }

    /**
     * The pairing that it holds.
     *
     * @return the pairing with all its sizes
     */
    public TwoPoi pairing() {
        return Opened.closed(document.pairing());
    }

    /**
     * All that is read of it: links, reach, room, pull, steadiness, dangers. Takes a second or
     * more.
     *
     * <p>Dangers and cautions warn; that none is told is no permission.
     *
     * @return JSON, which {@link #readingsSchema} describes; a reading that could not be worked out
     *     stands there with its reason
     */
    public String readings() {
        return ReadingsJson.write(
                Readings.of(
                        document.pairing(),
                        document.performer(),
                        document.kit(),
                        Detail.SETTLED,
                        Lexicon.EMPTY));
    }

    /**
     * What documents look like.
     *
     * @return a JSON Schema, draft 2020-12
     */
    public static String schema() {
        return PatternJson.schema();
    }

    /**
     * What readings look like.
     *
     * @return a JSON Schema, draft 2020-12
     */
    public static String readingsSchema() {
        return ReadingsJson.schema();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PatternFile file && document.equals(file.document);
    }

    @Override
    public int hashCode() {
        return document.hashCode();
    }

    @Override
    public String toString() {
        return name();
    }
}
