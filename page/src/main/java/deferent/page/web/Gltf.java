package deferent.page.web;

import de.javagl.jgltf.model.AccessorModel;
import de.javagl.jgltf.model.AnimationModel.Interpolation;
import de.javagl.jgltf.model.GltfConstants;
import de.javagl.jgltf.model.MaterialModel;
import de.javagl.jgltf.model.creation.AccessorModels;
import de.javagl.jgltf.model.creation.GltfModelBuilder;
import de.javagl.jgltf.model.creation.MaterialBuilder;
import de.javagl.jgltf.model.impl.DefaultAnimationModel;
import de.javagl.jgltf.model.impl.DefaultGltfModel;
import de.javagl.jgltf.model.impl.DefaultMeshModel;
import de.javagl.jgltf.model.impl.DefaultMeshPrimitiveModel;
import de.javagl.jgltf.model.impl.DefaultNodeModel;
import de.javagl.jgltf.model.impl.DefaultSceneModel;
import de.javagl.jgltf.model.io.GltfModelWriter;
import de.javagl.jgltf.model.v2.MaterialModelV2;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.page.Item;
import deferent.page.Palette;
import deferent.page.Scene;
import deferent.page.Track;
import deferent.reading.body.Person;
import java.awt.Color;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.FloatBuffer;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import org.hipparchus.complex.Quaternion;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A scene as a glTF 2.0 model for 3-D programs, with an animation of exactly one cycle.
 *
 * <p>glTF's frame is ours: right-handed, metres, +Y up, +Z forward (the side the model shows, so
 * toward the audience) and −X right, so +X to the performer's left. Nothing is turned.
 *
 * <p>Each hand is a node that moves; below it hangs the tether, a bar along its own +Y that turns
 * and keeps its length; at the bar's end the head. So hand, bar and head stay joined between the
 * keys too. Only where a cord hangs slack does the bar shrink and the head move by itself. Left and
 * right are told apart by shape as well as colour: the left's head and hand are round, the right's
 * have corners. Paths are line strips.
 */
public final class Gltf {
    private static final int KEYS_A_TURN = 96;
    private static final int MOST_KEYS = 4800;
    private static final double BAR = 0.006;
    private static final double HAND = 0.025;

    // A tether whose ends come no nearer than this keeps its length, metres.
    private static final double TAUT = 1e-6;

    private final Scene scene;
    private final String name;
    private final double headRadius;
    private final double start;
    private final int keys;
    private final AccessorModel times;
    private final DefaultSceneModel model = new DefaultSceneModel();
    private final DefaultAnimationModel animation = new DefaultAnimationModel();
    private final Map<Palette.Ink, MaterialModel> materials = new LinkedHashMap<>();

    private Gltf(Scene scene, String name, double headDiameter) {
        this.scene = scene;
        this.name = name;
        this.headRadius = Refusal.positive(headDiameter, 0.5, "head diameter", "m") / 2;
        this.start = scene.trace().interval().start();
        this.keys = keys();
        float[] at = new float[keys + 1];
        for (int i = 0; i <= keys; i++) {
            at[i] = (float) (scene.period() * i / keys);
        }
        times = AccessorModels.createFloatScalar(FloatBuffer.wrap(at));
    }

    private int keys() {
        int turns = 1;
        for (Side side : Side.values()) {
            var part = scene.trace().pairing().part(side);
            turns =
                    Math.max(
                            turns,
                            part.cycles()
                                    * (1
                                            + Math.abs(part.motion().spin().turns())
                                            + Math.abs(part.place().turn().turns())));
        }
        return Math.min(MOST_KEYS, KEYS_A_TURN * turns);
    }

    /**
     * As text, a .gltf file with its numbers within.
     *
     * @param name what the model is called
     * @param headDiameter metres, above 0, at most 0.5
     */
    public static byte[] embedded(Scene scene, String name, double headDiameter) {
        return written(scene, name, headDiameter, false);
    }

    /** As a .glb file. */
    public static byte[] binary(Scene scene, String name, double headDiameter) {
        return written(scene, name, headDiameter, true);
    }

