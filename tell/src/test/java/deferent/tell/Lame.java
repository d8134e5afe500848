package deferent.tell;

import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.reading.body.Performer;
import deferent.reading.worked.CordReading;
import deferent.reading.worked.Detail;
import deferent.reading.worked.Worked;
import deferent.search.whole.Advice;
import deferent.search.whole.Readings;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Readings of which some, by their names, or all could not be worked out. */
public final class Lame {
    public static final String REASON = "its sums run in a ring";

    private Lame() {}

    /** Readings of a phrase of which nothing could be worked out. */
    public static Readings wholly(String phrase) {
        Readings whole =
                Readings.of(Phrase.parse(phrase).pairing(), Performer.USUAL, Detail.SETTLED);
        return new Readings(
                whole.trace(),
                whole.performer(),
                whole.detail(),
                whole.phrase(),
                new Readings.Hand(whole.left().motion(), not()),
                new Readings.Hand(whole.right().motion(), not()),
                not(),
                not(),
                not(),
                not(),
                cord(Side.LEFT),
                cord(Side.RIGHT),
                not(),
                Optional.of(
                        new Advice(
                                Side.LEFT, not(), List.of(), not(), not(), not(), not(), not(),
                                not(), not())));
    }

    private static CordReading cord(Side side) {
        return new CordReading(side, not(), not(), not(), not(), not(), not(), not(), not());
    }

    private static <T> Worked<T> not() {
        return not("a reading");
    }

    private static <T> Worked<T> not(String what) {
        return new Worked.Not<>(what, REASON, "Inside: a test.");
    }

    /** Names of all that was worked out, such as "leftCord.pull". */
    static List<String> names(Readings readings) {
        List<String> names = new ArrayList<>();
        lamed(readings, "", names, List.of());
        return names;
    }

    /** The same readings, those of these names not worked out. */
    static Readings of(Readings readings, List<String> lame) {
        return (Readings) lamed(readings, "", new ArrayList<>(), lame);
    }

    private static Object lamed(Object value, String name, List<String> names, List<String> lame) {
        if (value instanceof Worked<?> worked) {
            if (worked.reading().isPresent()) {
                names.add(name);
            }
            return lame.contains(name) ? not("the reading " + name) : value;
        }
        if (value instanceof Optional<?> maybe) {
            return maybe.map(one -> lamed(one, name, names, lame));
        }
        if (!(value instanceof Readings
                || value instanceof Readings.Hand
                || value instanceof CordReading
                || value instanceof Advice)) {
            return value;
        }
        try {
            RecordComponent[] parts = value.getClass().getRecordComponents();
            Class<?>[] types = new Class<?>[parts.length];
            Object[] values = new Object[parts.length];
            for (int i = 0; i < parts.length; i++) {
                types[i] = parts[i].getType();
                String inner =
                        name.isEmpty() ? parts[i].getName() : name + "." + parts[i].getName();
                values[i] = lamed(parts[i].getAccessor().invoke(value), inner, names, lame);
            }
            return value.getClass().getDeclaredConstructor(types).newInstance(values);
        } catch (ReflectiveOperationException e) {
            throw new LinkageError("a record that cannot be made anew", e);
        }
    }
}
