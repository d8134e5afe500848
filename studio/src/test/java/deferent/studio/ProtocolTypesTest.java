package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class ProtocolTypesTest {
    private static final Path KEPT =
            Path.of("src/main/resources/deferent/studio/page/protocol.d.ts");

    @Test
    void theTypesThePageIsCheckedAgainstAreThoseOfTheSchema() throws IOException {
        Path now =
                Files.writeString(Path.of("target/protocol.d.ts"), ProtocolTypes.of(Ask.schema()));
        assertThat(KEPT)
                .as("write it anew: cp studio/" + now + " studio/" + KEPT)
                .hasSameTextualContentAs(now);
    }
}
