package deferent.reel;

/**
 * How far a clip is.
 *
 * @param done frames written so far
 * @param all frames the clip will have
 */
public record ClipProgress(int done, int all) {}
