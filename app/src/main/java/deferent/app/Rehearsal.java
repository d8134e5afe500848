package deferent.app;

import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;

/**
 * Runs common command lines for nobody, so that the classes they load can be kept in an archive and
 * the next start is quick.
 */
final class Rehearsal {
    private Rehearsal() {}

    public static void main(String[] args) {
        OutputStream nobody = OutputStream.nullOutputStream();
        // A folder that is not there: the shelf is looked for and found empty.
        String shelf = Path.of(System.getProperty("java.io.tmpdir"), "no-shelf-here").toString();
        String[][] lines = {
            {"read", "isolation vs four-petal antispin", "--shelf", shelf},
            {"read", "pendulum vs CAP", "--json", "--tether", "55cm", "--shelf", shelf},
            {"read", "isolashun", "--shelf", shelf},
            {"words", "CAP", "--shelf", shelf},
            {"shelf", "list", "--shelf", shelf},
            {"--help"}
        };
        for (String[] line : lines) {
            Deferent.execute(InputStream.nullInputStream(), nobody, nobody, line);
        }
    }
}
