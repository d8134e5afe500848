package deferent.take;

/**
 * How far the writing of a file has come.
 *
 * @param share done, 0 to 1
 * @param told in words: "frame 12 of 60"
 */
public record TakeProgress(double share, String told) {}
