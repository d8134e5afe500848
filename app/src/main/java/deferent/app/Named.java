package deferent.app;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Phrase;
import deferent.motion.phrase.PhraseError;
import deferent.motion.shared.Side;
import deferent.reading.body.Performer;
import deferent.record.Document;
import deferent.record.Kept;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import deferent.record.SetDocument;
import deferent.record.ShelfError;
import deferent.record.SongDocument;
import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * The pattern that a text names: a phrase, a pattern document's file, or a name on the shelf.
 *
 * @param text what was said
 * @param shelf where names are looked up, and the user's own words for phrases
 * @param tether of all hands; unsaid, a phrase takes the usual one and a document keeps its own
 */
record Named(String text, ShelfOption shelf, Optional<Tether> tether) {
    private static final long MOST_BYTES = 4L * PatternJson.MOST_BUNDLE_CHARACTERS;

    PatternDocument pattern() {
        if (text.equals(Incoming.STANDARD)) {
            return read(Path.of(text));
        }
        Optional<Path> file = file(text);
        if (file.isPresent()) {
            return read(file.get());
        }
        try {
            Pairing pairing = Phrase.parse(text, shelf.words()).with(tether.orElse(Tether.USUAL));
            return named(text, pairing).withPhrase(Optional.of(text));
        } catch (PhraseError noPhrase) {
            Kept kept = kept().orElseThrow(() -> new NotNamed(noPhrase, near()));
            return agreed(pattern(kept.document(), kept.id()), kept.id());
        }
    }

    /** A shelf that cannot be read has been told of as such, and holds no such name. */
    private Optional<Kept> kept() {
        try {
            return shelf.shelf().find(text);
        } catch (ShelfError unreadable) {
            if (unreadable.kind() == ShelfError.Kind.FOLDER) {
                return Optional.empty();
            }
            throw unreadable;
        }
    }

    /** Names on the shelf that are spelt nearly so. */
    private List<String> near() {
        try {
            return NotFound.near(text, shelf.names());
        } catch (ShelfError unreadable) {
            return List.of();
        }
    }

    private PatternDocument agreed(PatternDocument pattern, String where) {
        pattern.disagreement(shelf.words())
                .ifPresent(told -> shelf.tell(where + ": " + told + "."));
        return tethered(pattern);
    }

    private static PatternDocument named(String phrase, Pairing pairing) {
        String name = phrase.length() > 120 ? phrase.substring(0, 119) + "…" : phrase;
        return PatternDocument.of(name, pairing, Performer.USUAL);
    }

    /** The file of that name, where the text looks like one or is one. */
    private static Optional<Path> file(String text) {
        try {
            Path path = Path.of(text);
            return text.endsWith(".json") || Files.isRegularFile(path)
                    ? Optional.of(path)
                    : Optional.empty();
        } catch (InvalidPathException noFile) {
            return Optional.empty();
        }
    }

    /** A file's text. */
    static String contents(Path file, Manners manner) {
        if (file.toString().equals(Incoming.STANDARD)) {
            return Incoming.text(manner, MOST_BYTES);
        }
        if (!Files.isRegularFile(file)) {
            throw new NotFound("is not there", "file " + file, "give the path of a file");
        }
        try {
            if (Files.size(file) > MOST_BYTES) {
                throw new Refusal(
                        "is " + Files.size(file) + " bytes long",
                        "file " + file,
                        "give a pattern document or a bundle of them");
            }
            return Files.readString(file);
        } catch (MalformedInputException binary) {
            throw new Refusal("is not UTF-8 text", "file " + file, "give a pattern document");
        } catch (IOException unreadable) {
            throw new NotMade(
                    file + " cannot be read (" + unreadable.getClass().getSimpleName() + ")",
                    "see that it is yours to read");
        }
    }

    private PatternDocument read(Path file) {
        String contents = contents(file, shelf.manner());
        try {
            return agreed(
                    pattern(PatternJson.read(contents, shelf.words()), file.toString()),
                    file.toString());
        } catch (deferent.record.DocumentError wrong) {
            throw wrong.in(file.toString());
        }
    }

    private static PatternDocument pattern(Document document, String where) {
        if (document instanceof PatternDocument pattern) {
            return pattern;
        }
        if (document instanceof SetDocument set) {
            throw new Refusal(
                    "is a set, not a pattern",
                    "\"" + where + "\"",
                    "name one of its patterns, or ask deferent set \"" + set.name() + "\"");
        }
        if (document instanceof SongDocument) {
            throw new Refusal(
                    "is a song, not a pattern",
                    "\"" + where + "\"",
                    "name a pattern, or a set that goes to it");
        }
        throw new Refusal(
                "is a motion of one hand, not a pattern of two",
                "\"" + where + "\"",
                "say it in a phrase: " + document.name() + " vs ...");
    }

    private PatternDocument tethered(PatternDocument pattern) {
        if (tether.isEmpty()) {
            return pattern;
        }
        Pairing pairing = pattern.pairing();
        for (Side side : Side.values()) {
            Part part = pairing.part(side);
            pairing = pairing.with(side, part.with(tether.get()));
        }
        return pattern.withPairing(pairing);
    }
}
