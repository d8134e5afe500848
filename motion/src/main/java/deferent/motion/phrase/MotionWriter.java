package deferent.motion.phrase;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Tilt;
import deferent.motion.trade.Amounts;
import deferent.motion.trade.Call;
import deferent.motion.trade.Seen;
import deferent.motion.trade.SpinWords;
import deferent.motion.trade.Trade;
import deferent.motion.trade.TradeMotion;
import deferent.motion.trade.Word;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Says one hand's motion. Each row of the table that recognises it, the user's own first, gives the
 * words to begin with; sizes follow that the motion does not have from those words alone, and the
 * words of fewest numbers that make the very same motion are kept.
 */
final class MotionWriter {
    private final Seen seen;
    private final Lexicon lexicon;
    private final Map<String, Optional<Motion>> made = new HashMap<>();

    MotionWriter(Seen seen, Lexicon lexicon) {
        this.seen = seen;
        this.lexicon = lexicon;
    }

    /** A look at the motion: what the rows are shown, and what has to be said of it besides. */
    private record Look(Seen seen, Optional<String> tilt, String after) {}

    /** The words; of a rider those without "riding". */
    Optional<String> words() {
        String riding = seen.motion().riding() ? " riding" : "";
        List<TradeMotion> rows =
                Stream.concat(lexicon.motions().stream(), Trade.motions().stream()).toList();
        return looks().stream()
                .flatMap(looks -> rows.stream().map(row -> offers(row, looks)))
                .flatMap(
                        offers ->
                                offers.stream().sorted(Comparator.comparing(MotionWriter::numbers)))
                .filter(words -> made(words + riding).equals(Optional.of(seen.motion())))
                .findFirst();
    }

    // Of a rider, a trade word says only how the poi turns: as if about circles and a still hand.
    private List<List<Look>> looks() {
        Motion motion = seen.motion();
        List<Look> looks = new ArrayList<>(List.of(asItIs(motion)));
        if (motion.riding()) {
            if (!motion.spin().swings()) {
                looks.add(asItIs(motion.withPath(Series.circle(seen.tether() / 2))));
            }
            looks.add(asItIs(motion.withPath(Series.STILL)));
            return looks.stream().map(List::of).toList();
        }
        double start =
                motion.path().circle().filter(c -> c.k() == 1).map(Series.Term::angle).orElse(0.0);
        if (Double.compare(start, 0) != 0) {
            String said = " hand start " + Amounts.angle(start);
            Motion back = near(motion.turned(-start));
            return List.of(List.of(new Look(seen.with(back), Optional.empty(), said)), looks);
        }
        double tilt = motion.path().tilt().orElse(0);
        if (tilt != 0) {
            Motion back = motion.turned(-tilt);
            for (Motion turned : List.of(near(back), back)) {
                looks.add(new Look(seen.with(turned), Optional.of(tilted(tilt)), ""));
            }
        }
        return List.of(looks);
    }

    // Many an offer is the words it begins with.
    private Optional<Motion> made(String words) {
        return made.computeIfAbsent(words, w -> PhraseWriter.made(w, seen, lexicon));
    }

    private Look asItIs(Motion motion) {
        return new Look(seen.with(motion), Optional.empty(), "");
    }

    private List<String> offers(TradeMotion row, List<Look> looks) {
        List<String> offers = new ArrayList<>();
        String riding = seen.motion().riding() ? " riding" : "";
        for (Look look : looks) {
            Optional<Call> call = row.recognised().apply(look.seen());
            Optional<Motion> begun = call.flatMap(c -> made(c.words() + riding));
            begun.ifPresent(made -> offer(row, call.orElseThrow().words(), look, made, offers));
        }
        return offers;
    }

    /** Offers words with the sizes that what they alone make has not. */
    private void offer(
            TradeMotion row, String words, Look look, Motion begun, List<String> offers) {
        Motion motion = look.seen().motion();
        String sized = words;
        Motion made = begun;
        Optional<String> more = pathSize(row, motion, made);
        // One size said may make others what they are unsaid.
        while (more.isPresent()) {
            sized += more.get();
            Optional<Motion> grown = made(sized);
            made = grown.orElse(made);
            more = grown.flatMap(g -> pathSize(row, motion, g));
        }
        String spun = sized + SpinWords.of(motion.spin(), made.spin());
        OptionalDouble tilt = Tilt.of(motion);
        if (look.tilt().isPresent()) {
            offers.add("vertical " + spun);
            offers.add(spun + look.tilt().get());
            return;
        }
        if (row.takes().contains(Word.TILT) && tilt.isPresent()) {
            String standing = SpinWords.standing(motion.spin(), made.spin());
            offers.add(sized + standing + tilted(tilt.getAsDouble()) + look.after());
        }
        offers.add(spun + look.after());
    }

    private Optional<String> pathSize(TradeMotion row, Motion motion, Motion made) {
        return seen.motion().riding()
                ? Optional.empty()
                : Trade.pathSize(row, motion.path(), made.path());
    }

    private static int numbers(String words) {
        int numbers = 0;
        for (int i = 1; i < words.length(); i++) {
            boolean ends = i + 1 == words.length() || !Character.isDigit(words.charAt(i + 1));
            numbers += ends && Character.isDigit(words.charAt(i)) ? 1 : 0;
        }
        return numbers;
    }

    private String tilted(double tilt) {
        double placed = seen.mirrored() ? 0.0 - tilt : tilt;
        double degrees = Math.rint(Math.toDegrees(placed) * 1000) / 1000;
        return " tilt " + Amounts.number(degrees) + "°";
    }

    // The same motion with a poi's start that is all but 0 or a half turn made that.
    private static Motion near(Motion motion) {
        double start = motion.spin().starts().orElse(0);
        for (double round : new double[] {0, Math.PI}) {
            if (Math.abs(start - round) < 1e-9) {
                return motion.withSpin(motion.spin().from(round));
            }
        }
        return motion;
    }
}
