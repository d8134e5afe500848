package deferent.motion.tell;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Readings of which some, by their names, could not be worked out. */
final class Lame {
    static final String REASON = "its sums run in a ring";

    private Lame() {}

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
            return lame.contains(name)
                    ? new Worked.Not<>("the reading " + name, REASON, "Inside: a test.")
                    : value;
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
            throw new AssertionError(e);
        }
    }
}
