package deferent.record;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** By which a film or a sound is known again: SHA-256 (FIPS 180-4) of all its bytes. */
public final class Fingerprint {
    private static final int PIECE = 1 << 16;

    private Fingerprint() {}

    /** 64 hexadecimal digits in lower case. Reads the file once, piece by piece. */
    public static String of(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            byte[] piece = new byte[PIECE];
            for (int read = in.read(piece); read >= 0; read = in.read(piece)) {
                digest.update(piece, 0, read);
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException none) {
            throw new IllegalStateException("every JDK has SHA-256", none);
        }
    }
}
