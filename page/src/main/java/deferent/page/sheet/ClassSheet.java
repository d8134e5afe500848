package deferent.page.sheet;

import deferent.motion.pairing.Refusal;
import deferent.record.PatternDocument;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * What a class is taught from, a page or two a pattern.
 *
 * <pre>
 * new ClassSheet("Ring", List.of(pattern), Edition.USUAL, ClassSheet.Reader.STUDENT).write(out);
 * </pre>
 *
 * @param title of the file
 * @param patterns in the order in which they are taught
 * @param edition for which paper, onlooker and hand
 * @param reader who holds it
 */
public record ClassSheet(
        String title, List<PatternDocument> patterns, Edition edition, Reader reader)
        implements Print {
    /** Who reads a sheet. */
    public enum Reader {
        /** Sees the figure and eight poses beside six easy sentences. */
        STUDENT,
        /** Is told what to mind, what goes wrong, the sizes by stature and what to ask. */
        TEACHER
    }

    public ClassSheet {
        patterns = List.copyOf(patterns);
        if (patterns.isEmpty()) {
            throw new Refusal("has no patterns", "class sheet", "save one on the shelf first");
        }
    }

    @Override
    public Optional<List<Leaf>> leaves(Consumer<PrintProgress> listener, BooleanSupplier stop) {
        return Lessons.of(patterns, edition, listener, stop).map(this::leaves);
    }

    private List<Leaf> leaves(List<Lesson> lessons) {
        List<Leaf> leaves = new ArrayList<>();
        for (Lesson lesson : lessons) {
            Foot foot = Foot.of(lesson.pattern().author().map(Foot::capital).orElse(""));
            if (reader == Reader.STUDENT) {
                leaves.add(StudentPage.leaf(lesson, edition, foot));
            } else {
                leaves.addAll(TeacherPage.leaves(lesson, edition, foot));
            }
        }
        return leaves;
    }
}
