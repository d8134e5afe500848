package deferent.page.web;

import deferent.page.sheet.Taught;
import deferent.record.PatternDocument;
import deferent.record.SetReading;
import java.util.Optional;

/** The first page of a site: every pattern and set with a small figure, and a search. */
record SiteIndex(TaughtShelf shelf, SiteNames names) {
    String html() {
        return SitePage.html(shelf.title(), shelf.title(), counted() + " for two poi.", this::main);
    }

    private String counted() {
        int all = shelf.patterns().size();
        int sets = shelf.sets().size();
        return (all == 1 ? "One pattern" : all + " patterns")
                + (sets == 0 ? "" : sets == 1 ? " and a set" : " and " + sets + " sets");
    }

    private void main(Html page) {
        page.line("h1", shelf.title());
        page.line("p", counted() + " for two poi.", "class", "phrase");
        SitePage.author(page, author());
        page.open("form", "id", "find", "role", "search", "hidden", ".");
        page.open("label").text("Find by name, phrase, label or word");
        page.alone("input", "type", "search", "autocomplete", "off").close();
        page.line("output", "").close();
        patterns(page, "patterns", "Patterns", 0, shelf.listed());
        sets(page);
        patterns(page, "within", "In sets only", shelf.listed(), shelf.patterns().size());
        page.open("p", "class", "foot");
        page.open(
                "button", "type", "button", "id", "still", "aria-pressed", "false", "hidden", ".");
        page.text("Hold still").close().close();
    }

    private void patterns(Html page, String id, String heading, int from, int to) {
        if (from == to) {
            return;
        }
        page.open("section", "aria-labelledby", id).line("h2", heading, "id", id);
        page.open("ul", "class", "cards");
        for (int i = from; i < to; i++) {
            Taught taught = shelf.patterns().get(i);
            PatternDocument pattern = taught.pattern();
            page.open("li", "data-words", SitePattern.words(taught));
            page.open("a", "href", names.pattern(i) + ".html");
            SitePage.small(page, names.pattern(i), SitePage.drawn(taught));
            page.line("b", pattern.name());
            taught.phrase()
                    .filter(phrase -> !phrase.equals(pattern.name()))
                    .ifPresent(phrase -> page.line("small", phrase));
            if (!taught.dangers().isEmpty()) {
                page.line("small", taught.dangers().get(0).text(), "class", "danger");
            }
            page.close().close();
        }
        page.close().close();
    }

    private void sets(Html page) {
        if (shelf.sets().isEmpty()) {
            return;
        }
        page.open("section", "aria-labelledby", "sets").line("h2", "Sets", "id", "sets");
        page.open("ul", "class", "cards wide");
        for (int i = 0; i < shelf.sets().size(); i++) {
            TaughtSet set = shelf.sets().get(i);
            SetReading reading = set.reading();
            page.open("li", "data-words", String.join(" ", reading.names()));
            page.open("a", "href", names.set(i) + ".html").open("span", "class", "row-of");
            for (int step = 0; step < reading.places().size(); step++) {
                Optional<Integer> spun = shelf.spun(reading, step);
                String name = reading.names().get(step);
                spun.ifPresent(at -> SitePage.small(page, names.pattern(at), name));
            }
            page.close().line("b", reading.name());
            page.line("small", reading.told().get(0).text()).close().close();
        }
        page.close().close();
    }

    private Optional<String> author() {
        String all =
                String.join(
                        ", ",
                        shelf.patterns().stream()
                                .flatMap(one -> one.pattern().author().stream())
                                .distinct()
                                .toList());
        return all.isEmpty() ? Optional.empty() : Optional.of(all);
    }
}
