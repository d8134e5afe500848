package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.Page;
import deferent.motion.shared.Side;
import deferent.page.Scene;
import deferent.page.Track;
import deferent.page.web.Gltf;
import deferent.reading.tether.Kit;
import deferent.reading.tether.LetGo;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Objects;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The model before two programs of others: the Khronos glTF Validator (2.0.0-dev.3.10) and the
 * loader of three.js.
 */
class GltfTest extends InChromium {
    private static final double HEAD = 0.07;
    private static final String BYTES =
            "validateBytes(Uint8Array.from(atob(text), c => c.charCodeAt(0)), undefined)";

    @ParameterizedTest
    @ValueSource(
            strings = {
                "isolation vs four-petal antispin",
                "static spin vs triquetra",
                "pendulum vs pendulum",
                "toroid vs CAP",
                "linear extension vs vertical cat-eye"
            })
    void theValidatorFindsNoErrorAndNoWarning(String phrase) throws IOException {
        Scene scene = Exported.scene(phrase);
        try (Exported bench = Exported.bench(browser())) {
            bench.page().evaluate("() => { globalThis.exports = {}; }");
            bench.page().addScriptTag(new Page.AddScriptTagOptions().setContent(validator()));
            for (byte[] model :
                    List.of(Gltf.embedded(scene, phrase, HEAD), Gltf.binary(scene, phrase, HEAD))) {
                assertThat(issues(bench, BYTES, Base64.getEncoder().encodeToString(model)))
                        .contains("\"numErrors\":0,\"numWarnings\":0,\"numInfos\":0")
                        .contains("\"messages\":[]");
            }
        }
    }

    @Test
    void theValidatorDoesFindWhatIsWrong() throws IOException {
        String model =
                new String(
                        Gltf.embedded(Exported.scene("static spin vs triquetra"), "broken", HEAD),
                        StandardCharsets.UTF_8);
        try (Exported bench = Exported.bench(browser())) {
            bench.page().evaluate("() => { globalThis.exports = {}; }");
            bench.page().addScriptTag(new Page.AddScriptTagOptions().setContent(validator()));
            assertThat(
                            issues(
                                    bench,
                                    "validateString(text, undefined)",
                                    model.replace("\"LINEAR\"", "\"TWIRL\"")))
                    .contains("VALUE_NOT_IN_LIST")
                    .doesNotContain("\"numWarnings\":0");
        }
    }

    /** What the validator says of a text, as it is or read as bytes, in its own JSON. */
    private static String issues(Exported bench, String asked, String text) {
        return String.valueOf(
                bench.page()
                        .evaluate(
                                "async text => JSON.stringify((await exports."
                                        + asked
                                        + ").issues)",
                                text));
    }

    private static String validator() throws IOException {
        try (InputStream in =
                GltfTest.class.getResourceAsStream("/gltf-validator/gltf_validator.dart.js")) {
            return new String(
                    Objects.requireNonNull(in, "the validator is packed with the tests")
                            .readAllBytes(),
                    StandardCharsets.UTF_8);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"isolation vs four-petal antispin, split time", "toroid vs CAP"})
    void aThreeDProgramMovesHandsAndHeadsThroughTheScenesPoints(String phrase) {
        Scene scene = Exported.scene(phrase);
        try (Exported bench = Exported.bench(browser())) {
            for (byte[] model :
                    List.of(Gltf.embedded(scene, phrase, HEAD), Gltf.binary(scene, phrase, HEAD))) {
                bench.page().evaluate(LOAD, Base64.getEncoder().encodeToString(model));
                assertThat(bench.number("globalThis.clip.duration"))
                        .isCloseTo(scene.period(), within(1e-6));
                for (double share : new double[] {0, 0.1, 0.2503, 0.5, 0.7777, 0.999}) {
                    for (Side side : Side.values()) {
                        for (Track track : List.of(Track.hand(side), Track.head(side))) {
                            Vector3D meant = scene.at(track, share * scene.period());
                            double[] at =
                                    bench.numbers(
                                            "place('"
                                                    + track.key().replace('.', '_')
                                                    + "', "
                                                    + share * scene.period()
                                                    + ")");
                            assertThat(new Vector3D(at[0], at[1], at[2]).distance(meant))
                                    .as(track.key() + " at " + share)
                                    .isLessThan(0.001);
                        }
                    }
                }
            }
        }
    }

