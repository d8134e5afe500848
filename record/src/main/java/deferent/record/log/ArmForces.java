package deferent.record.log;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Refused;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.danger.ShoulderForce;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Pull;
import deferent.record.LogEntry;
import deferent.search.set.SetWork;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * Mean forces that an entry's pattern asks of grips and shoulders at its tempo, as a set's work is
 * added up ({@link SetWork}): of the ideal figure, the usual poi and a usual body, since a log says
 * none of these. A shoulder bears the weight of its arm besides, at every tempo: without it, one
 * minute of a moving hand would count as ten of a still one. A pattern that cannot be read, or is
 * not on this machine, has none.
 */
public final class ArmForces {
    private static final double GRAVITY = 9.80665; // m/s², by convention (CGPM, 1901)
    private static final ShoulderForce SHOULDER = ShoulderForce.of(Performer.USUAL);

    private final Function<String, Optional<Pairing>> reads;
    private final Map<String, Optional<Map<Side, SetWork.Load>>> known = new HashMap<>();

    /**
     * @param reads the pairing that a pattern's words or name mean
     */
    public ArmForces(Function<String, Optional<Pairing>> reads) {
        this.reads = reads;
    }

    /** Of each arm, newtons; where one hand alone was practised, of that arm alone. */
    Optional<Map<Side, SetWork.Load>> of(LogEntry entry) {
        String key = entry.pattern() + '\n' + entry.tempo();
        return known.computeIfAbsent(key, k -> read(entry)).map(both -> part(both, entry));
    }

    private static Map<Side, SetWork.Load> part(Map<Side, SetWork.Load> both, LogEntry entry) {
        String part = entry.part().orElse("").toLowerCase(Locale.ROOT);
        boolean left = part.contains(Side.LEFT.word());
        boolean right = part.contains(Side.RIGHT.word());
        if (left == right) {
            return both;
        }
        Map<Side, SetWork.Load> one = new EnumMap<>(both);
        one.remove(left ? Side.RIGHT : Side.LEFT);
        return one;
    }

    private Optional<Map<Side, SetWork.Load>> read(LogEntry entry) {
        try {
            return reads.apply(entry.pattern()).map(pairing -> loads(pairing, entry.tempo()));
        } catch (Refused cannotBe) {
            return Optional.empty();
        }
    }

    private static Map<Side, SetWork.Load> loads(Pairing pairing, OptionalDouble tempo) {
        boolean takes = tempo.isPresent() && !pairing.setsOwnTempo();
        Trace trace = Trace.of(takes ? pairing.withTempo(tempo) : pairing);
        Map<Side, SetWork.Load> loads = new EnumMap<>(Side.class);
        for (Side side : Side.values()) {
            SetWork.Load load = SetWork.Load.of(trace, Pull.of(trace, side, Kit.USUAL), SHOULDER);
            double arm = SHOULDER.at(0, GRAVITY);
            loads.put(side, new SetWork.Load(load.grip(), load.shoulder() + arm));
        }
        return loads;
    }
}
