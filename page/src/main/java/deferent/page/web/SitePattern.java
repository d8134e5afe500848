package deferent.page.web;

import deferent.page.sheet.Taught;
import deferent.record.PatternDocument;
import deferent.tell.Told;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * A pattern's page: what can hurt, the figure, how to begin, numbered poses, what to watch, and
 * what comes next.
 */
record SitePattern(TaughtShelf shelf, SiteNames names, int at) {
    String html() {
        Taught taught = taught();
        String phrase = taught.phrase().orElse("");
        return SitePage.html(
                taught.pattern().name(),
                shelf.title(),
                (phrase.isEmpty() ? "" : phrase + ". ") + taught.does().get(2).text(),
                this::main);
    }

    private Taught taught() {
        return shelf.patterns().get(at);
    }

    private void main(Html page) {
        Taught taught = taught();
        PatternDocument pattern = taught.pattern();
        page.line("h1", pattern.name());
        taught.phrase()
                .filter(phrase -> !phrase.equals(pattern.name()))
                .ifPresent(phrase -> page.line("p", phrase, "class", "phrase"));
        SitePage.author(page, pattern.author().or(this::ofItsSet));
        if (!taught.dangers().isEmpty()) {
            page.open("section", "class", "dangers", "aria-labelledby", "danger");
            page.line("h2", "Danger", "id", "danger").open("ul");
            taught.dangers().forEach(danger -> page.line("li", danger.text()));
            page.close().close();
        }
        page.open("div", "class", "beside").open("div");
        figure(page, taught);
        poses(page, taught);
        page.close().open("div");
        begin(page, taught);
        SitePage.section(page, "links", "How they link", taught.links());
        SitePage.section(page, "watch", "What to watch", taught.watch());
        next(page, taught);
        sets(page);
        if (!pattern.note().isBlank()) {
            page.open("section", "aria-labelledby", "note").line("h2", "Note", "id", "note");
            page.line("p", pattern.note(), "class", "note").close();
        }
        SitePage.labels(page, pattern.tags());
        page.close().close();
    }

    private void figure(Html page, Taught taught) {
        page.open("figure", "class", "large");
        SitePage.picture(page, names.pattern(at), "As it begins. " + SitePage.drawn(taught));
        SitePage.player(
                page,
                names.pattern(at),
                "Moving picture. " + SitePage.drawn(taught),
                Optional.empty());
        page.open("figcaption");
        // Where the figure plays, its own line says how it is seen then.
        page.line("span", taught.whoseLeft(), "class", "as-drawn");
        page.text(
                " The left hand and head are round, the right ones have corners and dashed"
                        + " lines.");
        page.close();
        page.close();
    }

    private static void begin(Html page, Taught taught) {
        page.open("section", "aria-labelledby", "begin").line("h2", "How to begin", "id", "begin");
        page.open("ul");
        page.line("li", "Left hand: " + taught.does().get(0).text());
        page.line("li", "Right hand: " + taught.does().get(1).text());
        page.line("li", taught.does().get(2).text());
        page.close().close();
    }

    private void poses(Html page, Taught taught) {
        page.open("figure", "class", "poses");
        SitePage.picture(
                page,
                names.pattern(at) + SitePage.POSES,
                "Numbered poses of one cycle. " + SitePage.drawn(taught));
        page.line("figcaption", "Where hands and heads are on each count. " + taught.whoseLeft());
        page.close();
    }

    private void next(Html page, Taught taught) {
        if (taught.next().isEmpty()) {
            return;
        }
        page.open("section", "aria-labelledby", "next").line("h2", "What comes next", "id", "next");
        page.open("ul");
        for (Taught.Next one : taught.next()) {
            page.open("li");
            shelf.named(one.name())
                    .ifPresent(
                            to ->
                                    page.line("a", one.name(), "href", names.pattern(to) + ".html")
                                            .text(": "));
            page.text(one.told().text()).close();
        }
        page.close().close();
    }

    private void sets(Html page) {
        List<Integer> within =
                IntStream.range(0, shelf.sets().size())
                        .filter(i -> stands(shelf.sets().get(i)))
                        .boxed()
                        .toList();
        if (within.isEmpty()) {
            return;
        }
        page.open("section", "aria-labelledby", "sets").line("h2", "In sets", "id", "sets");
        page.open("ul");
        for (int i : within) {
            page.open("li");
            page.line("a", shelf.sets().get(i).reading().name(), "href", names.set(i) + ".html");
            page.close();
        }
        page.close().close();
    }

    /** Whose the set is that alone has it. */
    private Optional<String> ofItsSet() {
        return shelf.sets().stream()
                .filter(this::stands)
                .flatMap(set -> set.author().stream())
                .findFirst()
                .filter(whose -> at >= shelf.listed());
    }

    private boolean stands(TaughtSet set) {
        String own = names.pattern(at);
        return IntStream.range(0, set.reading().places().size())
                .anyMatch(step -> names.spun(set, step).filter(own::equals).isPresent());
    }

    /** What a search on the index finds it by, beside its name and phrase. */
    static String words(Taught taught) {
        PatternDocument pattern = taught.pattern();
        return String.join(
                " ",
                String.join(" ", pattern.tags()),
                String.join(" ", taught.does().stream().map(Told::text).toList()),
                pattern.note());
    }
}