    @Test
    void whereACordHangsSlackTheBarShrinksAndTheHeadGoesItsOwnWay() throws IOException {
        // A triquetra far too slow for its cord, let go at its start: the head soon flies.
        Scene meant = Exported.scene("static spin vs triquetra", 25);
        LetGo run =
                LetGo.of(
                        meant.trace(),
                        Side.RIGHT,
                        Kit.USUAL,
                        LetGo.Start.on(meant.trace(), Side.RIGHT, 0),
                        2);
        assertThat(run.taut()).isFalse();
        Scene scene = Scene.of(run.trace());
        try (Exported bench = Exported.bench(browser())) {
            byte[] model = Gltf.binary(scene, "let go", HEAD);
            bench.page().evaluate("() => { globalThis.exports = {}; }");
            bench.page().addScriptTag(new Page.AddScriptTagOptions().setContent(validator()));
            String text = Base64.getEncoder().encodeToString(model);
            assertThat(issues(bench, BYTES, text)).contains("\"messages\":[]");
            bench.page().evaluate(LOAD, text);
            double least = 1;
            for (int i = 0; i < 40; i++) {
                double time = 2 * i / 40.0;
                double[] hand = bench.numbers("place('right_hand', " + time + ")");
                double[] head = bench.numbers("place('right_head', " + time + ")");
                Vector3D drawn = new Vector3D(head[0], head[1], head[2]);
                Vector3D where =
                        scene.at(Track.head(Side.RIGHT), run.trace().interval().start() + time);
                assertThat(drawn.distance(where)).isLessThan(0.005);
                least = Math.min(least, drawn.distance(new Vector3D(hand[0], hand[1], hand[2])));
            }
            assertThat(least).isLessThan(0.55);
        }
    }

    @Test
    void theBarKeepsItsLengthAndTheLoopItsSeam() {
        Scene scene = Exported.scene("isolation vs four-petal antispin");
        try (Exported bench = Exported.bench(browser())) {
            bench.page()
                    .evaluate(
                            LOAD,
                            Base64.getEncoder().encodeToString(Gltf.binary(scene, "seam", HEAD)));
            for (int i = 0; i <= 37; i++) {
                double[] hand = bench.numbers("place('right_hand', " + i / 37.001 + ")");
                double[] head = bench.numbers("place('right_head', " + i / 37.001 + ")");
                double length =
                        new Vector3D(head[0], head[1], head[2])
                                .distance(new Vector3D(hand[0], hand[1], hand[2]));
                assertThat(length).isCloseTo(0.6, within(1e-6));
            }
            double[] first = bench.numbers("place('right_head', 0)");
            double[] last = bench.numbers("place('right_head', 0.9999999)");
            assertThat(Math.hypot(first[0] - last[0], first[1] - last[1])).isLessThan(1e-5);
        }
    }

    @Test
    void thePathsAreLinesInThePalettesColours() {
        Scene scene = Exported.scene("isolation vs four-petal antispin");
        try (Exported bench = Exported.bench(browser())) {
            bench.page()
                    .evaluate(
                            LOAD,
                            Base64.getEncoder().encodeToString(Gltf.binary(scene, "paths", HEAD)));
            assertThat(bench.text("model.getObjectByName('left_head_s_trail')?.type ?? lines()"))
                    .contains("Line");
            assertThat(bench.text("colour('left_head')")).isEqualTo("56b4e9");
            assertThat(bench.text("colour('right_head')")).isEqualTo("e69f00");
        }
    }

    private static final String LOAD =
            """
            async text => {
              const three = await import('three');
              const { GLTFLoader } = await import('/examples/jsm/loaders/GLTFLoader.js');
              const bytes = Uint8Array.from(atob(text), c => c.charCodeAt(0));
              const gltf = await new GLTFLoader().parseAsync(bytes.buffer, '');
              globalThis.model = gltf.scene;
              globalThis.clip = gltf.animations[0];
              const mixer = new three.AnimationMixer(gltf.scene);
              mixer.clipAction(gltf.animations[0]).play();
              globalThis.place = (name, time) => {
                mixer.setTime(time);
                gltf.scene.updateMatrixWorld(true);
                return gltf.scene.getObjectByName(name).getWorldPosition(new three.Vector3()).toArray();
              };
              globalThis.lines = () => { const found = []; gltf.scene.traverse(o => found.push(o.name + ':' + o.type)); return found.join(' '); };
              globalThis.colour = name => { let hex; gltf.scene.getObjectByName(name).traverse(o => { if (!hex && o.material) hex = o.material.color.getHexString(); }); return hex; };
            }
            """;
}
