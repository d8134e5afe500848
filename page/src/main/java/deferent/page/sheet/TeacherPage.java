package deferent.page.sheet;

import deferent.page.sheet.Galley.Row;
import deferent.page.sheet.Galley.Run;
import deferent.tell.TellClass;
import deferent.tell.Told;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Lays out what a teacher has in hand for one pattern: what to mind first, what to have ready, the
 * sizes by stature, what most often goes wrong, and what to ask.
 */
final class TeacherPage {
    private static final double SIZE = 9.4;
    private static final double GAP = 14;

    private final Lesson lesson;
    private final Grid grid;

    private TeacherPage(Lesson lesson, Edition edition) {
        this.lesson = lesson;
        this.grid = new Grid(edition.size());
    }

    static List<Leaf> leaves(Lesson lesson, Edition edition, Foot foot) {
        TeacherPage page = new TeacherPage(lesson, edition);
        List<Row> rows = page.rows();
        Box body = page.grid.body();
        List<Leaf> leaves = new ArrayList<>();
        int at = 0;
        while (at < rows.size()) {
            int end = Galley.fill(rows, at, body.height());
            if (end == at) {
                throw new IllegalStateException("a row is higher than a page");
            }
            Box box = new Box(body.x(), body.y(), body.width(), Galley.height(rows, at, end));
            leaves.add(
                    new Leaf(
                            page.grid.size(),
                            page.grid.margins(),
                            List.of(
                                    new Block(
                                            "words",
                                            box,
                                            Galley.placed(rows, at, end, box.x(), box.y())),
                                    foot.block(page.grid)),
                            at == 0 ? Optional.of(lesson.named()) : Optional.empty()));
            at = end;
        }
        return leaves;
    }

    private List<Row> rows() {
        double width = grid.body().width();
        Galley galley = new Galley(width);
        galley.title(
                lesson.named() + (lesson.mirrored() ? " (left-handed)" : "") + ", for the teacher",
                lesson.named().length() > 40 ? 14 : 20,
                0);
        lesson.phrase()
                .filter(phrase -> !phrase.equals(lesson.named()))
                .ifPresent(phrase -> galley.paragraph(List.of(Run.quiet(phrase)), 10.5, 2));
        galley.heading("Take care", 12, GAP);
        lesson.dangers().forEach(danger -> item(galley, Run.bold("!!"), Run.bold(danger.text())));
        lesson.cautions().forEach(care -> item(galley, Run.bold("!"), Run.of(care)));
        galley.heading("Have ready", 12, GAP);
        TellClass.ready(lesson.reach()).forEach(what -> item(galley, Run.quiet("–"), Run.of(what)));
        galley.heading("Sizes by stature", 12, GAP);
        galley.paragraph(TellClass.SIZES, SIZE, 2);
        galley.table(
                TellClass.sizes(lesson.pattern().pairing(), lesson.pattern().performer().stature()),
                SIZE);
        galley.heading("What most often goes wrong", 12, GAP);
        TellClass.often(lesson.pattern().pairing())
                .forEach(what -> item(galley, Run.quiet("–"), Run.of(what)));
        galley.paragraph(List.of(Run.quiet("Common practice, no source.")), SIZE - 1, 2);
        galley.heading("What to ask", 12, GAP);
        for (TellClass.Question one : TellClass.questions(lesson.pattern().pairing())) {
            galley.item(
                    Run.quiet("?"),
                    List.of(Run.bold(one.asked()), Run.of(one.answer())),
                    SIZE,
                    3,
                    11);
        }
        List<Told> links = lesson.links();
        if (!links.isEmpty()) {
            galley.item(
                    Run.quiet("?"),
                    List.of(
                            Run.bold("Does a hand go where the other head goes?"),
                            Run.of(links.get(0).text())),
                    SIZE,
                    3,
                    11);
        }
        return galley.rows();
    }

    private static void item(Galley galley, Run sign, Run what) {
        galley.item(sign, List.of(what), SIZE, 3, 11);
    }
}
