package deferent.tell;

/**
 * One sentence of a reading.
 *
 * @param key which reading it says, such as "link.left" or "reach.right"; the same key in every
 *     language of the tool
 * @param tone how to take it
 * @param text the sentence, plain words, no mark-up
 * @param why where it comes from: the numbers and the reason
 */
public record Told(String key, Tone tone, String text, String why) {
    /** How to take a sentence. */
    public enum Tone {
        GOOD,
        NOTE,
        WARN,
        /** What can hurt; it stands first on every face. */
        DANGER
    }
}
