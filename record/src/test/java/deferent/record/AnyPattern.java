package deferent.record;

import deferent.motion.pairing.AnyPairing;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.shared.Side;
import deferent.motion.trial.Any;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import java.util.List;
import java.util.Optional;

/** Pattern documents of every make, for properties. */
final class AnyPattern {
    private AnyPattern() {}

    static PatternDocument of(Any any) {
        Optional<String> author = any.oneOf(Optional::empty, () -> Optional.of(text(any)));
        String note = text(any) + "\n\t" + text(any);
        List<String> tags = any.list(0, 3, () -> text(any));
        Performer performer =
                any.oneOf(() -> Performer.USUAL, () -> Performer.of(any.number(1, 2.5)));
        Kit kit =
                new Kit(
                        any.number(0.01, 1),
                        any.number(0.01, 0.2),
                        0,
                        any.of(true, false),
                        any.of(Kit.Heads.class));
        return new PatternDocument(
                text(any), note, author, tags, author, pairing(any), performer, kit, Extras.NONE);
    }

    private static Pairing pairing(Any any) {
        Pairing pairing = AnyPairing.wide(any);
        if (any.of(true, true, true, false)) {
            return pairing;
        }
        String bow = "M0 0 Q " + any.number(0.1, 1) + " " + any.number(0.1, 1);
        Part left = pairing.left();
        return pairing.with(
                Side.LEFT,
                left.with(
                        left.motion()
                                .withPath(
                                        SvgPath.parse(
                                                bow + " 1 0 A 1 1 0 0 1 0 1",
                                                any.number(0.1, 2)))));
    }

    static String text(Any any) {
        String text = any.text("aé日\"\\ /~.,🎇", 1, 20);
        return text.isBlank() ? "a" : text;
    }
}
