package deferent.tell;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Size;
import deferent.motion.shared.Side;
import deferent.reading.body.Performer;
import deferent.search.fit.ArmsFit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Says to somebody who teaches a class what to have ready, which sizes suit whom, what most often
 * goes wrong and what to ask. What to have ready and what goes wrong is common practice, no source.
 */
public final class TellClass {
    /** What stands over the sizes. */
    public static final String SIZES =
            "Everything grows with the student, so what links stays linked, but no larger than arms of"
                    + " that stature reach; to the nearest centimetre. The tempo falls as tethers grow, as a pendulum's does. Start slower than that.";

    private static final int SHORTEST = 150;
    private static final int TALLEST = 190;
    private static final int STEP = 10;

    private TellClass() {}

    /**
     * A question and its answer.
     *
     * @param asked for the class
     * @param answer for the teacher; left, right and clockwise are the spinner's own
     */
    public record Question(String asked, String answer) {}

    /**
     * What to have ready.
     *
     * @param reach how far a head comes from its centre, metres, where that is known
     */
    public static List<String> ready(OptionalDouble reach) {
        List<String> all = new ArrayList<>();
        all.add(
                "Soft poi for everybody, and one spare pair; no hard heads and no fire in a class.");
        all.add("Poi whose length can be set: each student needs the tethers of the table below.");
        all.add(
                reach.isPresent()
                        ? "Room for each: heads come "
                                + Say.length(reach.getAsDouble())
                                + " from the middle of the figure. Mark a circle well outside that; a"
                                + " head that comes off flies further."
                        : "Room for each, well outside the figures; a head that comes off flies"
                                + " further.");
        all.add("The student's sheets, and the file for the hall on a phone or a screen.");
        return all;
    }

    /** What most often goes wrong, each hand alone, then both. */
    public static List<String> often(Pairing pairing) {
        List<String> all = new ArrayList<>();
        for (Side side : Side.values()) {
            if (!pairing.part(side).motion().riding()) {
                all.add(
                        Say.capital(side.word())
                                + " hand alone: "
                                + TellPath.alone(pairing.part(side).motion()));
            }
        }
        all.add("Both hands: " + TellPath.APART);
        all.add("All of it: " + TellPath.WHOLE);
        return all;
    }

    /** A row a stature, from 1.50 to 1.90 m, below a row of names. */
    public static List<List<String>> sizes(Pairing pairing, double stature) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(
                List.of(
                        "Stature",
                        "Left tether",
                        "Right tether",
                        "Left hand radius",
                        "Right hand radius",
                        "Tempo"));
        for (int cm = SHORTEST; cm <= TALLEST; cm += STEP) {
            List<String> row = new ArrayList<>();
            row.add(String.format(Locale.ROOT, "%.2f m", cm / 100.0));
            Optional<ArmsFit> fit = fit(pairing, stature, cm / 100.0);
            if (fit.isEmpty()) {
                row.addAll(List.of("out of reach", "–", "–", "–", "–"));
            } else {
                Pairing fits = fit.get().pairing();
                for (Size.Kind kind : List.of(Size.Kind.TETHER, Size.Kind.HAND_RADIUS)) {
                    for (Side side : Side.values()) {
                        row.add(size(fits, side, kind));
                    }
                }
                // Froude's law of likeness, from memory: times as roots of lengths.
                double times = fit.get().scale() * cm / 100.0 / stature;
                row.add(Say.tempo(Math.rint(pairing.tempo() / Math.sqrt(times))));
            }
            rows.add(row);
        }
        return rows;
    }

    /**
     * A pairing as large for another body as for its own, or as large as that body reaches.
     *
     * @param own stature of the body that it is for, metres
     * @param other the other's, metres
     */
    static Optional<ArmsFit> fit(Pairing pairing, double own, double other) {
        return ArmsFit.of(ArmsFit.scaled(pairing, other / own), Performer.of(other));
    }

    private static String size(Pairing pairing, Side side, Size.Kind kind) {
        OptionalDouble now = Size.of(side, kind).read(pairing);
        if (now.isEmpty()) {
            Part part = pairing.part(side);
            return part.motion().riding() ? "rides" : part.still() ? "still" : "–";
        }
        return String.format(Locale.ROOT, "%.0f cm", now.getAsDouble() * 100);
    }

    /** What shows whether it was understood. */
    public static List<Question> questions(Pairing pairing) {
        List<Question> all = new ArrayList<>();
        for (Side side : Side.values()) {
            Part part = pairing.part(side);
            int n = part.motion().spin().turns();
            if (part.motion().spin().swings() || n == 0) {
                continue;
            }
            if (part.still()) {
                all.add(
                        new Question(
                                "What does the " + side.word() + " hand do?",
                                "Nothing: it stays where it is, and the poi goes round it."));
                continue;
            }
            part.motion()
                    .path()
                    .circle()
                    .ifPresent(
                            circle ->
                                    all.add(
                                            new Question(
                                                    "How often does the "
                                                            + side.word()
                                                            + " poi turn while its hand goes round"
                                                            + " once, and which way?",
                                                    Say.capital(Say.times(Math.abs(n)))
                                                            + (n > 0 == circle.k() > 0
                                                                    ? ", the same way as the hand."
                                                                    : ", against the hand."))));
        }
        double ahead = pairing.timing().ahead();
        all.add(
                new Question(
                        "Do both start at the same time?",
                        ahead == 0
                                ? "Yes, together."
                                : "No: the right hand is " + Say.share(ahead) + " ahead."));
        all.add(
                new Question(
                        "Where should nobody stand?",
                        "Wherever a head could come, and wherever one would fly if a cord gave way."));
        return all;
    }
}
