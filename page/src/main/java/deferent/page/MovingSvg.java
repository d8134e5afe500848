package deferent.page;

import deferent.motion.pairing.Refusal;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Point2D;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * A scene as an SVG that moves by itself, a cycle over and over, wherever a picture may stand: its
 * motion is declared (SMIL), it holds no script and asks for nothing.
 *
 * <p>It is the painter's own still with motion added to its groups, so the two agree; hands and
 * heads are carried along, the ends of tethers and link follow them, and the light runs over its
 * figure. Between keys a point goes straight; there are as many keys as keep it within an eighth of
 * a pixel. Programs that know no motion, and readers who ask for less of it
 * (prefers-reduced-motion), see the still. Labels and counts do not move and are left out.
 */
public final class MovingSvg {
    private static final String SPACE = "http://www.w3.org/2000/svg";
    private static final String STYLE =
            ".resting{display:none}"
                    + "@media (prefers-reduced-motion:reduce)"
                    + "{.moving{display:none}.resting{display:inline}}";
    private static final int FEWEST = 48;
    private static final int MOST = 1536;
    private static final double OFF = 0.12;
    private static final double STANDS = 0.005;
    private static final int COATS = 8;

    // By the kinds of a path iterator: move, line, quadratic, cubic, close.
    private static final String LETTERS = "MLQCZ";
    private static final int[] NUMBERS = {2, 2, 4, 6, 0};

    private final Scene scene;
    private final Still still;
    private final Framing framing;
    private final Brush brush;
    private final Document document;
    private final String duration;
    private final Map<Track, Point2D.Double[]> ways = new HashMap<>();
    private final Map<Item, Trail> trails;
    private final Optional<Silhouette> body;

    private MovingSvg(Scene scene, Still still, double slow) {
        this.scene = scene;
        this.still = still;
        Layout layout = Layout.of(still);
        this.brush = layout.brush();
        this.framing = Framing.of(scene, still.view(), layout.room());
        // A body stands still in it, as nothing of a limb but its ends could be moved.
        Scene armless = scene.withoutArms();
        MomentPainter painter =
                new MomentPainter(armless, framing, brush, still.layers(), layout.paper());
        this.trails = painter.trails();
        this.body = painter.body(still.time());
        this.document = parsed(Svg.of(armless, still, true));
        this.duration =
                new BigDecimal(scene.period() / slow)
                                .round(new MathContext(12, RoundingMode.HALF_EVEN))
                                .stripTrailingZeros()
                                .toPlainString()
                        + "s";
        List<Track> tracks = new ArrayList<>();
        for (Item item : scene.items()) {
            if (item.form() instanceof Item.Shape.Spot spot) {
                tracks.add(spot.track());
            }
        }
        int keys = keys(tracks);
        for (Track track : tracks) {
            ways.put(track, way(track, keys));
        }
    }

    /** As fast as it is spun. */
    public static String of(Scene scene, Still still) {
        return of(scene, still, 1);
    }

    /**
     * A scene that moves, as one file.
     *
     * @param still what is shown where nothing moves, and from where, how large and on what ground
     * @param slow 1 as spun, 0.5 half as fast; from 0.01 to 10
     */
    public static String of(Scene scene, Still still, double slow) {
        Refusal.within(slow, 0.01, 10, "speed of a moving picture", "times as spun");
        Still plain = still.with(StillForm.MOMENT).without(Layer.LABELS).without(Layer.COUNTS);
        return new MovingSvg(scene, plain, slow).moved();
    }

    private String moved() {
        Element root = document.getDocumentElement();
        Element style = element("style");
        style.setTextContent(STYLE);
        root.insertBefore(style, firstElement(root));
        Map<String, Element> groups = new HashMap<>();
        for (Element group : children(root)) {
            groups.put(group.getAttribute("id"), group);
        }
        for (Item item : scene.items()) {
            Element group = groups.get(item.id());
            if (group != null && moves(item)) {
                move(item, group, root);
            }
        }
        return written();
    }

    private boolean moves(Item item) {
        if (item.form() instanceof Item.Shape.Run) {
            return item.role() == Role.HEAD_TRAIL;
        }
        if (item.form() instanceof Item.Shape.Spot spot) {
            return moves(spot.track());
        }
        return item.form() instanceof Item.Shape.Span span
                && (moves(span.from()) || moves(span.to()));
    }

