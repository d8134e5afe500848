package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.MotionWords;
import deferent.motion.phrase.Phrase;
import deferent.motion.phrase.PhraseError;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import deferent.motion.trade.Trade;
import deferent.motion.trade.TradeMotion;
import deferent.motion.trade.Word;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import deferent.reading.link.LinkReading;
import deferent.reading.link.PathKind;
import deferent.reading.shared.LinkKind;
import deferent.search.fit.Fit;
import deferent.search.fit.FitReading;
import deferent.search.fit.Goal;
import deferent.search.fit.Remedy;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** What a fit says of any two motions of the table is true of the two. */
class FitAnswersTest {
    private static final double CLOSED = 1e-3;
    private static final Pattern CHANGE = Pattern.compile("make (.+?) \\(now (.+?)\\)");
    private static final Pattern NO = Pattern.compile("because an? (\\w+) is no (\\w+)\\.");
    private static final Pattern ALIKE = Pattern.compile("makes the two (\\w+)s one");

    private Pairing pairing;
    private Side carrier;
    private FitReading fit;
    private List<Told> told;

    @Property(tries = 40)
    void aFitSaysWhatIsSo(Any any) {
        pairing = pairing(any);
        carrier = any.of(Side.class);
        fit = Fit.of(pairing, carrier);
        told = TellFit.of(fit, pairing);
        String said = phrase() + " from the " + carrier.word() + " head: " + text();
        closesWhatItSays(said);
        everyChangeReadsAsOne(said);
        needsNoChangeOnlyWhereItHolds(said);
        everyMotionIsKeptOrSaid(said);
        reasonsAreOfThePaths(said);
    }

    private void closesWhatItSays(String said) {
        for (Remedy answer : fit.answers()) {
            LinkReading link = LinkReading.of(Trace.of(answer.pairing()), carrier);
            assertThat(fit.goal() == Goal.PLACED ? link.inPlaneGap() : link.shapeGap())
                    .as(said)
                    .isLessThan(CLOSED);
        }
        assertThat(text().contains("annot close")).as(said).isEqualTo(fit.answers().isEmpty());
        if (fit.answers().isEmpty()) {
            assertThat(now().inPlaneGap()).as(said).isGreaterThanOrEqualTo(CLOSED);
        }
        fit.riding()
                .ifPresent(
                        ridden -> {
                            LinkReading link = LinkReading.of(Trace.of(ridden.pairing()), carrier);
                            assertThat(link.kind()).as(said).isEqualTo(LinkKind.TOUCHING);
                            assertThat(link.inPlaneGap()).as(said).isLessThan(CLOSED);
                            assertThat(text()).as(said).contains("Let the ").contains(" ride");
                        });
    }

    private void everyChangeReadsAsOne(String said) {
        for (Remedy answer : fit.answers()) {
            List<MatchResult> changes =
                    CHANGE.matcher(
                                    TellFit.changes(answer, pairing)
                                            .replaceAll(",? and the", " make the"))
                            .results()
                            .toList();
            assertThat(changes).as(said).hasSize(answer.changes().size());
            assertThat(changes)
                    .as(said)
                    .noneMatch(change -> change.group(1).endsWith(" " + change.group(2)));
        }
    }

    private void needsNoChangeOnlyWhereItHolds(String said) {
        if (text().contains("no change")
                || fit.answers().stream().anyMatch(a -> a.changes().isEmpty())) {
            assertThat(now().inPlaneGap()).as(said).isLessThan(CLOSED);
        }
    }

    private void everyMotionIsKeptOrSaid(String said) {
        for (Remedy answer : fit.answers()) {
            for (Side side : Side.values()) {
                String name = MotionWords.of(answer.pairing(), side);
                if (!name.equals(MotionWords.of(pairing, side))) {
                    assertThat(TellFit.changes(answer, pairing)).as(said).contains(name);
                }
            }
        }
        fit.riding()
                .ifPresent(
                        ridden -> {
                            Side rider = carrier.other();
                            String asked = MotionWords.of(pairing, rider);
                            String name =
                                    MotionWords.of(ridden.pairing(), rider).replace(", riding", "");
                            if (!name.contains(asked)) {
                                assertThat(TellFit.ride(ridden, pairing))
                                        .as(said)
                                        .containsAnyOf(asked + " riding", name);
                            }
                            assertThat(MotionWords.of(ridden.pairing(), carrier))
                                    .as(said)
                                    .isEqualTo(MotionWords.of(pairing, carrier));
                        });
    }

