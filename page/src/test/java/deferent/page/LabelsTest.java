package deferent.page;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.motion.trial.TwelveClassics;
import deferent.record.DemoShelf;
import deferent.record.PatternDocument;
import java.awt.Shape;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** No label lies on a mark: read off the shapes that are drawn, whoever placed them. */
class LabelsTest {
    private static final Map<String, View> VIEWS =
            Map.of(
                    "audience", View.AUDIENCE,
                    "performer", View.PERFORMER,
                    "mirror", View.MIRROR,
                    "side", new View(View.Stand.AUDIENCE, Math.PI / 2, 0),
                    "above", new View(View.Stand.AUDIENCE, 0, Math.PI / 2));

    private static Map<String, Pairing> pairings() {
        Map<String, Pairing> all = new LinkedHashMap<>();
        TwelveClassics.ALL.forEach(phrase -> all.put(phrase, Phrase.parse(phrase).pairing()));
        DemoShelf.documents().stream()
                .filter(PatternDocument.class::isInstance)
                .map(PatternDocument.class::cast)
                .forEach(pattern -> all.put(pattern.name(), pattern.pairing()));
        return all;
    }

    private static List<Rectangle2D> plates(List<DrawnShapes.Drawn> all) {
        return all.stream()
                .filter(one -> one.given() instanceof RoundRectangle2D)
                .map(one -> one.given().getBounds2D())
                .toList();
    }

    /** What lies under labels, and how many drawn lines they cross. */
    private static final class Seen {
        final List<String> on = new ArrayList<>();
        int labels;
        int crossing;

        void add(String which, Scene scene, Still still) {
            add(which, DrawnShapes.of(scene, still), still);
        }

        void add(String which, List<DrawnShapes.Drawn> all, Still still) {
            List<Rectangle2D> plates = plates(all);
            for (Rectangle2D box : plates) {
                labels++;
                if (plates.stream().filter(box::intersects).count() > 1) {
                    on.add(which + ": a label");
                }
                if (!new Rectangle2D.Double(0, 0, still.width(), still.height()).contains(box)) {
                    on.add(which + ": off the paper");
                }
                boolean crosses = false;
                for (DrawnShapes.Drawn one : all) {
                    // The light about a head is faint, and no mark; an arrow is filled.
                    boolean mark =
                            one.group().matches(".*(hand|head|tether|link|over|moments)")
                                            && one.strength() > 0.2
                                    || one.group().endsWith("passage") && one.stroke().isEmpty();
                    if (mark && one.on(box)) {
                        on.add(which + ": " + one.group());
                    }
                    crosses |=
                            one.group().matches(".*(trail|hand-path|passage|patterns)")
                                    && along(one.given(), box);
                }
                crossing += crosses ? 1 : 0;
            }
        }

        private static boolean along(Shape line, Rectangle2D box) {
            double[] at = new double[6];
            double x = 0;
            double y = 0;
            if (!line.intersects(box)) {
                return false;
            }
            for (PathIterator i = line.getPathIterator(null, 0.5); !i.isDone(); i.next()) {
                int kind = i.currentSegment(at);
                if (kind == PathIterator.SEG_LINETO && box.intersectsLine(x, y, at[0], at[1])) {
                    return true;
                }
                if (kind != PathIterator.SEG_CLOSE) {
                    x = at[0];
                    y = at[1];
                }
            }
            return false;
        }
    }

    private interface Asked {
        void of(String which, Scene scene, Still still);
    }

    private static void each(Asked asked) {
        pairings()
                .forEach(
                        (name, pairing) -> {
                            Scene scene = Scene.of(Trace.of(pairing));
                            VIEWS.forEach(
                                    (from, view) ->
                                            asked.of(
                                                    name + " from " + from,
                                                    scene,
                                                    Still.square(600).with(view)));
                        });
    }

    private static double eighth(Scene scene, int eighths) {
        return scene.trace().interval().start() + scene.period() * eighths / 8;
    }

    @Test
    void noSideLiesOnAHeadAHandACordOrTheOtherSideOrOnALine() {
        Seen seen = new Seen();
        each(
                (which, scene, still) -> {
                    for (int i : new int[] {0, 3}) {
                        seen.add(
                                which + " at " + i + "/8",
                                scene,
                                still.at(eighth(scene, i)).with(Layer.LABELS));
                    }
                });
        assertThat(seen.on).isEmpty();
        assertThat(seen.labels).isGreaterThan(450);
        assertThat(seen.crossing).isZero();
    }

    @Test
    void inAClipTheyGoOverLinesButNotOverMarksAndSeldomJump() {
        Scene scene = Scene.of(Trace.of(Phrase.parse("triquetra riding pendulum").pairing()));
        Still still = Still.square(600).with(Layer.LABELS);
        Layout layout = Layout.of(still);
        MomentPainter painter =
                new MomentPainter(
                        scene,
                        Framing.of(scene, still.view(), layout.room()),
                        layout.brush(),
                        still.layers(),
                        layout.paper());
        Seen seen = new Seen();
        List<Rectangle2D> before = List.of();
        List<Double> moved = new ArrayList<>();
        for (int i = 0; i < 120; i++) {
            double time = eighth(scene, 0) + scene.period() * i / 120;
            DrawnShapes paper = new DrawnShapes();
            painter.moving(paper, "", time);
            paper.group("labels", "labels", g -> painter.labels(g, time, layout.labels()));
            seen.add("at " + i, paper.all(), still);
            List<Rectangle2D> now = plates(paper.all());
            for (int one = 0; one < before.size(); one++) {
                moved.add(
                        Math.hypot(
                                now.get(one).getCenterX() - before.get(one).getCenterX(),
                                now.get(one).getCenterY() - before.get(one).getCenterY()));
            }
            before = now;
        }
        assertThat(seen.on).isEmpty();
        assertThat(moved).hasSize(2 * 119);
        assertThat(moved.stream().filter(m -> m > 40).count()).isLessThan(4);
    }

    @Test
    void noNumberOfAPoseLiesOnAHeadAHandACordOrAnotherNumberOrOnALine() {
        Seen seen = new Seen();
        each(
                (which, scene, still) -> {
                    List<Double> times = new ArrayList<>();
                    for (int i = 0; i < 8; i++) {
                        times.add(eighth(scene, i));
                    }
                    seen.add(which, scene, still.sized(380, 300).with(StillForm.POSES, times));
                });
        assertThat(seen.on).isEmpty();
        assertThat(seen.labels).isGreaterThan(1000);
        assertThat(seen.crossing).isZero();
    }

    @Test
    void whereHandsLeaveAndJoinNoWordLiesOnAMarkOrAnArrow() {
        Seen seen = new Seen();
        each(
                (which, scene, still) ->
                        seen.add(
                                which,
                                scene,
                                still.with(
                                        new StillForm.Passage(
                                                List.of(
                                                        passing(scene, Side.LEFT, 1, 3),
                                                        passing(scene, Side.RIGHT, 2, 6))))));
        assertThat(seen.on).isEmpty();
        assertThat(seen.labels).isGreaterThan(450);
        assertThat(seen.crossing).isZero();
    }

    private static StillForm.Passing passing(Scene scene, Side side, int from, int to) {
        return new StillForm.Passing(
                side,
                eighth(scene, from),
                eighth(scene, to),
                side.word() + " leaves on 1&",
                side.word() + " joins on 2");
    }
}
