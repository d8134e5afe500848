package deferent.page.api;

import deferent.motion.api.TwoPoi;
import deferent.motion.api.opened.Opened;
import deferent.motion.trace.Trace;
import deferent.page.Palette;
import deferent.page.Png;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.Svg;
import deferent.page.sheet.Pdf;

/**
 * A picture of a pairing as its audience sees it: both figures, and hands, tethers and heads at one
 * moment. On a light ground, 720 by 720, at the start of the cycle, until it is asked for
 * otherwise. Immutable.
 */
public final class PairingPicture {
    private final Scene scene;
    private final Still still;

    private PairingPicture(Scene scene, Still still) {
        this.scene = scene;
        this.still = still;
    }

    /**
     * A picture.
     *
     * @param pairing what is spun
     * @return the picture of it
     */
    public static PairingPicture of(TwoPoi pairing) {
        return new PairingPicture(Scene.of(Trace.of(Opened.pairing(pairing))), Still.square(720));
    }

    /**
     * The same in another size.
     *
     * @param width 48 to 16384: pixels, or points of a PDF, which has at most 14400
     * @param height as many
     * @return the other picture
     * @throws deferent.motion.shared.Refused where that is too small or too large
     */
    public PairingPicture sized(int width, int height) {
        return new PairingPicture(scene, still.sized(width, height));
    }

    /**
     * The same at another moment.
     *
     * @param time seconds from the start of the cycle
     * @return the other picture
     * @throws deferent.motion.shared.Refused where that is no number
     */
    public PairingPicture at(double time) {
        return new PairingPicture(scene, still.at(time));
    }

    /**
     * The same on a dark ground.
     *
     * @return the other picture
     */
    public PairingPicture dark() {
        return new PairingPicture(scene, still.with(Palette.Theme.DARK));
    }

    /**
     * The same without a ground.
     *
     * @return the other picture; a PDF of it is as the paper is
     */
    public PairingPicture clear() {
        return new PairingPicture(scene, still.clear());
    }

    /**
     * As SVG.
     *
     * @return the document
     */
    public String svg() {
        return Svg.of(scene, still);
    }

    /**
     * As PNG.
     *
     * @return the file's bytes
     */
    public byte[] png() {
        return Png.of(scene, still);
    }

    /**
     * As PDF: one page, lines and curves at any size, with words for those who cannot see it.
     *
     * @return the file's bytes
     * @throws deferent.motion.shared.Refused where it is larger than PDF pages are
     */
    public byte[] pdf() {
        return Pdf.still(scene, still);
    }
}
