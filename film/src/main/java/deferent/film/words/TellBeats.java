package deferent.film.words;

import deferent.film.held.Beat;
import deferent.film.held.Held;
import deferent.film.held.Off;
import deferent.film.held.OpenLink;
import deferent.motion.shared.Side;
import deferent.tell.Told;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

/** What is off count by count, and how far the links stand open, in sentences. */
final class TellBeats {
    private static final int MOST = 2; // counts a side that are said

    /** A deviation of 90 % lies within so many standard deviations, on one axis. */
    private static final double NINETY = 1.645;

    private TellBeats() {}

    static Told of(Held held) {
        List<Beat> beats = held.beats();
        String text =
                "By the count, the left poi "
                        + side(beats, beat -> Optional.ofNullable(beat.heads().get(Side.LEFT)))
                        + "; the right "
                        + side(beats, beat -> Optional.ofNullable(beat.heads().get(Side.RIGHT)))
                        + ".";
        return new Told("film.beats", Tone.NOTE, text, why(beats));
    }

    private static String why(List<Beat> beats) {
        List<String> hands = new ArrayList<>();
        for (Side side : Side.values()) {
            List<Off> known =
                    beats.stream()
                            .flatMap(b -> Optional.ofNullable(b.hands().get(side)).stream())
                            .toList();
            if (!known.isEmpty()) {
                double error = known.stream().mapToDouble(Off::error).max().orElse(0);
                hands.add(
                        "the "
                                + side.word()
                                + " hand "
                                + side(beats, b -> Optional.ofNullable(b.hands().get(side)))
                                + ", each known to "
                                + cm(NINETY * error));
            }
        }
        return "against the meant one as cords let it be spun"
                + (hands.isEmpty() ? "" : "; " + String.join("; ", hands));
    }

    private record OnCount(String count, Off off) {
        double far() {
            return off.far();
        }

        boolean worthSaying() {
            return off.far() >= Held.WORTH_SAYING && off.far() > NINETY * off.error();
        }

        String said() {
            return cm(off.far()) + " " + off.way().words() + " on " + count;
        }
    }

    /** "is 12 cm in on 1 and 9 cm behind on 2", "stays within 3 cm". */
    private static String side(List<Beat> beats, Function<Beat, Optional<Off>> off) {
        List<OnCount> known =
                beats.stream()
                        .flatMap(b -> off.apply(b).map(o -> new OnCount(b.count(), o)).stream())
                        .toList();
        List<OnCount> worst =
                known.stream()
                        .filter(OnCount::worthSaying)
                        .sorted(Comparator.comparingDouble(OnCount::far).reversed())
                        .limit(MOST)
                        .toList();
        if (worst.isEmpty()) {
            double most = known.stream().mapToDouble(OnCount::far).max().orElse(0);
            return "stays within " + cm(Math.max(0.01, Math.ceil(100 * most) / 100));
        }
        List<String> said = known.stream().filter(worst::contains).map(OnCount::said).toList();
        int last = said.size() - 1;
        return "is "
                + (last == 0
                        ? said.get(0)
                        : String.join(", ", said.subList(0, last)) + " and " + said.get(last));
    }

    static List<Told> links(Held held) {
        return held.links().stream().map(TellBeats::link).toList();
    }

    private static Told link(OpenLink link) {
        String hand = "the " + link.carrier().other().word() + " hand";
        String apart =
                link.lag() == 0
                        ? "The " + link.carrier().word() + " head and " + hand + " are "
                        : "From " + link.head() + ", " + hand + " is ";
        return new Told(
                "film.link",
                Tone.NOTE,
                apart
                        + cm(link.apart())
                        + (link.lag() == 0 ? " apart " : " away ")
                        + link.on()
                        + ", give or take "
                        + cm(NINETY * link.error())
                        + "; closest "
                        + cm(link.closest())
                        + " "
                        + link.closestOn()
                        + ".",
                String.format(
                        Locale.ROOT,
                        "as cords let it be spun they would be %s apart there; the hand is told in"
                                + " %.0f %% of the cycle, where its cord pulls",
                        cm(link.meant()),
                        100 * link.known()));
    }

    private static String cm(double metres) {
        double cm = 100 * Math.abs(metres);
        return cm < 0.95 ? String.format(Locale.ROOT, "%.1f cm", cm) : Math.round(cm) + " cm";
    }
}
