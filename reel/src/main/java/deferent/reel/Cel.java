package deferent.reel;

import java.awt.image.BufferedImage;
import java.io.IOException;

/**
 * One painted frame on its way into a clip, named after the sheet that a frame of drawn film is
 * painted on; used again and again.
 */
interface Cel extends AutoCloseable {
    /**
     * Takes a painted frame over, in the form the clip wants. Called by whichever thread painted
     * it.
     */
    void take(BufferedImage painted) throws IOException;

    @Override
    void close();
}
