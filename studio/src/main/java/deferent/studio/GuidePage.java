package deferent.studio;

import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Refused;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.commonmark.Extension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Code;
import org.commonmark.node.Heading;
import org.commonmark.node.HtmlBlock;
import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.Paragraph;
import org.commonmark.node.Text;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;

/**
 * One page of the guide as the studio shows it: its Markdown as a piece of HTML, without any HTML
 * of its own. Addresses of pages and pictures are from the studio's own, below {@code docs/}; a
 * link to what the studio does not hold is left as its words. A phrase, and a picture that is made
 * of one, lead to that phrase on the stage.
 */
final class GuidePage extends AbstractVisitor {
    private static final String FOLDER = "docs/";
    private static final List<Extension> TABLES = List.of(TablesExtension.create());
    private static final Parser PARSER = Parser.builder().extensions(TABLES).build();
    private static final HtmlRenderer RENDERER =
            HtmlRenderer.builder()
                    .extensions(TABLES)
                    .escapeHtml(true)
                    .attributeProviderFactory(context -> GuidePage::attributes)
                    .build();

    /** The command that made a picture, and what it was made of. */
    private static final Pattern MADE = Pattern.compile("<!-- \\./deferent \\w+ \"([^\"]+)\".*");

    private static final Pattern PAIRED = Pattern.compile(".* (?:vs|riding) .*");

    private final URI at;
    private final Predicate<String> held;

    private GuidePage(URI at, Predicate<String> held) {
        this.at = at;
        this.held = held;
    }

    /**
     * A page of HTML.
     *
     * @param path of the page, from the guide's folder
     * @param held whether the studio holds a file at such a path
     */
    static String html(String path, String markdown, Predicate<String> held) {
        Node page = PARSER.parse(markdown);
        page.accept(new GuidePage(URI.create(path), held));
        return RENDERER.render(page);
    }

    private static void attributes(Node node, String tag, Map<String, String> attributes) {
        switch (tag) {
            // What may be wider than the page is moved by keys too.
            case "pre" -> attributes.put("tabindex", "0");
            case "img" -> attributes.put("loading", "lazy");
            case "a" -> {
                if (attributes.getOrDefault("href", "").startsWith("https:")) {
                    attributes.put("target", "_blank");
                }
            }
            default -> {}
        }
    }

    /** Below the heading of what it is shown in. */
    @Override
    public void visit(Heading heading) {
        heading.setLevel(Math.min(6, heading.getLevel() + 1));
        visitChildren(heading);
    }

    @Override
    public void visit(HtmlBlock block) {
        Matcher made = MADE.matcher(block.getLiteral());
        if (made.matches() && block.getNext() instanceof Paragraph picture) {
            phrase(made.group(1)).ifPresent(picture::appendChild);
        }
        if (block.getLiteral().startsWith("<!--")) {
            block.unlink();
        }
    }

    @Override
    public void visit(Code code) {
        if (!PAIRED.matcher(code.getLiteral()).matches()) {
            return;
        }
        phrase(code.getLiteral())
                .ifPresent(
                        link -> {
                            code.insertBefore(link);
                            link.getFirstChild().unlink();
                            link.appendChild(code);
                        });
    }

    /** A link that puts a phrase on the stage; none where it is no phrase. */
    private static Optional<Link> phrase(String phrase) {
        try {
            Phrase.parse(phrase);
        } catch (Refused none) {
            return Optional.empty();
        }
        String packed = URLEncoder.encode(phrase, StandardCharsets.UTF_8);
        Link link = new Link("#phrase=" + packed, "Put it on the stage");
        link.appendChild(new Text("Put it on the stage"));
        return Optional.of(link);
    }

    @Override
    public void visit(Image image) {
        within(image.getDestination()).ifPresentOrElse(image::setDestination, () -> words(image));
    }

    @Override
    public void visit(Link link) {
        visitChildren(link);
        if (!link.getDestination().matches("(?:https:|#phrase=).*")) {
            within(link.getDestination()).ifPresentOrElse(link::setDestination, () -> words(link));
        }
    }

    /** Leaves the words alone of what leads nowhere. */
    private static void words(Node node) {
        for (Node child = node.getFirstChild(); child != null; child = node.getFirstChild()) {
            node.insertBefore(child);
        }
        node.unlink();
    }

    /** The studio's address of what a page points at. */
    private Optional<String> within(String address) {
        try {
            String path = String.valueOf(at.resolve(address).normalize().getPath());
            return held.test(path) ? Optional.of(FOLDER + path) : Optional.empty();
        } catch (IllegalArgumentException noAddress) {
            return Optional.empty();
        }
    }
}
