package deferent.take;

import deferent.motion.pairing.Refusal;
import java.util.OptionalDouble;

/** An ending that takes away what a film shows, or the film itself with something over it. */
interface FilmEnding extends Ending {
    /** The moment wished for, seconds into the film; empty where none is. */
    static OptionalDouble moment(Take take) {
        String said = take.wishes().text(Wish.AT).orElse("").strip();
        if (said.isEmpty()) {
            return OptionalDouble.empty();
        }
        double end = take.filmed().reading().measured().seconds();
        try {
            double moment = Double.parseDouble(said.replaceFirst("\\s*s$", ""));
            if (moment >= 0 && moment <= end) {
                return OptionalDouble.of(moment);
            }
        } catch (NumberFormatException none) {
            throw seconds(said, end);
        }
        throw seconds(said, end);
    }

    private static Refusal seconds(String said, double end) {
        return new Refusal(
                "is \"" + said + "\"",
                "at",
                String.format(
                        java.util.Locale.ROOT,
                        "give seconds into the film, from 0 to %.1f, such as 2.3s",
                        end));
    }
}
