package deferent.motion.trade;

/**
 * What a row of the table calls a motion that it recognises.
 *
 * @param name which motion it is, not its sizes: "cat-eye tilted 30°"
 * @param words the start of a phrase that says it, sizes to follow: "cat-eye"
 */
public record Call(String name, String words) {
    static Call of(String name) {
        return new Call(name, name);
    }
}
