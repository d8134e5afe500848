package deferent.film.follow;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.film.cycle.TwoHeads;
import deferent.film.light.LitSpot;
import java.util.List;
import org.junit.jupiter.api.Test;

class FollowerTest {
    private static final TwoHeads.Path ONE = TwoHeads.circle(400, 400, 200, 1.2, 0);
    private static final TwoHeads.Path OTHER = t -> new double[] {800 - ONE.at(t)[0], ONE.at(t)[1]};

    // How often the first head's spot is nearer to the other path.
    private static long exchanged(List<List<LitSpot>> frames) {
        List<LitSpot> first =
                Follower.follow(frames).get(0).stream().filter(s -> s != null).toList();
        long other = first.stream().filter(s -> far(s, OTHER) + 1 < far(s, ONE)).count();
        long one = first.stream().filter(s -> far(s, ONE) + 1 < far(s, OTHER)).count();
        return Math.min(one, other);
    }

    private static double far(LitSpot s, TwoHeads.Path path) {
        double[] p = path.at(s.time());
        return Math.hypot(s.x() - p[0], s.y() - p[1]);
    }

    @Test
    void headsThatMeetGoThroughEachOther() {
        assertThat(exchanged(TwoHeads.frames(ONE, OTHER, 6, 60, 0.5))).isZero();
    }

    @Test
    void aHeadThatGoesDarkForAWhileIsFoundAgain() {
        TwoHeads.Path blinking = t -> t % 1.7 < 0.1 ? new double[0] : ONE.at(t);
        assertThat(exchanged(TwoHeads.frames(blinking, OTHER, 6, 60, 0.5))).isZero();
    }

    @Test
    void noFrameWithTwoLightsGivesNoHeads() {
        assertThat(Follower.follow(TwoHeads.frames(ONE, t -> new double[0], 3, 60, 0.5))).isEmpty();
    }
}
