package deferent.tell;

import deferent.motion.shared.Side;
import deferent.search.transition.Bridge;
import deferent.search.transition.Played;
import deferent.search.transition.Transition;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A hand leaves one pattern or joins the other, in transitions that are played.
 *
 * @param side whose hand
 * @param leaves whether it leaves; else it joins
 * @param time when, seconds on the clock of what is played
 * @param count on which count of the pattern that it leaves or joins: "on 3", "between 3 and 4"
 * @param hand where the hand is, metres
 * @param head where its poi's head is, metres
 */
public record PassageMoment(
        Side side, boolean leaves, double time, String count, Vector3D hand, Vector3D head) {

    /**
     * What happens in one of the transitions that are played, in order of time. A hand that goes on
     * as it was neither leaves nor joins.
     *
     * @param at which of them, from 0
     */
    public static List<PassageMoment> of(Played played, int at, Transition transition) {
        List<PassageMoment> all = new ArrayList<>();
        for (Side side : Side.values()) {
            Bridge bridge = transition.bridge(side);
            if (!bridge.keeps()) {
                double begins = played.left().get(at) + bridge.leaves() - transition.leaves();
                all.add(
                        moment(
                                played,
                                side,
                                true,
                                begins,
                                TellTransition.count(transition.from(), bridge.leaves())));
                all.add(
                        moment(
                                played,
                                side,
                                false,
                                begins + bridge.seconds(),
                                TellTransition.count(transition.to(), bridge.joins())));
            }
        }
        all.sort(Comparator.comparingDouble(PassageMoment::time));
        return List.copyOf(all);
    }

    private static PassageMoment moment(
            Played played, Side side, boolean leaves, double time, String count) {
        return new PassageMoment(
                side,
                leaves,
                time,
                count,
                played.trace().hand(side).position(time),
                played.trace().head(side).position(time));
    }

    /** "left leaves on 3". */
    public String said() {
        return side.word() + (leaves ? " leaves " : " joins ") + count;
    }
}
