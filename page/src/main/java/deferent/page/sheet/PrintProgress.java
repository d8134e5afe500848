package deferent.page.sheet;

import java.util.function.Consumer;
import java.util.function.IntConsumer;

/**
 * How far printing has come.
 *
 * @param step what is being done
 * @param done of {@code all}
 * @param all things to do in this step
 */
public record PrintProgress(Step step, long done, long all) {
    /** What is done in turn. */
    public enum Step {
        COMPARING("pairs of patterns compared"),
        READING("patterns read"),
        PRINTING("pages printed");

        private final String words;

        Step(String words) {
            this.words = words;
        }
    }

    /** "3 of 12 patterns read". */
    public String told() {
        return done + " of " + all + " " + step.words;
    }

    /** Tells a listener how many of so many pages are printed. */
    static IntConsumer printing(Consumer<PrintProgress> listener, int all) {
        return page -> listener.accept(new PrintProgress(Step.PRINTING, page, all));
    }
}
