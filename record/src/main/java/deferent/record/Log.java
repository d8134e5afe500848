package deferent.record;

import deferent.motion.pairing.Refusal;
import deferent.record.landing.Landing;
import deferent.record.landing.Litter;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The log of practice: in the shelf's folder "log" one plain file a day, one entry a line, sorted
 * by id. So a folder that two devices share, by git or by any other way that puts the lines of two
 * files together, is read as the union of both, doubled lines among them.
 *
 * <p>Entries are only ever added. A line that cannot be read, one of a newer version among them, is
 * told with its file and number; it hides no other, and stays where it is when entries are added.
 * Each file is written whole or not at all.
 */
public final class Log {
    static final String FOLDER = "log";
    private static final String ENDING = ".jsonl";

    private final Folder folder;

    private Log(Folder folder) {
        this.folder = folder;
    }

    /** That of a shelf; its folder is made when the first entry is added. */
    public static Log of(Shelf shelf) {
        return at(shelf.folder(), Landing.NEW);
    }

    static Log at(Path shelf, Landing.Opening opening) {
        return new Log(new Folder(shelf.resolve(FOLDER), opening, ENDING));
    }

    public Path path() {
        return folder.path();
    }

    /**
     * What is in the log.
     *
     * @param entries by day, and on a day by id
     * @param others files and lines that cannot be read, each with why
     */
    public record Listing(List<LogEntry> entries, List<NotListed> others) {
        public Listing {
            entries = List.copyOf(entries);
            others = List.copyOf(others);
        }
    }

    /**
     * What adding did.
     *
     * @param fresh those that were not there
     * @param known how many were there already
     * @param different ids that were there and said something else; the one that says more stays
     */
    public record Added(List<LogEntry> fresh, int known, List<String> different) {
        public Added {
            fresh = List.copyOf(fresh);
            different = List.copyOf(different);
        }
    }

    /** All that can be read. */
    public Listing look() {
        Days days = days();
        return new Listing(days.union().entries(), days.others);
    }

    /** Adds those that are not there; a second time changes nothing. */
    public Added add(List<LogEntry> entries) {
        return folder.locked(
                () -> {
                    Days days = days();
                    LogUnion union = days.union();
                    List<LogEntry> fresh = new ArrayList<>();
                    List<String> different = new ArrayList<>();
                    int known = 0;
                    for (LogEntry entry : entries) {
                        switch (union.add(entry)) {
                            case NEW -> fresh.add(entry);
                            case KNOWN -> known++;
                            case DIFFERENT -> different.add(entry.id());
                        }
                    }
                    days.write(union.entries());
                    return new Added(fresh, known, different);
                });
    }

    /** Clears away what a run that was killed left in the folder; what to tell of it. */
    public Optional<String> sweep() {
        return Litter.sweep(folder.path()).told();
    }

    private Days days() {
        Folder.Contents contents = folder.contents();
        Days days = new Days(folder);
        days.others.addAll(contents.others());
        contents.ids().forEach(days::read);
        days.others.sort(Comparator.comparing(NotListed::file));
        return days;
    }

    /** The day files as they were found, and as they are to be. */
    private static final class Days {
        private final Folder folder;
        private final Map<String, byte[]> found = new TreeMap<>();
        private final Map<String, LogDay> read = new TreeMap<>();
        private final Map<String, String> unread = new TreeMap<>();
        private final List<NotListed> others = new ArrayList<>();

        Days(Folder folder) {
            this.folder = folder;
        }

        void read(String id) {
            String file = id + ENDING;
            try {
                LogJson.day(id);
                byte[] bytes = folder.bytes(id);
                String text =
                        StandardCharsets.UTF_8
                                .newDecoder()
                                .decode(ByteBuffer.wrap(bytes))
                                .toString();
                LogDay day = LogDay.read(file, text);
                found.put(id, bytes);
                read.put(id, day);
                others.addAll(day.told());
            } catch (Refusal noDay) {
                others.add(
                        new NotListed(file, "is not named after a day, such as 2026-11-28.jsonl"));
            } catch (CharacterCodingException notUtf8) {
                leave(id, "is not UTF-8 text; save it as UTF-8");
            } catch (ShelfError unreadable) {
                if (folder.has(id)) {
                    leave(id, unreadable.what() + "; " + unreadable.right());
                }
            }
        }

        private void leave(String id, String why) {
            unread.put(id, why);
            others.add(new NotListed(id + ENDING, why));
        }

        LogUnion union() {
            LogUnion union = new LogUnion();
            read.values().forEach(day -> day.entries().forEach(union::add));
            return union;
        }

        /** Writes the files that are to be others than they are; nothing where one cannot be. */
        void write(List<LogEntry> entries) {
            Map<String, List<LogEntry>> byDay = new TreeMap<>();
            read.keySet().forEach(id -> byDay.put(id, new ArrayList<>()));
            for (LogEntry entry : entries) {
                byDay.computeIfAbsent(id(entry.date()), id -> new ArrayList<>()).add(entry);
            }
            Map<String, byte[]> texts = new TreeMap<>();
            byDay.forEach((id, day) -> texts.put(id, text(id, day)));
            texts.forEach(this::write);
        }

        private byte[] text(String id, List<LogEntry> entries) {
            LogDay before = read.getOrDefault(id, LogDay.EMPTY);
            byte[] text = LogDay.text(entries, before.strays()).getBytes(StandardCharsets.UTF_8);
            boolean tooLong = text.length > Folder.MOST_BYTES;
            if (tooLong || unread.containsKey(id)) {
                throw new ShelfError(
                        tooLong ? ShelfError.Kind.SIZE : ShelfError.Kind.FOLDER,
                        tooLong
                                ? "would be " + text.length + " bytes long"
                                : String.valueOf(unread.get(id)),
                        folder.file(id).toString(),
                        tooLong
                                ? "a day has at most " + Folder.MOST_BYTES
                                : "or move it away first: nothing is written over it");
            }
            return text;
        }

        private void write(String id, byte[] text) {
            byte[] there = found.get(id);
            if (there != null && text.length == 0) {
                folder.delete(id);
            } else if (!Arrays.equals(there, text)) {
                folder.put(id, text);
            }
        }

        private static String id(LocalDate date) {
            return date.toString();
        }
    }
}
