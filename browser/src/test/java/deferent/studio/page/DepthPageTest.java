package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** What passes before what is read from the stage, and is the same as in the painter's pictures. */
class DepthPageTest extends InChromium {
    private static final String BEHIND =
            "(() => { deferentStage.see('audience'); deferentStage.camera.orbit(Math.PI, 0);"
                    + " deferentStage.draw(); })()";

    private static boolean interrupted(Visit visit, String side) {
        return visit.is("deferentStage.drawer.depth.ways.get('" + side + ".head').interrupted");
    }

    @Test
    void theFartherFigureGivesWayToTheNearerFromWhereverItIsSeen() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra");
            visit.page().evaluate("deferentStage.see('audience')");
            visit.until("!deferentStage.look.gliding");
            assertThat(interrupted(visit, "right")).isTrue();
            assertThat(interrupted(visit, "left")).isFalse();
            visit.page().evaluate(BEHIND);
            assertThat(interrupted(visit, "right")).isFalse();
            assertThat(interrupted(visit, "left")).isTrue();
        }
    }

    @Test
    void aCordBehindTheChestIsNotPaintedOverIt() {
        try (Visit visit = visit()) {
            visit.say("static spin vs static spin, opposites");
            visit.page().evaluate("deferentStage.ask(true)");
            visit.page().evaluate("deferentStage.see('audience')");
            visit.until("!deferentStage.look.gliding");
            assertThat(cordsInk(visit)).as("before the chest").isPositive();
            visit.page().evaluate(BEHIND);
            assertThat(cordsInk(visit)).as("behind it").isZero();
        }
    }

    /** Places inside the trunk at which a cord's colour is seen in the middle of the cord. */
    private static int cordsInk(Visit visit) {
        return (int)
                visit.number(
                        """
                        (() => {
                          const s = deferentStage, { camera, session, ink } = s;
                          s.draw();
                          const body = s.drawer.depth.body;
                          const a = [0, 0, 0], b = [0, 0, 0], p = [0, 0, 0];
                          let seen = 0;
                          for (const side of ['left', 'right']) {
                            session.scene.at(side + '.hand', s.clock.phase, a);
                            session.scene.at(side + '.head', s.clock.phase, b);
                            for (let t = 0.1; t < 0.4; t += 0.01) {
                              camera.project(...a.map((v, k) => v + t * (b[k] - v)), p);
                              if (body.side(p[0], p[1], 10) === 0) continue;
                              const at = s.drawer.read(p[0] - 1, p[1] - 1, 2, 2);
                              const off = [0, 1, 2].reduce((sum, k) => sum + Math.abs(at[k] - 255 * ink[side][k]), 0);
                              if (off < 60) seen++;
                            }
                          }
                          return seen;
                        })()
                        """);
    }

    @Test
    void linesCrossOnTheStageAsTheyDoInPictures() {
        try (Visit visit = visit()) {
            visit.settled();
            // As in the painter's DepthTest.
            String line =
                    "line: Float32Array.of(0, 0, 50, 50, 100, 100, 100, 0, 50, 50.5, 0, 100),"
                            + " rows: 6";
            String asked = "import('./stage/crossings.js').then((m) => m.crossings([{ " + line;
            Object cuts =
                    visit.page()
                            .evaluate(
                                    asked
                                            + ", near: Float32Array.of(0, 0, 0, 0.1, 0.1, 0.1) }],"
                                            + " 100, 100).map((c) => [c.lane, c.over, c.at >"
                                            + " 0.9 && c.at < 1.1].join()).join(' '))");
            assertThat(cuts).isEqualTo("0,0,true");
            assertThat(
                            visit.page()
                                    .evaluate(
                                            asked
                                                    + ", near: new Float32Array(6) }], 100,"
                                                    + " 100).length)"))
                    .isEqualTo(0);
        }
    }

    @Test
    void ofTwoCordsThatCrossTheFartherHasAHoleOnTheStageToo() {
        try (Visit visit = visit()) {
            visit.settled();
            String strands =
                    "import('./stage/strand.js').then((m) => m.strands(%s, null, [], %s, 8, 4))";
            String far = "[0, 0, 0], [100, 100, 0]";
            String near = "[0, 100, 0.08], [100, 0, 0.08]";
            String hole =
                    strands.formatted(far, "[" + near + "]")
                            + ".then((all) => all.length === 2 ? all[1].from - all[0].to : 0)";
            assertThat(((Number) visit.page().evaluate(hole)).doubleValue())
                    .isCloseTo(8 / Math.hypot(100, 100), within(0.02));
            String whole = strands.formatted(near, "[" + far + "]") + ".then((all) => all.length)";
            assertThat(visit.page().evaluate(whole)).isEqualTo(1);
        }
    }
}