    private void reasonsAreOfThePaths(String said) {
        Samples samples = Trace.of(pairing).samples();
        PathKind head = PathKind.of(samples.head(carrier));
        PathKind hand = PathKind.of(samples.hand(carrier.other()));
        NO.matcher(text())
                .results()
                .forEach(
                        no ->
                                assertThat(Set.of(no.group(1), no.group(2)))
                                        .as(said)
                                        .isEqualTo(Set.of(head.noun(), hand.noun())));
        ALIKE.matcher(text())
                .results()
                .forEach(
                        alike ->
                                assertThat(List.of(head.noun(), hand.noun()))
                                        .as(said)
                                        .containsOnly(alike.group(1)));
        if (text().contains("the hand stands still")) {
            assertThat(hand.sort()).as(said).isEqualTo(PathKind.Sort.POINT);
            assertThat(head.sort()).as(said).isNotEqualTo(PathKind.Sort.POINT);
        }
        if (text().contains("the head stands still")) {
            assertThat(head.sort()).as(said).isEqualTo(PathKind.Sort.POINT);
            assertThat(hand.sort()).as(said).isNotEqualTo(PathKind.Sort.POINT);
        }
        if (text().contains("head circle is always larger than its tether")) {
            assertThat(List.of(head.noun(), hand.noun())).as(said).containsOnly("circle");
            assertThat(hand.size())
                    .as(said)
                    .isLessThanOrEqualTo(pairing.part(carrier).tether().length() + CLOSED);
        }
        if (text().contains("opposite ways")) {
            assertThat(round(true) * round(false)).as(said).isNegative();
        }
        if (text().contains("at different paces")) {
            assertThat(paceApart()).as(said).isGreaterThan(0.01);
        }
        if (text().contains("their planes stand")) {
            assertThat(normal(carrier).crossProduct(normal(carrier.other())).getNorm())
                    .as(said)
                    .isGreaterThan(1e-6);
        }
    }

    /** Twice the area that the head or the hand goes round in the carrier's plane, signed. */
    private double round(boolean head) {
        Samples samples = Trace.of(fit.nearest().pairing()).samples();
        double[] path = head ? samples.head(carrier) : samples.hand(carrier.other());
        Vector3D area = Vector3D.ZERO;
        int count = samples.count();
        for (int i = 0; i < count; i++) {
            area =
                    area.add(
                            Samples.point(path, i)
                                    .crossProduct(Samples.point(path, (i + 1) % count)));
        }
        return area.dotProduct(normal(carrier));
    }

    /**
     * At the best of all lags, the greatest difference of the two speeds, as a share of the most.
     */
    private double paceApart() {
        Samples samples = Trace.of(fit.nearest().pairing()).samples(360);
        double[] head = steps(samples.head(carrier));
        double[] hand = steps(samples.hand(carrier.other()));
        double most = 0;
        for (double step : head) {
            most = Math.max(most, step);
        }
        double least = Double.MAX_VALUE;
        for (int lag = 0; lag < 360; lag++) {
            double apart = 0;
            for (int i = 0; i < 360; i++) {
                apart = Math.max(apart, Math.abs(head[i] - hand[(i + lag) % 360]));
            }
            least = Math.min(least, apart);
        }
        return least / most;
    }

    private static double[] steps(double[] path) {
        int count = path.length / 3;
        double[] steps = new double[count];
        for (int i = 0; i < count; i++) {
            steps[i] = Samples.point(path, i).distance(Samples.point(path, (i + 1) % count));
        }
        return steps;
    }

    private Vector3D normal(Side side) {
        return pairing.part(side).place().plane().normal();
    }

    private LinkReading now() {
        return LinkReading.of(Trace.of(pairing), carrier);
    }

    private String text() {
        return told.get(0).text();
    }

    private String phrase() {
        return Phrase.write(pairing).orElse(pairing.toString());
    }

    private static Pairing pairing(Any any) {
        while (true) {
            String said =
                    hand(any)
                            + " vs "
                            + hand(any)
                            + any.of("", "", ", split time", ", quarter time", ", timing 0.3")
                            + any.of("", "", "", ", opposite direction");
            try {
                return Phrase.parse(said).pairing();
            } catch (PhraseError impossible) {
                // Such as two pendulums of two tempos: another pair is drawn.
            }
        }
    }

    private static String hand(Any any) {
        TradeMotion motion = any.of(Trade.motions());
        String said = motion.said();
        if (motion.follows().isPresent()) {
            said +=
                    " 1 of "
                            + length(any)
                            + " plus "
                            + any.of("-2", "-1", "3")
                            + " of "
                            + length(any);
        }
        said += sized(any, motion, Word.HAND_RADIUS, length(any));
        said += sized(any, motion, Word.AMPLITUDE, any.whole(10, 120) + "°");
        said += sized(any, motion, Word.TILT, any.whole(-90, 90) + "°");
        return said
                + any.of("", "", " tether " + length(any))
                + any.of("", "", "", "", " wheel plane");
    }

    private static String sized(Any any, TradeMotion motion, Word word, String size) {
        boolean says = motion.takes().contains(word) && any.of(false, true, false);
        return says ? " " + word.said() + " " + size : "";
    }

    private static String length(Any any) {
        return any.whole(20, 120) + " cm";
    }
}
