package deferent.record;

import deferent.motion.trial.Any;
import deferent.search.set.BodyTurn;
import deferent.search.transition.Grade;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Sets of every make, for properties. */
final class AnySet {
    private AnySet() {}

    static SetDocument of(Any any) {
        Optional<String> author =
                any.oneOf(Optional::empty, () -> Optional.of(AnyPattern.text(any)));
        return new SetDocument(
                AnyPattern.text(any),
                AnyPattern.text(any),
                author,
                any.list(0, 3, () -> AnyPattern.text(any)),
                any.list(0, 6, () -> step(any)),
                any.of(Grade.class),
                any.oneOf(
                        Optional::empty,
                        () ->
                                Optional.of(
                                        new SetSong(
                                                AnyPattern.text(any),
                                                AnyPattern.text(any),
                                                any.whole(0, 500)))),
                any.oneOf(
                        () -> Extras.NONE,
                        () -> new Extras(java.util.Map.of("/x_mine", "[1, 2]"))));
    }

    private static SetStep step(Any any) {
        int counts = any.of(1, 3, 16, SetStep.MOST_COUNTS);
        SetStep step =
                unturned(any, counts)
                        .with(
                                any.of(false, true)
                                        ? OptionalInt.empty()
                                        : OptionalInt.of(any.whole(1, SetStep.MOST_BEATS)));
        return any.of(false, true)
                ? step.with(new BodyTurn(any.of(-2, -1, 1, 2), any.whole(1, counts)))
                : step;
    }

    private static SetStep unturned(Any any, int counts) {
        return any.oneOf(
                () -> SetStep.of(AnyPattern.of(any), counts),
                () ->
                        new SetStep(
                                new SetStep.OfShelf(AnyPattern.text(any), AnyPattern.text(any)),
                                counts));
    }

    static List<Document> bundle(Any any) {
        return any.list(0, 4, () -> any.<Document>oneOf(() -> of(any), () -> AnyPattern.of(any)));
    }
}
