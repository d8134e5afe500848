package deferent.page;

import deferent.motion.shared.Side;

/** One of the four moving points of a trace: a side's hand or its head. */
public record Track(Side side, End end) {
    /** Which end of the tether. */
    public enum End {
        HAND("hand"),
        HEAD("head");

        private final String word;

        End(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    public static Track hand(Side side) {
        return new Track(side, End.HAND);
    }

    public static Track head(Side side) {
        return new Track(side, End.HEAD);
    }

    /** "left.head". */
    public String key() {
        return side.word() + "." + end.word();
    }
}
