package deferent.record;

import deferent.motion.phrase.Lexicon;
import deferent.search.path.Drill;
import deferent.search.path.DrillKind;
import deferent.search.path.Path;
import deferent.tell.TellPath;
import java.util.ArrayList;
import java.util.List;

/** The drills of a path as patterns, each of whoever spins the pattern itself. */
public final class DrillDocuments {
    private DrillDocuments() {}

    /**
     * In the path's order, "Ring under the eaves: left hand alone"; the last is the pattern itself.
     *
     * @param lexicon the user's own names for motions
     */
    public static List<PatternDocument> of(PatternDocument pattern, Path path, Lexicon lexicon) {
        List<PatternDocument> all = new ArrayList<>();
        for (Drill drill : path.drills()) {
            all.add(
                    drill.kind() == DrillKind.WHOLE
                            ? pattern
                            : pattern.saying(drill.pairing(), lexicon)
                                    .withName(name(pattern, TellPath.name(drill))));
        }
        return List.copyOf(all);
    }

    private static String name(PatternDocument pattern, String drill) {
        String of = pattern.name();
        int room = Wording.NAME - drill.length() - 2;
        return (of.length() <= room ? of : of.substring(0, room - 1) + "…") + ": " + drill;
    }
}
