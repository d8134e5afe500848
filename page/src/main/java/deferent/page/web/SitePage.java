package deferent.page.web;

import deferent.page.sheet.Taught;
import deferent.tell.Telling;
import deferent.tell.Told;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** What the pages of a site have in common. */
final class SitePage {
    /** Behind the name of a picture with numbered poses. */
    static final String POSES = "-poses";

    /** Browsers differ in what of a page's own folder is 'self' where it was opened from a file. */
    private static final String POLICY =
            "default-src 'none'; script-src 'self' file:; style-src 'self' file:; img-src 'self' file: data:;"
                    + " font-src data:; base-uri 'none'; form-action 'none'";

    private SitePage() {}

    /**
     * A whole page.
     *
     * @param title of its own
     * @param whole what the site is called
     * @param about what it is, for who searches the web
     */
    static String html(String title, String whole, String about, Consumer<Html> main) {
        boolean index = title.equals(whole);
        Html page = new Html();
        page.html("<!doctype html>\n").open("html", "lang", "en").open("head");
        page.alone("meta", "charset", "utf-8").html("\n");
        page.alone("meta", "http-equiv", "Content-Security-Policy", "content", POLICY).html("\n");
        meta(page, "viewport", "width=device-width, initial-scale=1");
        meta(page, "color-scheme", "light dark");
        meta(page, "referrer", "no-referrer");
        meta(page, "generator", "Deferent");
        meta(page, "description", about);
        page.line("title", index ? whole : title + " – " + whole);
        page.alone("link", "rel", "icon", "href", "data:,").html("\n");
        page.alone("link", "rel", "stylesheet", "href", "site.css").html("\n");
        page.open("script", "src", "site.js", "defer", ".").close();
        page.close().open("body");
        if (!index) {
            page.open("nav", "aria-label", "Site");
            page.line("a", whole, "href", Site.INDEX).close();
        }
        page.open("main");
        main.accept(page);
        page.open("section", "class", "take-care", "aria-labelledby", "take-care");
        page.line("h2", "Take care", "id", "take-care").open("ul");
        Telling.cautions().forEach(caution -> page.line("li", caution));
        page.close().close().close();
        page.line("footer", "Made with Deferent. These pages send nothing to anybody.");
        return page.close().close().whole();
    }

    private static void meta(Html page, String name, String content) {
        page.alone("meta", "name", name, "content", content).html("\n");
    }

    static String picture(String name) {
        return "pictures/" + name + ".svg";
    }

    /** A still picture. */
    static void picture(Html page, String name, String alt) {
        String size = Integer.toString(Site.PICTURE);
        page.alone(
                "img",
                "src",
                picture(name),
                "alt",
                alt,
                "width",
                size,
                "height",
                size,
                "loading",
                "lazy");
    }

    /** What is seen of a pattern: which motions, and what the heads draw. */
    static String drawn(Taught taught) {
        return String.join(" ", taught.drawn().stream().map(Told::text).toList());
    }

    /** A small figure: a picture, which the script lets move. */
    static void small(Html page, String name, String alt) {
        page.open("span", "class", "small", "data-moves", name);
        picture(page, name, alt);
        page.close();
    }

    /** A heading with sentences under it; nothing where there are none. */
    static void section(Html page, String id, String heading, List<Told> told) {
        if (told.isEmpty()) {
            return;
        }
        page.open("section", "aria-labelledby", id).line("h2", heading, "id", id);
        sentences(page, told);
        page.close();
    }

    static void sentences(Html page, List<Told> told) {
        page.open("ul");
        for (Told one : told) {
            boolean warns = one.tone() == Told.Tone.WARN || one.tone() == Told.Tone.DANGER;
            if (warns) {
                page.line("li", one.text(), "class", "warns");
            } else {
                page.line("li", one.text());
            }
        }
        page.close();
    }

    /** The large figure, which the script unfolds. */
    static void player(Html page, String moves, String alt, Optional<String> now) {
        page.html(
                Modules.text("site/player.html")
                        .replace("{moves}", moves)
                        .replace("{alt}", LessonPage.escaped(alt))
                        .replace(
                                "{now}",
                                now.map(
                                                name ->
                                                        "<p id=\"now\">"
                                                                + LessonPage.escaped(name)
                                                                + "</p>\n")
                                        .orElse("")));
    }

    /** Whose it is, or that it is invented. */
    static void author(Html page, Optional<String> author) {
        author.ifPresent(whose -> page.line("p", whose, "class", "author"));
    }

    /** Labels, each of which leads to what else bears it. */
    static void labels(Html page, List<String> tags) {
        if (tags.isEmpty()) {
            return;
        }
        page.open("p", "class", "labels").text("Labels: ");
        for (int i = 0; i < tags.size(); i++) {
            page.text(i == 0 ? "" : ", ");
            page.open("a", "href", Site.INDEX + "#find=" + encoded(tags.get(i)));
            page.text(tags.get(i)).close();
        }
        page.close();
    }

    private static String encoded(String word) {
        return URLEncoder.encode(word, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
