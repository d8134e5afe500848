package deferent.film.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.film.follow.Follower;
import deferent.film.light.LitSpot;
import deferent.film.light.RollingShutter;
import deferent.motion.pairing.Refusal;
import java.util.List;
import org.junit.jupiter.api.Test;

class CyclesTest {
    private static final TwoHeads.Path TRIQUETRA = TwoHeads.flower(400, 400, 150, 150, -2, 0.7);
    private static final TwoHeads.Path STATIC = TwoHeads.circle(420, 380, 150, 1.4, 0.2);

    private static Cycles read(List<List<LitSpot>> frames) {
        return Cycles.of(Follower.follow(frames), frames);
    }

    @Test
    void aTriquetraBesideAStaticSpinComesBackOncePerHandTurn() {
        Cycles cycles = read(TwoHeads.frames(TRIQUETRA, STATIC, 9, 60, 0.5));
        assertThat(cycles.period()).isCloseTo(1 / 0.7, within(1e-3 / 0.7));
        assertThat(cycles.unsure()).isEmpty();
    }

    @Test
    void theMeanCycleLiesNearerToTheTruthThanASingleSight() {
        Cycles cycles = read(TwoHeads.frames(TRIQUETRA, STATIC, 9, 60, 0.5));
        double sum = 0;
        for (int i = 0; i < 100; i++) {
            double[] at = cycles.waves().get(1).at(0.05 * i)[0];
            double[] one = STATIC.at(0.05 * i);
            double[] other = TRIQUETRA.at(0.05 * i);
            sum +=
                    Math.min(
                            Math.hypot(at[0] - one[0], at[1] - one[1]),
                            Math.hypot(at[0] - other[0], at[1] - other[1]));
        }
        assertThat(sum / 100).isLessThan(0.2);
    }

    @Test
    void aSlowerSecondHalfIsADriftAndNotAScatter() {
        TwoHeads.Path late = t -> TRIQUETRA.at(t < 6 ? t : t - 0.02 * (t - 6));
        TwoHeads.Path lateToo = t -> STATIC.at(t < 6 ? t : t - 0.02 * (t - 6));
        Cycles cycles = read(TwoHeads.frames(late, lateToo, 12, 60, 0.3));
        assertThat(cycles.drift().range()).isBetween(0.02, 0.1);
        assertThat(cycles.waves().get(0).scatter()).isLessThan(3);
    }

    @Test
    void aCutToSomethingElseIsToldWithItsTime() {
        TwoHeads.Path one = t -> t < 8 ? TRIQUETRA.at(t) : new double[] {700 - 40 * t % 90, 90};
        TwoHeads.Path other = t -> t < 8 ? STATIC.at(t) : new double[] {60, 700 - 33 * t % 70};
        Cycles cycles = read(TwoHeads.frames(one, other, 12, 60, 0.3));
        assertThat(cycles.unsure())
                .anySatisfy(
                        u -> {
                            assertThat(u.why()).isEqualTo(Unsure.Why.ELSE);
                            assertThat(u.from()).isBetween(7.0, 9.0);
                            assertThat(u.to()).isGreaterThan(11);
                        });
        assertThat(cycles.period()).isCloseTo(1 / 0.7, within(2e-3));
    }

    @Test
    void aHeadUnseenForATenthOfEachCycleIsStillThere() {
        TwoHeads.Path hidden = t -> t * 0.7 % 1 < 0.1 ? new double[0] : TRIQUETRA.at(t);
        Cycles cycles = read(TwoHeads.frames(hidden, STATIC, 9, 60, 0.3));
        double[] truth = TRIQUETRA.at(0.05 / 0.7);
        assertThat(cycles.waves())
                .anySatisfy(
                        w -> {
                            double[] at = w.at(0.05 / 0.7)[0];
                            assertThat(Math.hypot(at[0] - truth[0], at[1] - truth[1]))
                                    .isLessThan(4);
                        });
    }

    @Test
    void headsExchangedWhereTheyMeetAreGivenBack() {
        // Two circles that go opposite ways meet at the top and at the bottom; each spot list is
        // given to the wrong head on the right half.
        TwoHeads.Path one = TwoHeads.circle(400, 400, 200, 1, 0);
        TwoHeads.Path other = t -> new double[] {800 - one.at(t)[0], one.at(t)[1]};
        List<List<LitSpot>> frames = TwoHeads.frames(one, other, 8, 60, 0.3);
        List<List<LitSpot>> bounced =
                List.of(
                        frames.stream().map(f -> leftmost(f, true)).toList(),
                        frames.stream().map(f -> leftmost(f, false)).toList());
        Cycles cycles = Cycles.of(List.copyOf(bounced), frames);
        double reach =
                cycles.waves().stream()
                        .mapToDouble(w -> Math.hypot(w.x()[1], w.x()[2]))
                        .min()
                        .orElse(0);
        assertThat(reach).isCloseTo(200, within(2.0));
    }

    private static LitSpot leftmost(List<LitSpot> spots, boolean left) {
        boolean first = spots.get(0).x() < spots.get(1).x();
        return spots.get(first == left ? 0 : 1);
    }

    @Test
    void aRollingShutterThatIsKnownDoesNoHarm() {
        RollingShutter shutter = new RollingShutter(0.016, 800);
        // What is lower is seen later, so that a spot shows where its head is by then.
        TwoHeads.Path one = rolled(TRIQUETRA, shutter);
        TwoHeads.Path other = rolled(STATIC, shutter);
        List<List<LitSpot>> frames = TwoHeads.frames(one, other, 9, 60, 0.2);
        Cycles cycles = Cycles.of(Follower.follow(frames), frames, shutter);
        double[] truth = STATIC.at(1);
        assertThat(cycles.waves())
                .anySatisfy(
                        w -> {
                            double[] at = w.at(1)[0];
                            assertThat(Math.hypot(at[0] - truth[0], at[1] - truth[1]))
                                    .isLessThan(0.5);
                        });
    }

    private static TwoHeads.Path rolled(TwoHeads.Path path, RollingShutter shutter) {
        return t -> {
            double at = t;
            for (int i = 0; i < 20; i++) {
                at = shutter.time(TwoHeads.spot(t, 0, path.at(at)[1]));
            }
            return path.at(at);
        };
    }

    @Test
    void oneHeadAloneIsRefused() {
        List<List<LitSpot>> frames = TwoHeads.frames(STATIC, t -> new double[0], 4, 60, 0.3);
        assertThatThrownBy(() -> read(frames))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("two heads");
    }
}
