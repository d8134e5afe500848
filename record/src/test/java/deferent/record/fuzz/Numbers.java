package deferent.record.fuzz;

import deferent.motion.trace.Trace;
import deferent.reading.worked.CordReading;
import deferent.reading.worked.Worked;
import deferent.search.whole.Advice;
import deferent.search.whole.Readings;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.complex.Complex;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import tools.jackson.databind.JsonNode;

/** Finds every number that is none: in records by reflection, in JSON by walking it. */
final class Numbers {
    /**
     * Numbers that are said to be infinite or none where they stand: seconds to double where
     * nothing doubles, the error of an estimated gap, and that of a motion no finer steps were
     * found for.
     */
    private static final List<String> OPEN =
            List.of("Steadiness.doubling", "LinkReading.shapeGapError", "Solution.error");

    private Numbers() {}

    /** Where in a record, and in all that it holds, a number is not finite. */
    static List<String> notFinite(Object record) {
        List<String> found = new ArrayList<>();
        walk(record, "", "", found);
        return found;
    }

    private static void walk(Object value, String field, String path, List<String> found) {
        if (value instanceof Double number) {
            if (!Double.isFinite(number) && !OPEN.contains(field)) {
                found.add(path + " is " + number);
            }
        } else if (value instanceof double[] numbers) {
            for (int i = 0; i < numbers.length; i++) {
                walk(numbers[i], field, path + "[" + i + "]", found);
            }
        } else if (value instanceof OptionalDouble maybe) {
            maybe.ifPresent(number -> walk(number, field, path, found));
        } else if (value instanceof Optional<?> maybe) {
            maybe.ifPresent(one -> walk(one, field, path, found));
        } else if (value instanceof Collection<?> many) {
            many.forEach(one -> walk(one, field, path + "[]", found));
        } else if (value instanceof Map<?, ?> many) {
            many.values().forEach(one -> walk(one, field, path + "{}", found));
        } else if (value instanceof Vector3D v) {
            walk(v.toArray(), field, path, found);
        } else if (value instanceof Complex c) {
            walk(new double[] {c.getRealPart(), c.getImaginaryPart()}, field, path, found);
        } else if (value instanceof Record record && !(value instanceof Trace)) {
            for (RecordComponent part : record.getClass().getRecordComponents()) {
                String name = record.getClass().getSimpleName() + "." + part.getName();
                walk(read(record, part), name, path + "." + part.getName(), found);
            }
        }
    }

    static Object read(Record record, RecordComponent part) {
        try {
            part.getAccessor().setAccessible(true);
            return part.getAccessor().invoke(record);
        } catch (ReflectiveOperationException | RuntimeException hidden) {
            throw new IllegalStateException(part + " cannot be read", hidden);
        }
    }

    /** Every reading of a record that was not worked out. */
    static List<Worked.Not<?>> notWorkedOut(Record readings) {
        List<Worked.Not<?>> found = new ArrayList<>();
        for (RecordComponent part : readings.getClass().getRecordComponents()) {
            Object value = read(readings, part);
            if (value instanceof Optional<?> maybe) {
                value = maybe.orElse(null);
            }
            if (value instanceof Worked.Not<?> not) {
                found.add(not);
            } else if (value instanceof Readings.Hand
                    || value instanceof CordReading
                    || value instanceof Advice) {
                found.addAll(notWorkedOut((Record) value));
            }
        }
        return found;
    }

    /** Where in a tree a number is not finite. */
    static List<String> notFinite(JsonNode tree) {
        List<String> found = new ArrayList<>();
        walk(tree, "", found);
        return found;
    }

    private static void walk(JsonNode node, String path, List<String> found) {
        if (node.isNumber() && !Double.isFinite(node.asDouble())) {
            found.add(path + " is " + node.asDouble());
        }
        node.properties().forEach(p -> walk(p.getValue(), path + "." + p.getKey(), found));
        if (node.isArray()) {
            node.forEach(one -> walk(one, path + "[]", found));
        }
    }
}
