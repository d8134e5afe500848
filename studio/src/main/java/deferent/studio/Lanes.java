package deferent.studio;

import java.util.EnumMap;
import java.util.Map;

/**
 * Where heavy work is done, so that it never takes the threads that answer: what takes long has
 * lanes of its own, and a small picture is never behind a film. One seek, one map and one film at a
 * time bound what they hold in memory.
 */
final class Lanes implements AutoCloseable {
    /** What a lane is for. */
    enum Work {
        /** Fits, transitions, certified readings, pictures: each done in a moment or a few. */
        SHORT("short", 2, 24),
        /** What could come next: tried one after another for as long as somebody waits. */
        NEXT("next", 1, 8),
        SEEK("seek", 1, 8),
        MAP("map", 1, 8),
        /** Clips, and what is made of many patterns. */
        FILM("film", 1, 8),
        /** Songs that are listened to. */
        SONG("song", 1, 8),
        /** Previews of clips. */
        GLIMPSE("preview", 1, 8);

        private final String key;
        private final int workers;
        private final int room;

        Work(String key, int workers, int room) {
            this.key = key;
            this.workers = workers;
            this.room = room;
        }
    }

    private final Map<Work, Lane> lanes = new EnumMap<>(Work.class);

    Lanes() {
        for (Work work : Work.values()) {
            lanes.put(work, new Lane(work.key, work.workers, work.room));
        }
    }

    Lane of(Work work) {
        Lane lane = lanes.get(work);
        if (lane == null) {
            throw new IllegalStateException("every work has its lane");
        }
        return lane;
    }

    /** How much is waiting or being worked on. */
    int busy() {
        return lanes.values().stream().mapToInt(l -> l.waiting() + l.working()).sum();
    }

    @Override
    public void close() {
        lanes.values().forEach(Lane::close);
    }
}