    private void move(Item item, Element group, Element root) {
        Element resting = (Element) group.cloneNode(true);
        resting.setAttribute("id", "resting-" + item.id());
        resting.setAttribute("class", "resting");
        root.insertBefore(resting, group.getNextSibling());
        group.setAttribute("class", "moving");
        if (item.form() instanceof Item.Shape.Spot spot) {
            carry(spot.track(), group);
        } else if (item.form() instanceof Item.Shape.Span span) {
            stretch(span, item, group);
        } else if (item.form() instanceof Item.Shape.Run run) {
            light(item, run, group);
        }
    }

    /** A marker goes where its point goes. */
    private void carry(Track track, Element group) {
        Element carried = element("g");
        for (Node child = afterTitle(group); child != null; child = afterTitle(group)) {
            carried.appendChild(child);
        }
        Point2D.Double here = framing.place(scene.at(track, still.time()));
        StringBuilder values = new StringBuilder();
        for (Point2D.Double p : way(track)) {
            values.append(values.isEmpty() ? "" : ";")
                    .append(number(p.x - here.x, 2))
                    .append(' ')
                    .append(number(p.y - here.y, 2));
        }
        Element motion = animated("animateTransform", "transform", values);
        motion.setAttribute("type", "translate");
        carried.appendChild(motion);
        group.appendChild(carried);
    }

    /** A line's ends follow their points. */
    private void stretch(Item.Shape.Span span, Item item, Element group) {
        Element line = line(group).or(() -> elsewhere(span, item, group)).orElse(null);
        if (line == null) {
            return;
        }
        Point2D.Double from = framing.place(scene.at(span.from(), still.time()));
        Point2D.Double to = framing.place(scene.at(span.to(), still.time()));
        end(line, "x1", from.x, span.from(), p -> p.x);
        end(line, "y1", from.y, span.from(), p -> p.y);
        end(line, "x2", to.x, span.to(), p -> p.x);
        end(line, "y2", to.y, span.to(), p -> p.y);
    }

    private interface Axis {
        double of(Point2D.Double p);
    }

    private void end(Element line, String name, double now, Track track, Axis axis) {
        line.setAttribute(name, number(now, 2));
        if (moves(track)) {
            StringBuilder values = new StringBuilder();
            for (Point2D.Double p : way(track)) {
                values.append(values.isEmpty() ? "" : ";").append(number(axis.of(p), 2));
            }
            line.appendChild(animated("animate", name, values));
        }
    }

    private static Optional<Element> line(Element group) {
        NodeList lines = group.getElementsByTagName("line");
        return lines.getLength() == 0 ? Optional.empty() : Optional.of((Element) lines.item(0));
    }

    /**
     * A line that has no length at the still's moment is painted at the one where it is longest.
     */
    private Optional<Element> elsewhere(Item.Shape.Span span, Item item, Element group) {
        Point2D.Double[] from = way(span.from());
        Point2D.Double[] to = way(span.to());
        int longest = 0;
        for (int i = 1; i < from.length; i++) {
            if (from[i].distance(to[i]) > from[longest].distance(to[longest])) {
                longest = i;
            }
        }
        double start = scene.trace().interval().start();
        double time = start + scene.period() * longest / (from.length - 1);
        for (Element other :
                children(parsed(Svg.of(scene, still.at(time), true)).getDocumentElement())) {
            if (other.getAttribute("id").equals(item.id())) {
                for (Element child : children(other)) {
                    if (!child.getTagName().equals("title")) {
                        group.appendChild(document.importNode(child, true));
                    }
                }
            }
        }
        return line(group);
    }

