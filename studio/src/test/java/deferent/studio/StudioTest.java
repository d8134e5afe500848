package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Refusal;
import java.net.ConnectException;
import java.net.Socket;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StudioTest {
    @TempDir Path shelf;

    @Test
    void onceClosedNobodyAnswersAndThePortIsFreeAgain() throws Exception {
        Studio studio = Studio.start(StudioOptions.of(shelf));
        int port = studio.port();
        new Socket("127.0.0.1", port).close();
        studio.close();
        assertThatThrownBy(() -> new Socket("127.0.0.1", port).close())
                .isInstanceOf(ConnectException.class);
        Studio again = Studio.start(StudioOptions.of(shelf).withPort(port));
        assertThat(again.port()).isEqualTo(port);
        again.close();
    }

    @Test
    void aPortThatIsTakenIsToldNotPassedOver() {
        Studio studio = Studio.start(StudioOptions.of(shelf));
        assertThatThrownBy(() -> Studio.start(StudioOptions.of(shelf).withPort(studio.port())))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("port " + studio.port() + ": is taken");
        studio.close();
    }
}
