package deferent.page;

import deferent.motion.pairing.Refusal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What is seen one after the other in one picture: scenes in turn, in one framing, and what is said
 * below them meanwhile. All times are the whole's, seconds from its start.
 *
 * @param parts in order of time, the first from 0 on
 * @param said in order of time, as many lines each
 * @param titles what players jump to, in order of time; may be none
 */
public record Chapters(List<Part> parts, List<Said> said, List<Title> titles) {
    /**
     * A scene from a time on.
     *
     * @param starts when
     * @param ahead what is to be added to the whole's time for the scene's
     */
    public record Part(double starts, Scene scene, double ahead) {}

    /** What is said from a time on: lines, the first in heavier type. */
    public record Said(double starts, List<String> lines) {
        public Said {
            lines = List.copyOf(lines);
        }
    }

    /** What is called so from a time on. */
    public record Title(double starts, String name) {}

    public Chapters {
        titles = List.copyOf(titles);
        parts = List.copyOf(parts);
        said = List.copyOf(said);
        if (parts.isEmpty() || said.isEmpty()) {
            throw new Refusal("are none", "chapters", "give what is seen and what is said");
        }
    }

    /** Without titles. */
    public Chapters(List<Part> parts, List<Said> said) {
        this(parts, said, List.of());
    }

    /** What is said at a time. */
    public List<String> lines(double time) {
        Said on = said.get(0);
        for (Said one : said) {
            on = one.starts() <= time ? one : on;
        }
        return on.lines();
    }

    private int at(double time) {
        int on = 0;
        for (int i = 1; i < parts.size(); i++) {
            on = parts.get(i).starts() <= time ? i : on;
        }
        return on;
    }

    /** Painters of the parts, made when they are first seen; the last few are kept. */
    static final class Opened {
        private static final int KEPT = 4;

        private final Chapters chapters;
        private final Still still;
        private final Framing framing;
        private final Map<Integer, Frames> open =
                new LinkedHashMap<>(8, 0.75f, true) {
                    private static final long serialVersionUID = 1L;

                    @Override
                    protected boolean removeEldestEntry(Map.Entry<Integer, Frames> eldest) {
                        return size() > KEPT;
                    }
                };

        Opened(Chapters chapters, Still still, Framing framing) {
            this.chapters = chapters;
            this.still = still;
            this.framing = framing;
        }

        synchronized Frames frames(double time) {
            return open.computeIfAbsent(
                    chapters.at(time),
                    i -> new Frames(chapters.parts().get(i).scene(), still, framing));
        }

        double ahead(double time) {
            return chapters.parts().get(chapters.at(time)).ahead();
        }

        List<String> lines(double time) {
            return chapters.lines(time);
        }
    }
}