    /** The whole figure faintly, and coats of light over ever younger parts of it. */
    private void light(Item item, Item.Shape.Run run, Element group) {
        for (Node child = afterTitle(group); child != null; child = afterTitle(group)) {
            group.removeChild(child);
        }
        Trail trail = trails.getOrDefault(item, Trail.of(scene, framing, brush, item, run));
        PaperRun lane = trail.lane();
        if (lane.length() < 1) {
            return;
        }
        List<Trail.Shown> parts = trail.shown(body);
        if (!parts.isEmpty()) {
            masked(item, trail, parts, group);
        }
        String ink = Palette.hex(brush.ink(trail.look().ink()));
        String way = item.id() + "-way";
        Element path = element("path");
        path.setAttribute("id", way);
        path.setAttribute("d", data(lane.whole()));
        path.setAttribute("pathLength", number(lane.length(), 2));
        Element defs = element("defs");
        defs.appendChild(path);
        group.appendChild(defs);
        Element old = along(way, ink, trail.oldWidth());
        old.setAttribute("stroke-opacity", number(Trail.OLD, 3));
        group.appendChild(old);
        boolean dashed = trail.dash().length == 2;
        Element coats = dashed ? mask(item.id() + "-young", defs) : group;
        int keys = Math.min(384, Math.max(FEWEST, (way(run.track()).length - 1) / 4));
        for (int coat = COATS; coat >= 1; coat--) {
            double share = (double) coat / COATS;
            Element young = along(way, dashed ? "#fff" : ink, trail.width(share));
            young.setAttribute("stroke-opacity", number(1 - Trail.through(1.0 / COATS), 3));
            if (!dashed) {
                young.setAttribute("stroke-linecap", "round");
            }
            run(young, lane, share * Trail.FADE, keys);
            coats.appendChild(young);
        }
        if (dashed) {
            Element shown = along(way, ink, trail.look().width() * brush.unit());
            double[] dash = trail.dash();
            shown.setAttribute("stroke-dasharray", number(dash[0], 2) + " " + number(dash[1], 2));
            shown.setAttribute("stroke-dashoffset", number(dash[0] / 2, 2));
            shown.setAttribute("mask", "url(#" + item.id() + "-young)");
            group.appendChild(shown);
        }
    }

    // The light runs over the whole figure, and what passes before it or hides it lies in the way.
    private void masked(Item item, Trail trail, List<Trail.Shown> parts, Element group) {
        String id = item.id() + "-seen";
        Element defs = element("defs");
        Element mask = mask(id, defs);
        for (Trail.Shown part : parts) {
            Element path = element("path");
            path.setAttribute("d", data(part.line()));
            path.setAttribute("fill", "none");
            path.setAttribute("stroke", "#fff");
            path.setAttribute("stroke-opacity", number(part.strength(), 3));
            path.setAttribute("stroke-width", number(trail.width(0) + 1, 2));
            mask.appendChild(path);
        }
        group.appendChild(defs);
        group.setAttribute("mask", "url(#" + id + ")");
    }

    private Element mask(String id, Element defs) {
        Element mask = element("mask");
        mask.setAttribute("id", id);
        mask.setAttribute("maskUnits", "userSpaceOnUse");
        mask.setAttribute("x", "0");
        mask.setAttribute("y", "0");
        mask.setAttribute("width", Integer.toString(still.width()));
        mask.setAttribute("height", Integer.toString(still.height()));
        defs.appendChild(mask);
        return mask;
    }

    private Element along(String way, String ink, double width) {
        Element use = element("use");
        use.setAttribute("href", "#" + way);
        use.setAttribute("fill", "none");
        use.setAttribute("stroke", ink);
        use.setAttribute("stroke-width", number(width, 2));
        use.setAttribute("stroke-linejoin", "round");
        return use;
    }

    /** One dash as long as the head came in so much of a period, its front where the head is. */
    private void run(Element young, PaperRun lane, double back, int keys) {
        StringBuilder dashes = new StringBuilder();
        StringBuilder offsets = new StringBuilder();
        double whole = lane.length();
        for (int i = 0; i <= keys; i++) {
            double to = (double) i / keys;
            double from = lane.closed() ? to - back : Math.max(0, to - back);
            double a = come(lane, from);
            double length = Math.min(whole - 0.01, come(lane, to) - a);
            dashes.append(i == 0 ? "" : ";")
                    .append(number(length, 1))
                    .append(' ')
                    .append(number(whole - length, 1));
            offsets.append(i == 0 ? "" : ";").append(number(-a, 1));
        }
        double share = lane.share(still.time());
        double a = come(lane, lane.closed() ? share - back : Math.max(0, share - back));
        double length = Math.min(whole - 0.01, come(lane, share) - a);
        young.setAttribute("stroke-dasharray", number(length, 1) + " " + number(whole - length, 1));
        young.setAttribute("stroke-dashoffset", number(-a, 1));
        young.appendChild(animated("animate", "stroke-dasharray", dashes));
        young.appendChild(animated("animate", "stroke-dashoffset", offsets));
    }

    /** How far a point has come at a share of the period that may lie rounds before or after. */
    private static double come(PaperRun lane, double share) {
        double rounds = Math.floor(share);
        if (!lane.closed() || share == 1) {
            return lane.comeAt(Math.min(1, share));
        }
        return rounds * lane.length() + lane.comeAt(share - rounds);
    }

