package deferent.record.fuzz;

import deferent.reading.worked.Worked;
import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** Records in which one thing, however deep, is another than was worked out. */
final class Falsified {
    private Falsified() {}

    /**
     * @param path from component to component, as in "readings.leftCord.pull.least"; items of lists
     *     by their number, and what was worked out or may be absent as if it stood there itself
     */
    static <T extends Record> T at(T record, String path, UnaryOperator<Object> lie) {
        @SuppressWarnings("unchecked")
        T falsified = (T) at(record, List.of(path.split("\\.")), lie);
        return falsified;
    }

    private static Object at(Object holder, List<String> path, UnaryOperator<Object> lie) {
        if (holder instanceof Optional<?> there) {
            return Optional.of(at(there.orElseThrow(), path, lie));
        }
        if (holder instanceof Worked.Out<?> out) {
            return new Worked.Out<>(at(out.value(), path, lie));
        }
        if (path.isEmpty()) {
            return lie.apply(holder);
        }
        List<String> rest = path.subList(1, path.size());
        if (holder instanceof List<?> list) {
            List<Object> copy = new ArrayList<>(list);
            int item = Integer.parseInt(path.get(0));
            copy.set(item, at(copy.get(item), rest, lie));
            return List.copyOf(copy);
        }
        RecordComponent[] parts = holder.getClass().getRecordComponents();
        Object[] values = new Object[parts.length];
        boolean found = false;
        for (int i = 0; i < parts.length; i++) {
            values[i] = Numbers.read((Record) holder, parts[i]);
            if (parts[i].getName().equals(path.get(0))) {
                values[i] = at(values[i], rest, lie);
                found = true;
            }
        }
        if (!found) {
            throw new IllegalArgumentException(holder.getClass() + " has no " + path.get(0));
        }
        return made(holder.getClass(), parts, values);
    }

    private static Object made(Class<?> type, RecordComponent[] parts, Object[] values) {
        try {
            Constructor<?> constructor =
                    type.getDeclaredConstructor(
                            Arrays.stream(parts)
                                    .map(RecordComponent::getType)
                                    .toArray(Class<?>[]::new));
            constructor.setAccessible(true);
            return constructor.newInstance(values);
        } catch (InvocationTargetException refused) {
            throw new IllegalArgumentException(type + " refuses the lie", refused.getCause());
        } catch (ReflectiveOperationException hidden) {
            throw new IllegalStateException(type + " cannot be made", hidden);
        }
    }
}
