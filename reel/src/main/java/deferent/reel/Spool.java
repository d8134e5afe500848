package deferent.reel;

import java.io.IOException;

/** Takes the frames of a clip, in order, and writes them to its file. */
interface Spool<C extends Cel> extends AutoCloseable {
    /** An empty cel for this clip. */
    C cel();

    /** The next frame; the cel may be filled anew as soon as this returns. */
    void add(C cel, int frame) throws IOException;

    /** Writes what is still to be written, when the last frame was added. */
    void finish() throws IOException;

    /** Gives back what is held outside the heap, whether finished or not. */
    @Override
    void close();
}