    private static byte[] written(Scene scene, String name, double headDiameter, boolean binary) {
        DefaultGltfModel built = new Gltf(scene, name, headDiameter).built();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            if (binary) {
                new GltfModelWriter().writeBinary(built, out);
            } else {
                new GltfModelWriter().writeEmbedded(built, out);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private DefaultGltfModel built() {
        model.setName(name);
        animation.setName("one cycle");
        for (Item item : scene.items()) {
            path(item);
        }
        for (Side side : Side.values()) {
            side(side);
        }
        GltfModelBuilder builder = GltfModelBuilder.create();
        builder.addSceneModel(model);
        if (!animation.getChannels().isEmpty()) {
            builder.addAnimationModel(animation);
        }
        DefaultGltfModel built = builder.build();
        built.getAssetModel().setGenerator("Deferent");
        Map<String, Object> extras = new LinkedHashMap<>();
        extras.put("name", name);
        extras.put("period_s", scene.period());
        extras.put("tempo_cycles_per_min", scene.trace().pairing().tempo());
        extras.put("frame", "x to the performer's left, y up, z toward the audience; metres");
        built.getAssetModel().setExtras(extras);
        return built;
    }

    /** What does not move: paths and outlines. */
    private void path(Item item) {
        // What is nobody's would be lost on the grey of 3-D programs in the body's faint ink.
        Palette.Ink ink =
                item.side().isEmpty()
                        ? Palette.Ink.QUIET
                        : Palette.of(item.role(), item.side()).ink();
        if (item.form() instanceof Item.Shape.Run run) {
            double[] xyz = scene.points(run.track());
            int points = xyz.length / 3 + (run.closed() ? 1 : 0);
            float[] line = new float[3 * points];
            for (int i = 0; i < line.length; i++) {
                line[i] = (float) xyz[i % xyz.length];
            }
            strip(item, ink, line);
        } else if (item.form() instanceof Item.Shape.Fixed fixed && fixed.points().size() > 1) {
            int points = fixed.points().size() + (fixed.closed() ? 1 : 0);
            float[] line = new float[3 * points];
            for (int i = 0; i < points; i++) {
                put(line, i, fixed.points().get(i % fixed.points().size()));
            }
            strip(item, ink, line);
        } else if (item.form() instanceof Item.Shape.Body body) {
            // As at the start, a line through the middles of each limb's balls.
            for (Person.Limb limb : body.person().limbs()) {
                float[] line = new float[3 * limb.balls().size()];
                for (int i = 0; i < limb.balls().size(); i++) {
                    put(line, i, body.person().balls().get(limb.balls().get(i)).at(0));
                }
                strip(item, ink, line);
            }
        }
    }

    private void strip(Item item, Palette.Ink ink, float[] line) {
        DefaultMeshPrimitiveModel strip =
                new DefaultMeshPrimitiveModel(GltfConstants.GL_LINE_STRIP);
        strip.putAttribute("POSITION", AccessorModels.createFloat3D(FloatBuffer.wrap(line)));
        strip.setMaterialModel(material(ink));
        DefaultNodeModel node = node(item.name());
        node.addMeshModel(mesh(item.name(), strip));
        model.addNode(node);
    }

    private void side(Side side) {
        Palette.Ink ink = side == Side.LEFT ? Palette.Ink.LEFT : Palette.Ink.RIGHT;
        boolean round = side == Side.LEFT;
        double length = scene.trace().pairing().part(side).tether().length();
        Vector3D[] hands = new Vector3D[keys + 1];
        Vector3D[] tethers = new Vector3D[keys + 1];
        double away = 0;
        double slack = 0;
        for (int i = 0; i <= keys; i++) {
            // The last is the first again, to the last digit, where the scene comes round.
            double time =
                    start + (i == keys && scene.trace().periodic() ? 0 : scene.period() * i / keys);
            hands[i] = scene.at(Track.hand(side), time);
            tethers[i] = scene.at(Track.head(side), time).subtract(hands[i]);
            away = Math.max(away, hands[i].distance(hands[0]));
            slack = Math.max(slack, Math.abs(tethers[i].getNorm() - length));
        }
        DefaultNodeModel hand = node(side.word() + " hand");
        hand.addMeshModel(mesh(side.word() + " hand", Solids.marker(round, HAND), ink));
        DefaultNodeModel tether = node(side.word() + " tether");
        tether.addMeshModel(mesh(side.word() + " tether", Solids.bar(BAR, length), ink));
        DefaultNodeModel head = node(side.word() + " head");
        head.addMeshModel(mesh(side.word() + " head", Solids.head(round, headRadius), ink));
        hand.addChild(tether);
        hand.setTranslation(floats(hands[0]));
        if (away > TAUT) {
            channel(hand, "translation", AccessorModels.createFloat3D(points(hands)));
        }
        float[] turns = rotations(tethers, scene.trace().periodic());
        tether.setRotation(Arrays.copyOf(turns, 4));
        channel(tether, "rotation", AccessorModels.createFloat4D(FloatBuffer.wrap(turns)));
        if (slack <= TAUT) {
            head.setTranslation(new float[] {0, (float) length, 0});
            tether.addChild(head);
        } else {
            head.setTranslation(floats(tethers[0]));
            channel(head, "translation", AccessorModels.createFloat3D(points(tethers)));
            hand.addChild(head);
            float[] scales = new float[3 * (keys + 1)];
            for (int i = 0; i <= keys; i++) {
                double share = Math.max(1e-3, tethers[i].getNorm() / length);
                put(scales, i, new Vector3D(1, share, 1));
            }
            channel(tether, "scale", AccessorModels.createFloat3D(FloatBuffer.wrap(scales)));
        }
        model.addNode(hand);
    }

    private void channel(DefaultNodeModel node, String path, AccessorModel values) {
        animation.addChannel(
                new DefaultAnimationModel.DefaultChannel(
                        new DefaultAnimationModel.DefaultSampler(
                                times, Interpolation.LINEAR, values),
                        node,
                        path));
    }

    /**
     * Turns +Y into each direction, each turn the least one on from the last, so that neither the
     * bar nor what hangs from it twists; what twist a round leaves over (on a turning plane) is
     * taken back evenly.
     *
     * @return x, y, z, w each
     */
    static float[] rotations(Vector3D[] directions, boolean periodic) {
        Quaternion[] turns = new Quaternion[directions.length];
        Vector3D last = Vector3D.PLUS_J;
        Quaternion turn = Quaternion.IDENTITY;
        for (int i = 0; i < turns.length; i++) {
            Vector3D next = directions[i].getNorm() > 1e-9 ? directions[i].normalize() : last;
            turn = least(last, next).multiply(turn).normalize();
            turns[i] = turn;
            last = next;
        }
        int end = turns.length - 1;
        // First back, then on: a turn about +Y, or none.
        Quaternion left = turns[0].getConjugate().multiply(turns[end]);
        double twist = periodic ? 2 * Math.atan2(left.getQ2(), left.getQ0()) : 0;
        twist -= 2 * Math.PI * Math.rint(twist / (2 * Math.PI));
        float[] out = new float[4 * turns.length];
        for (int i = 0; i < turns.length; i++) {
            double half = -twist * i / end / 2;
            Quaternion q = turns[i].multiply(new Quaternion(Math.cos(half), 0, Math.sin(half), 0));
            out[4 * i] = (float) q.getQ1();
            out[4 * i + 1] = (float) q.getQ2();
            out[4 * i + 2] = (float) q.getQ3();
            out[4 * i + 3] = (float) q.getQ0();
        }
        return out;
    }

    /** The least turn from one unit vector to another. */
    private static Quaternion least(Vector3D from, Vector3D to) {
        double w = 1 + from.dotProduct(to);
        Vector3D axis = from.crossProduct(to);
        if (w < 1e-12) {
            axis = from.orthogonal();
            w = 0;
        }
        return new Quaternion(w, axis.getX(), axis.getY(), axis.getZ()).normalize();
    }

    private static DefaultNodeModel node(String name) {
        DefaultNodeModel node = new DefaultNodeModel();
        node.setName(name);
        return node;
    }

    private DefaultMeshModel mesh(String name, DefaultMeshPrimitiveModel part, Palette.Ink ink) {
        part.setMaterialModel(material(ink));
        return mesh(name, part);
    }

    private static DefaultMeshModel mesh(String name, DefaultMeshPrimitiveModel part) {
        DefaultMeshModel mesh = new DefaultMeshModel();
        mesh.setName(name);
        mesh.addMeshPrimitiveModel(part);
        return mesh;
    }

    /** In the colours of the dark palette, which show on the dark and the grey of 3-D programs. */
    private MaterialModel material(Palette.Ink ink) {
        return materials.computeIfAbsent(
                ink,
                i -> {
                    Color colour = i.on(Palette.Theme.DARK);
                    MaterialModelV2 made =
                            MaterialBuilder.create()
                                    .setBaseColorFactor(
                                            linear(colour.getRed()),
                                            linear(colour.getGreen()),
                                            linear(colour.getBlue()),
                                            1)
                                    .setMetallicRoughnessFactors(0, 0.6f)
                                    .build();
                    made.setName(i.key());
                    return made;
                });
    }

    /** glTF wants light, not what screens are told: sRGB's transfer, IEC 61966-2-1. */
    static float linear(int channel) {
        double c = channel / 255.0;
        return (float) (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
    }

    private static FloatBuffer points(Vector3D[] all) {
        float[] out = new float[3 * all.length];
        for (int i = 0; i < all.length; i++) {
            put(out, i, all[i]);
        }
        return FloatBuffer.wrap(out);
    }

    private static float[] floats(Vector3D p) {
        float[] out = new float[3];
        put(out, 0, p);
        return out;
    }

    private static void put(float[] into, int i, Vector3D p) {
        into[3 * i] = (float) p.getX();
        into[3 * i + 1] = (float) p.getY();
        into[3 * i + 2] = (float) p.getZ();
    }
}