    private static String data(Path2D.Double line) {
        StringBuilder data = new StringBuilder();
        double[] at = new double[6];
        for (PathIterator i = line.getPathIterator(null); !i.isDone(); i.next()) {
            int kind = i.currentSegment(at);
            data.append(LETTERS.charAt(kind));
            for (int k = 0; k < NUMBERS[kind]; k++) {
                data.append(k == 0 ? "" : " ").append(number(at[k], 2));
            }
        }
        return data.toString();
    }

    private Element animated(String how, String what, CharSequence values) {
        Element motion = element(how);
        motion.setAttribute("attributeName", what);
        motion.setAttribute("values", values.toString());
        motion.setAttribute("dur", duration);
        motion.setAttribute("repeatCount", "indefinite");
        return motion;
    }

    // Where the points go ----------------------------------------------------------------------

    /** Twice as many until nothing strays further from its way than the eye could tell. */
    private int keys(List<Track> tracks) {
        for (int keys = FEWEST; keys < MOST; keys *= 2) {
            double off = 0;
            for (Track track : tracks) {
                off = Math.max(off, strays(track, keys));
            }
            if (off < OFF) {
                return keys;
            }
        }
        return MOST;
    }

    private double strays(Track track, int keys) {
        Point2D.Double[] way = way(track, keys);
        double off = 0;
        for (int i = 0; i < keys; i++) {
            for (double part : new double[] {0.25, 0.5, 0.75}) {
                Point2D.Double meant = at(track, (i + part) / keys);
                double x = way[i].x + part * (way[i + 1].x - way[i].x);
                double y = way[i].y + part * (way[i + 1].y - way[i].y);
                off = Math.max(off, meant.distance(x, y));
            }
        }
        return off;
    }

    private Point2D.Double[] way(Track track, int keys) {
        Point2D.Double[] way = new Point2D.Double[keys + 1];
        for (int i = 0; i <= keys; i++) {
            way[i] = at(track, i == keys && scene.trace().periodic() ? 0 : (double) i / keys);
        }
        return way;
    }

    private Point2D.Double at(Track track, double share) {
        double time = scene.trace().interval().start() + share * scene.period();
        return framing.place(scene.at(track, time));
    }

    private Point2D.Double[] way(Track track) {
        Point2D.Double[] way = ways.get(track);
        return way == null ? way(track, FEWEST) : way;
    }

    private boolean moves(Track track) {
        Point2D.Double[] way = way(track);
        for (Point2D.Double p : way) {
            if (p.distance(way[0]) > STANDS) {
                return true;
            }
        }
        return false;
    }

    // The document -----------------------------------------------------------------------------

    private Element element(String name) {
        return document.createElementNS(SPACE, name);
    }

    private static List<Element> children(Element parent) {
        List<Element> all = new ArrayList<>();
        for (Node child = parent.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Element element) {
                all.add(element);
            }
        }
        return all;
    }

    private static Node firstElement(Element root) {
        List<Element> all = children(root);
        return all.get(all.size() > 1 && all.get(0).getTagName().equals("title") ? 1 : 0);
    }

    /** The first child that is not the title; null when there is none. */
    private static @Nullable Node afterTitle(Element group) {
        Node child = group.getFirstChild();
        while (child != null && child.getNodeName().equals("title")) {
            child = child.getNextSibling();
        }
        return child;
    }

    private static Document parsed(String svg) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultNSInstance();
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            return factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new IllegalStateException("our own SVG cannot be read", e);
        }
    }

    private String written() {
        StringWriter out = new StringWriter();
        try {
            Transformer writer = TransformerFactory.newDefaultInstance().newTransformer();
            writer.setOutputProperty(OutputKeys.OMIT_XML_DECLARATION, "yes");
            writer.transform(new DOMSource(document.getDocumentElement()), new StreamResult(out));
        } catch (TransformerException e) {
            throw new IllegalStateException("an SVG in memory cannot be written", e);
        }
        return out.toString();
    }

    /** The shortest decimal of at most so many places. */
    private static String number(double value, int places) {
        long unit = places == 1 ? 10 : places == 2 ? 100 : 1000;
        long scaled = Math.round(Math.abs(value) * unit);
        StringBuilder text = new StringBuilder(10);
        if (value < 0 && scaled > 0) {
            text.append('-');
        }
        text.append(scaled / unit);
        long rest = scaled % unit;
        if (rest > 0) {
            text.append('.');
            for (long digit = unit / 10; digit > 0 && rest > 0; digit /= 10) {
                text.append(rest / digit);
                rest %= digit;
            }
        }
        return text.toString();
    }
}
