package deferent.page.web;

import deferent.record.SetPlaces;
import deferent.record.SetReading;
import deferent.tell.TellSet;
import deferent.tell.TellSungSet;
import deferent.tell.Told;
import java.util.List;
import java.util.Optional;

/** A set's page: what it asks, how it plays, and its patterns in order with what leads on. */
record SiteSet(TaughtShelf shelf, SiteNames names, int at) {
    String html() {
        SetReading set = set().reading();
        return SitePage.html(
                set.name(),
                shelf.title(),
                String.join(", ", set.names()) + ". " + set.told().get(0).text(),
                this::main);
    }

    private TaughtSet set() {
        return shelf.sets().get(at);
    }

    private void main(Html page) {
        SetReading set = set().reading();
        page.line("h1", set.name());
        List<Told> told = set().told(set().song().map(song -> TellSungSet.unpublished()));
        page.line("p", told.get(0).text(), "class", "phrase");
        SitePage.author(page, set().author());
        page.open("div", "class", "beside").open("div");
        SitePage.player(
                page,
                names.set(at),
                "Moving picture of the set: " + String.join(", then ", set.names()) + ".",
                Optional.of(set.names().get(0)));
        page.close().open("div");
        page.open("section", "aria-labelledby", "order").line("h2", "In order", "id", "order");
        page.open("ol", "id", "steps");
        for (int i = 0; i < set.places().size(); i++) {
            step(page, set, i);
        }
        page.close().close();
        SitePage.section(page, "asks", "What it asks", told.subList(1, told.size()));
        page.close().close();
    }

    private void step(Html page, SetReading set, int i) {
        SetPlaces.Place place = set.places().get(i);
        Optional<Integer> spun = shelf.spun(set, i);
        page.open("li");
        if (spun.isPresent()) {
            SitePage.small(
                    page,
                    names.pattern(spun.get()),
                    SitePage.drawn(shelf.patterns().get(spun.get())));
            page.open("div");
            page.line("a", place.name(), "href", names.pattern(spun.get()) + ".html");
        } else {
            page.open("div").line("b", place.name());
        }
        page.line("p", TaughtSet.said(set, i));
        List<Told> lines = TaughtSet.lines(set, i);
        if (!lines.isEmpty()) {
            SitePage.sentences(page, lines);
        }
        if (spun.isPresent()) {
            page.open(
                    "button",
                    "type",
                    "button",
                    "class",
                    "from-here",
                    "data-step",
                    Integer.toString(i),
                    "hidden",
                    ".");
            page.text("Play from here").line("span", ": " + place.name()).close();
        }
        if (i < set.plan().joints().size()) {
            page.line(
                    "p",
                    TellSet.joint(
                                    set.plan().joints().get(i),
                                    place.name(),
                                    set.names().get((i + 1) % set.names().size()))
                            .text(),
                    "class",
                    "onward");
        }
        page.close().close();
    }
}
