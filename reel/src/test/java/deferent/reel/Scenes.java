package deferent.reel;

import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import deferent.page.Palette;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.View;
import java.util.List;

/** Scenes to film. */
final class Scenes {
    private Scenes() {}

    static Scene of(String phrase) {
        return Scene.of(Trace.of(Phrase.parse(phrase).pairing()));
    }

    static Scene isolationWithFourPetals() {
        return of("isolation vs four-petal antispin");
    }

    static Still still(int width, int height) {
        return new Still(View.AUDIENCE, 0, width, height, Palette.Theme.LIGHT, false, List.of());
    }
}
