package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.record.landing.Landing;
import deferent.record.landing.Scratch;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * A film or a sound that is read: in its place, or standard input, which is copied first where
 * nobody keeps it, since both are read more than once and from the middle.
 *
 * @param file where it lies
 * @param name as it is told of
 * @param scratch holds the copy
 */
record Incoming(Path file, String name, Optional<Scratch> scratch) implements AutoCloseable {
    /** Standard input, and standard output, as a file's name. */
    static final String STANDARD = "-";

    private static final int AT_ONCE = 1 << 20; // bytes

    static Incoming of(Path said, Manners manner) throws IOException {
        if (!said.toString().equals(STANDARD)) {
            if (!Files.exists(said)) {
                throw new NotFound("is not there", "file " + said, "give the path of a file");
            }
            return new Incoming(said, String.valueOf(said.getFileName()), Optional.empty());
        }
        Scratch scratch = Scratch.open();
        try {
            Path copy = scratch.folder().resolve("standard-input");
            try (Landing landing = Landing.at(copy)) {
                byte[] bytes = manner.in().readNBytes(AT_ONCE);
                while (bytes.length > 0) {
                    landing.write(bytes);
                    bytes = manner.in().readNBytes(AT_ONCE);
                }
                landing.land();
            }
            return new Incoming(copy, "standard input", Optional.of(scratch));
        } catch (IOException | RuntimeException failed) {
            scratch.close();
            throw failed;
        }
    }

    /** Standard input as text. */
    static String text(Manners manner, long most) {
        try {
            byte[] bytes = manner.in().readNBytes((int) Math.min(most + 1, Integer.MAX_VALUE - 8));
            if (bytes.length > most) {
                throw new Refusal(
                        "is more than " + most + " bytes",
                        "standard input",
                        "give a pattern document or a bundle of them");
            }
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException binary) {
            throw new Refusal("is not UTF-8 text", "standard input", "give a pattern document");
        } catch (IOException unreadable) {
            throw new NotMade(
                    "standard input cannot be read (" + unreadable.getMessage() + ")",
                    "give a file");
        }
    }

    /** Whether it is gone once it is read, so that nothing can know it again. */
    boolean passing() {
        return scratch.isPresent();
    }

    @Override
    public void close() {
        scratch.ifPresent(Scratch::close);
    }
}
