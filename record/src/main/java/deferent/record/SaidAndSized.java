package deferent.record;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Plain;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Size;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.MotionWords;
import deferent.motion.phrase.Phrase;
import deferent.motion.phrase.PhraseError;
import deferent.motion.shared.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Whether a phrase kept with a pairing says that pairing. */
final class SaidAndSized {
    /** Less is what arithmetic leaves behind: metres, radians, cycles. */
    private static final double SAME = 1e-6;

    private static final int MOST = 3;

    private SaidAndSized() {}

    /**
     * What they disagree in, and what counts; empty where they agree or the phrase says nothing.
     */
    static Optional<String> disagreement(String phrase, Pairing sized, Lexicon lexicon) {
        try {
            Phrase parsed = Phrase.parse(phrase, lexicon);
            // What the phrase leaves unsaid goes by the pairing's own tethers.
            Pairing said =
                    parsed.with(sized.left().tether())
                            .with(Side.RIGHT, parsed.with(sized.right().tether()).part(Side.RIGHT));
            return said.equals(sized) ? Optional.empty() : told(differences(said, sized, lexicon));
        } catch (PhraseError | Refusal noPhrase) {
            return Optional.empty();
        }
    }

    private static List<String> differences(Pairing said, Pairing sized, Lexicon lexicon) {
        List<String> all = new ArrayList<>();
        Pairing level = sized;
        for (Size size : Size.of(sized)) {
            OptionalDouble word = size.read(said);
            double number = size.read(sized).orElseThrow();
            boolean unsaid = size.kind() == Size.Kind.TEMPO && said.tempoSaid().isEmpty();
            if (word.isEmpty() || unsaid) {
                continue;
            }
            if (!(Math.abs(word.getAsDouble() - number) <= SAME)) {
                all.add(
                        name(size)
                                + " "
                                + value(size, word.getAsDouble())
                                + " in the phrase, "
                                + value(size, number)
                                + " in the sizes");
            }
            level = size.set(level, word.getAsDouble());
        }
        if (said.direction() != sized.direction()) {
            all.add(
                    "direction "
                            + Keys.word(said.direction())
                            + " in the phrase, "
                            + Keys.word(sized.direction())
                            + " in the sizes");
        }
        if (said.sense() != sized.sense()) {
            all.add(
                    Keys.word(said.sense())
                            + " in the phrase, "
                            + Keys.word(sized.sense())
                            + " in the sizes");
        }
        for (Side side : Side.values()) {
            String word = MotionWords.of(said, side, lexicon);
            String motion = MotionWords.of(level, side, lexicon);
            if (!word.equals(motion) && all.isEmpty()) {
                all.add(
                        side.word()
                                + " hand \""
                                + word
                                + "\" in the phrase, \""
                                + motion
                                + "\" in the sizes");
            }
        }
        return all;
    }

    private static String name(Size size) {
        String kind = size.kind().name().toLowerCase(Locale.ROOT).replace('_', ' ');
        return size.kind().shared() ? kind : size.side().word() + " " + kind;
    }

    private static String value(Size size, double value) {
        return size.kind().length()
                ? Plain.number(value * 100) + " cm"
                : size.kind().angle()
                        ? Plain.number(Math.toDegrees(value)) + "°"
                        : Plain.number(value)
                                + (size.kind() == Size.Kind.TEMPO ? " a minute" : " cycles");
    }

    private static Optional<String> told(List<String> all) {
        return all.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        "phrase and sizes disagree: "
                                + String.join("; ", all.subList(0, Math.min(MOST, all.size())))
                                + (all.size() > MOST
                                        ? "; and " + (all.size() - MOST) + " more"
                                        : "")
                                + ". The sizes count; to go by the phrase leave out \"pairing\", else"
                                + " mend \"phrase\"");
    }
}
