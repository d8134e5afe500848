package deferent.reel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Rate;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.StillForm;
import java.util.List;
import org.junit.jupiter.api.Test;

class ClipTest {
    private static final Scene SCENE = Scenes.isolationWithFourPetals();

    @Test
    void sizesThatNoPlayerTakesAreRefusedWithTheNearestThatAre() {
        assertThatThrownBy(() -> Clip.of(SCENE, Scenes.still(641, 480), Kind.MP4))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("width of a clip: is 641 pixels")
                .hasMessageContaining("640 or 642");
        assertThatThrownBy(() -> Clip.of(SCENE, Scenes.still(4096, 480), Kind.WEBM))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("at most 3840");
        assertThatThrownBy(() -> Clip.of(SCENE, Scenes.still(3840, 3840), Kind.GIF))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("2880 by 2880");
        assertThat(Clip.of(SCENE, Scenes.still(641, 481), Kind.WEBP).frames()).isPositive();
        assertThat(Clip.of(SCENE, Scenes.still(2160, 3840), Kind.MP4).frames()).isPositive();
    }

    @Test
    void aTransparentClipNeedsAKindThatKnowsTransparency() {
        for (Kind kind : Kind.values()) {
            if (kind.has(Kind.Trait.ALPHA)) {
                assertThat(Clip.of(SCENE, Scenes.still(64, 64).clear(), kind).kind())
                        .isEqualTo(kind);
            } else {
                assertThatThrownBy(() -> Clip.of(SCENE, Scenes.still(64, 64).clear(), kind))
                        .isInstanceOf(Refusal.class)
                        .hasMessageContaining("webm");
            }
        }
    }

    @Test
    void aGifFasterThanBrowsersShowItIsRefused() {
        assertThatThrownBy(() -> Clip.of(SCENE, Scenes.still(64, 64), Kind.GIF).at(Rate.SIXTY))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("at most 50");
    }

    @Test
    void aPictureThatStandsStillIsNoClip() {
        Still strip = Scenes.still(320, 160).with(StillForm.STRIP);
        assertThatThrownBy(() -> Clip.of(SCENE, strip, Kind.MP4))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("stands still");
    }

    @Test
    void absurdRatesAreRefused() {
        Clip clip = Clip.of(SCENE, Scenes.still(64, 64), Kind.MP4);
        for (Rate rate :
                List.of(new Rate(1, 2), new Rate(1000, 1), new Rate(33_333_333, 1_000_000))) {
            assertThatThrownBy(() -> clip.at(rate))
                    .isInstanceOf(Refusal.class)
                    .hasMessageContaining("frame rate")
                    .hasMessageContaining("59.94");
        }
    }

    @Test
    void absurdCountsAndTemposAreRefused() {
        Clip clip = Clip.of(SCENE, Scenes.still(64, 64), Kind.MP4);
        assertThatThrownBy(() -> clip.cycles(0)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> clip.at(Rate.of(1000)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("29.97");
        assertThatThrownBy(() -> clip.slow(0)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> clip.slow(Double.NaN)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> clip.filling(-1)).isInstanceOf(Refusal.class);
    }

    @Test
    void tenSecondsAreFilledWithWholeCycles() {
        Clip clip = Clip.of(SCENE, Scenes.still(64, 64), Kind.MP4).filling(10);
        assertThat(clip.seconds()).isBetween(9.0, 11.0);
    }
}
