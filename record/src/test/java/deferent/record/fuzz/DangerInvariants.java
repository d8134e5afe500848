package deferent.record.fuzz;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.reading.body.SideRoom;
import deferent.reading.danger.Bound;
import deferent.reading.danger.Danger;
import deferent.reading.danger.DangerEnd;
import deferent.reading.danger.Dangers;
import deferent.reading.danger.Hazard;
import deferent.reading.danger.Level;
import deferent.reading.tether.Pull;
import deferent.reading.worked.Detail;
import java.util.List;
import java.util.OptionalDouble;

/** What holds of what can hurt. */
final class DangerInvariants {
    private static final double NARROWED = 1e-4;

    static final List<Invariant> ALL =
            List.of(
                    new Invariant(
                            "a level is the table's for the heads that are spun",
                            "there is one table",
                            1,
                            DangerInvariants::levels),
                    new Invariant(
                            "no force, speed or nearness beyond its limit is left out",
                            "each is read by its own room too",
                            1,
                            DangerInvariants::complete),
                    new Invariant(
                            "a level is gone at the tempo at which it is said to end",
                            "it is looked for by reading slower tempos",
                            7,
                            DangerInvariants::ends),
                    new Invariant(
                            "the first sentence begins with danger exactly where there is one",
                            "danger comes first",
                            1,
                            DangerInvariants::first));

    private DangerInvariants() {}

    private static Dangers dangers(Whole whole) {
        return Whole.out(whole.readings().dangers());
    }

    private static void levels(Whole whole, Invariant.Broken broken) {
        for (Danger danger : dangers(whole).all()) {
            Bound bound = Bound.of(danger.hazard(), whole.asked().kit().heads());
            broken.when(
                    bound.level(danger.value()) != danger.level()
                            || bound.at(danger.level()) != danger.limit(),
                    "%s by %s",
                    danger,
                    bound);
        }
    }

    private static void complete(Whole whole, Invariant.Broken broken) {
        Dangers dangers = dangers(whole);
        double radius = whole.asked().kit().headDiameter() / 2;
        Whole.ofEach(
                side -> {
                    Pull pull = Whole.out(whole.readings().cord(side).pull());
                    same(whole, dangers, Hazard.PULL, side, pull.handForce(), broken);
                    same(whole, dangers, Hazard.GRIP, side, pull.mean(), broken);
                    same(whole, dangers, Hazard.HEAD_SPEED, side, pull.headSpeed(), broken);
                    same(whole, dangers, Hazard.HEAD_ENERGY, side, pull.energy(), broken);
                    SideRoom room = Whole.out(whole.readings().room()).side(side);
                    double body =
                            Math.min(
                                    room.tetherToBody().distance(),
                                    room.headToBody().distance() - radius);
                    same(whole, dangers, Hazard.BODY, side, body, broken);
                    for (Hazard part : List.of(Hazard.FACE, Hazard.THROAT, Hazard.GROIN)) {
                        dangers.of(part, side)
                                .ifPresent(
                                        d ->
                                                broken.when(
                                                        d.value() < body - NARROWED,
                                                        "%s nearer than the body, %.6f",
                                                        d,
                                                        body));
                    }
                });
    }

    private static void same(
            Whole whole,
            Dangers dangers,
            Hazard hazard,
            Side side,
            double value,
            Invariant.Broken broken) {
        Level level = Bound.of(hazard, whole.asked().kit().heads()).level(value);
        Level told = dangers.of(hazard, side).map(Danger::level).orElse(Level.CALM);
        broken.when(told != level, "%s of the %s is %.6f and told %s", hazard, side, value, told);
        dangers.of(hazard, side)
                .ifPresent(d -> broken.unlessNear(hazard + " told", d.value(), value, 1e-12, 0));
    }

    private static void ends(Whole whole, Invariant.Broken broken) {
        for (Danger danger : dangers(whole).all()) {
            DangerEnd end = danger.end().orElseThrow(Whole.NotWorkedOut::new);
            if (end.kind() != DangerEnd.Kind.TEMPO) {
                continue;
            }
            Pairing slower =
                    whole.pairing()
                            .withTempo(OptionalDouble.of(Math.max(1, end.value() * (1 - 1e-4))));
            Dangers there = Whole.out(Whole.read(whole.asked(), slower, Detail.LIVE).dangers());
            Level level =
                    there.of(danger.hazard(), danger.side().orElse(Side.LEFT))
                            .map(Danger::level)
                            .orElse(Level.CALM);
            broken.when(level.atLeast(danger.level()), "%s, and there %s", danger, level);
        }
    }

    private static void first(Whole whole, Invariant.Broken broken) {
        boolean danger = dangers(whole).level() == Level.DANGER;
        String first = whole.told().get(0).text();
        broken.when(danger != first.startsWith("Danger: "), "%s, \"%s\"", danger, first);
    }
}
