package deferent.reel;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Refusal;
import org.junit.jupiter.api.Test;

class NativesTest {
    @Test
    void whoseSoundCannotBeDecodedIsToldOfSoundAndNotOfClips() {
        assertThatCode(() -> Natives.needToHear("song.mp3", "")).doesNotThrowAnyException();
        Refusal told = Natives.unheard("(Some system: no such library)", "song.mp3", "take WAV");
        assertThatThrownBy(
                        () -> {
                            throw told;
                        })
                .hasMessageContaining("sound of song.mp3")
                .hasMessageContaining(
                        "the libraries that decode sound do not load on this machine (Some system:")
                .hasMessageContaining("take WAV")
                .hasMessageNotContainingAny("clip", "video", "film");
    }
}
