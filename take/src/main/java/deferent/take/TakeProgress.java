package deferent.take;

import deferent.page.sheet.PrintProgress;

/**
 * How far the writing of a file has come.
 *
 * @param share done, 0 to 1
 * @param told in words: "frame 12 of 60"
 */
public record TakeProgress(double share, String told) {
    static TakeProgress of(PrintProgress at) {
        return new TakeProgress((double) at.done() / Math.max(1, at.all()), at.told());
    }
}
