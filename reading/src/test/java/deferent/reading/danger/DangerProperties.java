package deferent.reading.danger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import deferent.motion.pairing.AnyPairing;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Size;
import deferent.motion.pairing.Tether;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import deferent.reading.body.Clash;
import deferent.reading.tether.Kit;
import deferent.reading.worked.Detail;
import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

class DangerProperties {
    private static Kit kit(Any any) {
        return new Kit(
                any.number(0.02, 1),
                any.number(0.03, 0.12),
                any.of(0.0, 0.02),
                false,
                any.of(Kit.Heads.class));
    }

    private static Level level(Dangers dangers, Danger like) {
        return dangers.of(like.hazard(), like.side().orElse(Side.LEFT))
                .map(Danger::level)
                .orElse(Level.CALM);
    }

    @Property(tries = 25)
    void noDangerVanishesWhenTheTempoRises(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        Kit kit = kit(any);
        assumeTrue(!pairing.setsOwnTempo());
        double tempo = any.number(5, 300);
        double faster = tempo * any.number(1.05, 2);
        Dangers before = Read.of(pairing.withTempo(OptionalDouble.of(tempo)), kit, Detail.LIVE);
        Dangers after = Read.of(pairing.withTempo(OptionalDouble.of(faster)), kit, Detail.LIVE);
        for (Danger danger : before.all()) {
            assertThat(level(after, danger).atLeast(danger.level()))
                    .as("%s at %s, %s at %s", danger, tempo, after, faster)
                    .isTrue();
        }
    }

    @Property(tries = 25)
    void noDangerVanishesWhenTheHeadGetsHeavier(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        Kit kit = kit(any);
        Kit heavier = kit.withHeadMass(kit.headMass() * any.number(1.05, 3));
        Dangers before = Read.of(pairing, kit, Detail.LIVE);
        Dangers after = Read.of(pairing, heavier, Detail.LIVE);
        for (Danger danger : before.all()) {
            assertThat(level(after, danger).atLeast(danger.level()))
                    .as("%s with %s, %s with %s", danger, kit, after, heavier)
                    .isTrue();
        }
    }

    private static final Set<DangerEnd.Kind> NOWHERE =
            EnumSet.of(DangerEnd.Kind.BEYOND_REACH, DangerEnd.Kind.NONE);

    @Property(tries = 40)
    void whereALevelIsSaidToEndItIsGone(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        Kit kit = kit(any);
        if (!pairing.setsOwnTempo()) {
            pairing = pairing.withTempo(OptionalDouble.of(any.number(20, 300)));
        }
        for (Danger danger : Read.of(pairing, kit).all()) {
            DangerEnd end = danger.end().orElseThrow();
            if (NOWHERE.contains(end.kind())) {
                continue;
            }
            Dangers there = Read.of(ended(pairing, kit, end), kit, Detail.LIVE);
            assertThat(level(there, danger).atLeast(danger.level()))
                    .as("%s of %s, ended as %s", danger, pairing, there)
                    .isFalse();
        }
    }

    private static Pairing ended(Pairing pairing, Kit kit, DangerEnd end) {
        return switch (end.kind()) {
            case TEMPO ->
                    pairing.withTempo(OptionalDouble.of(Math.max(1, end.value() * (1 - 1e-6))));
            case FORWARD -> forward(forward(pairing, Side.LEFT, end), Side.RIGHT, end);
            case APART ->
                    forward(
                            pairing,
                            new Clash(Trace.of(pairing), kit.headDiameter() / 2).front(),
                            end);
            case SIZE -> smaller(pairing, end.value() * (1 - 1e-6));
            case BEYOND_REACH, NONE -> throw new IllegalArgumentException("ends nowhere");
        };
    }

    private static Pairing forward(Pairing pairing, Side side, DangerEnd end) {
        Size z = Size.of(side, Size.Kind.CENTRE_Z);
        return z.set(pairing, z.read(pairing).orElseThrow() + end.value());
    }

    private static Pairing smaller(Pairing pairing, double share) {
        return new Pairing(
                smaller(pairing.left(), share),
                smaller(pairing.right(), share),
                pairing.timing(),
                pairing.direction(),
                pairing.sense(),
                pairing.setsOwnTempo() ? OptionalDouble.empty() : pairing.tempoSaid());
    }

    private static Part smaller(Part part, double share) {
        Motion motion = part.motion();
        Part shorter = part.with(Tether.of(part.tether().length() * share));
        return motion.riding() || part.still()
                ? shorter
                : shorter.with(
                        motion.withPath(motion.path().resized(motion.path().radius() * share)));
    }

    /** A danger also lasts a little before its end: it is where it ends, not somewhere below. */
    @Property(tries = 20)
    void aDangerLastsUntilItsTempo(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        assumeTrue(!pairing.setsOwnTempo());
        Kit kit = kit(any);
        Pairing fast = pairing.withTempo(OptionalDouble.of(any.number(100, 300)));
        Optional<Danger> danger =
                Read.of(fast, kit).all().stream()
                        .filter(d -> d.end().orElseThrow().kind() == DangerEnd.Kind.TEMPO)
                        .findFirst();
        assumeTrue(danger.isPresent());
        double end = danger.get().end().orElseThrow().value();
        assumeTrue(end < 599);
        Dangers before = Read.of(fast.withTempo(OptionalDouble.of(Math.max(1, end) * 1.0001)), kit);
        assertThat(level(before, danger.get())).isEqualTo(danger.get().level());
    }
}
