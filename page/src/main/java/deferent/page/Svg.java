package deferent.page;

import java.awt.Color;
import java.awt.Graphics2D;
import java.io.StringWriter;
import java.util.EnumMap;
import java.util.Map;
import java.util.function.Consumer;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Stills as SVG: one group an item, with an id and a title, so that a designer finds
 * "left-head-trail" by name. Coordinates are pixels, to a hundredth.
 */
public final class Svg {
    private static final String SPACE = "http://www.w3.org/2000/svg";

    private static final String DARKENED = darkened();

    private Svg() {}

    /** An SVG document. */
    public static String of(Scene scene, Still still) {
        return of(scene, still, false);
    }

    /** An SVG document on a light ground, or on a dark one where the reader's screen is dark. */
    public static String lightOrDark(Scene scene, Still still) {
        String light = of(scene, still.with(Palette.Theme.LIGHT));
        int head = light.indexOf('>') + 1;
        return light.substring(0, head) + "<style>" + DARKENED + "</style>" + light.substring(head);
    }

    private static String darkened() {
        StringBuilder style = new StringBuilder("@media screen and (prefers-color-scheme:dark){");
        for (Palette.Ink ink : Palette.Ink.values()) {
            String on = rgb(ink.on(Palette.Theme.LIGHT));
            String under = rgb(ink.on(Palette.Theme.DARK));
            for (String what : new String[] {"fill", "stroke"}) {
                style.append(String.format("[%s=\"%s\"]{%s:%s}", what, on, what, under));
            }
        }
        return style.append('}').toString();
    }

    private static String rgb(Color colour) {
        return "rgb(" + colour.getRed() + "," + colour.getGreen() + "," + colour.getBlue() + ")";
    }

    /** As {@link #of(Scene, Still)}, whose groups are going to be moved. */
    static String of(Scene scene, Still still, boolean moves) {
        Groups paper = groups(moves);
        Painter.paint(scene, still, paper);
        return paper.written(
                still.width(),
                still.height(),
                still.caption().isEmpty() ? "" : still.caption().get(0));
    }

    /**
     * What else is drawn: a page, a calendar.
     *
     * @param title for people who cannot see it; may be empty
     * @param strokes draws on pixels from the upper left, words by {@link Lettering}
     */
    public static String drawn(int width, int height, String title, Consumer<Graphics2D> strokes) {
        Groups paper = groups(false);
        paper.group(
                "page",
                title,
                g -> {
                    g.setColor(Palette.Ink.CARD.on(Palette.Theme.LIGHT));
                    g.fillRect(0, 0, width, height);
                    strokes.accept(g);
                });
        return paper.written(width, height, title);
    }

    private static Groups groups(boolean moves) {
        Document document = empty();
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
        context.setComment(null);
        context.setPrecision(2);
        // What Batik starts from: its own font would ask the machine for its family.
        SVGGeneratorContext.GraphicContextDefaults plain =
                new SVGGeneratorContext.GraphicContextDefaults();
        plain.setFont(Typesetter.font("sans-serif", Face.REGULAR, 12));
        context.setGraphicContextDefaults(plain);
        return new Groups(document, new SVGGraphics2D(context, false), moves);
    }

    private static Document empty() {
        try {
            return DocumentBuilderFactory.newDefaultNSInstance()
                    .newDocumentBuilder()
                    .getDOMImplementation()
                    .createDocument(SPACE, "svg", null);
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException("the JDK cannot make a document", e);
        }
    }

    private static final class Groups implements Paper, Typesetter {
        private final Document document;
        private final SVGGraphics2D graphics;
        private final Element all;
        private Element into;
        private final Map<Face, String> used = new EnumMap<>(Face.class);

        private final boolean moves;

        Groups(Document document, SVGGraphics2D graphics, boolean moves) {
            this.moves = moves;
            this.document = document;
            this.graphics = graphics;
            this.all = document.createElementNS(SPACE, "g");
            this.into = all;
            graphics.setRenderingHint(Typesetter.KEY, this);
        }

        @Override
        public void set(Graphics2D g, Face face, double size, String line, double x, double y) {
            used.merge(face, line, String::concat);
            Typesetter.draw(g, face, size, line, x, y);
        }

        @Override
        public void group(String id, String name, Consumer<Graphics2D> strokes) {
            strokes.accept(graphics);
            named(graphics.getTopLevelGroup(), id, name);
        }

        @Override
        public void light(String id, String name, Consumer<Graphics2D> strokes) {
            strokes.accept(graphics);
            Element group = graphics.getTopLevelGroup();
            group.setAttributeNS(null, "style", "mix-blend-mode:screen");
            named(group, id, name);
        }

        @Override
        public boolean moves() {
            return moves;
        }

        @Override
        public void within(String id, String name, Runnable inner) {
            Element outer = into;
            into = document.createElementNS(SPACE, "g");
            inner.run();
            Element group = into;
            into = outer;
            named(group, id, name);
        }

        private void named(Element group, String id, String name) {
            group.setAttributeNS(null, "id", id);
            Element title = document.createElementNS(SPACE, "title");
            title.appendChild(document.createTextNode(name));
            group.insertBefore(title, group.getFirstChild());
            into.appendChild(group);
        }

        /** Where a viewer passes embedded letters by, some plain ones of its own stand in. */
        private static void orPlain(Element group) {
            if (group.hasAttribute("font-family")) {
                String family = group.getAttribute("font-family").replace("'", "");
                group.setAttributeNS(null, "font-family", family + ", sans-serif");
            }
            for (Node n = group.getFirstChild(); n != null; n = n.getNextSibling()) {
                if (n instanceof Element element) {
                    orPlain(element);
                }
            }
        }

        String written(int width, int height, String called) {
            Element root = document.getDocumentElement();
            root.setAttributeNS(null, "width", Integer.toString(width));
            root.setAttributeNS(null, "height", Integer.toString(height));
            root.setAttributeNS(null, "viewBox", "0 0 " + width + " " + height);
            root.setAttributeNS(null, "role", "img");
            // Nothing is to be nudged onto whole pixels: points lie where the motion puts them.
            root.setAttributeNS(null, "shape-rendering", "geometricPrecision");
            if (!called.isEmpty()) {
                Element title = document.createElementNS(SPACE, "title");
                title.appendChild(document.createTextNode(called));
                root.appendChild(title);
            }
            if (!used.isEmpty()) {
                Element style = document.createElementNS(SPACE, "style");
                used.forEach(
                        (face, words) ->
                                style.appendChild(
                                        document.createTextNode(
                                                face.embedded(words.codePoints()))));
                root.appendChild(style);
            }
            for (Node group = all.getFirstChild(); group != null; group = all.getFirstChild()) {
                root.appendChild(group);
            }
            orPlain(root);
            StringWriter out = new StringWriter();
            try {
                Transformer writer = TransformerFactory.newDefaultInstance().newTransformer();
                writer.setOutputProperty(OutputKeys.OMIT_XML_DECLARATION, "yes");
                writer.transform(new DOMSource(root), new StreamResult(out));
            } catch (TransformerException e) {
                throw new IllegalStateException("an SVG in memory cannot be written", e);
            }
            return out.toString();
        }
    }
}
