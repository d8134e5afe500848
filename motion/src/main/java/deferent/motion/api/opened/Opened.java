package deferent.motion.api.opened;

import deferent.motion.api.TwoPoi;
import deferent.motion.pairing.Pairing;
import java.lang.invoke.MethodHandles;
import java.util.concurrent.CompletableFuture;
import java.util.function.Function;

/**
 * Opens and closes what strangers hold closed. {@link TwoPoi} itself says how, once, when it is
 * loaded; so neither its insides nor a way to them is public.
 */
public final class Opened {
    private record Doors(Function<TwoPoi, Pairing> opens, Function<Pairing, TwoPoi> closes) {}

    private static final CompletableFuture<Doors> DOORS = new CompletableFuture<>();

    private Opened() {}

    /** Asked once, by TwoPoi. */
    public static void by(Function<TwoPoi, Pairing> opens, Function<Pairing, TwoPoi> closes) {
        DOORS.complete(new Doors(opens, closes));
    }

    /** What is in it. */
    public static Pairing pairing(TwoPoi closed) {
        return DOORS.join().opens().apply(closed);
    }

    /** What strangers get of a pairing. */
    public static TwoPoi closed(Pairing pairing) {
        try {
            // Nobody may have asked for it before.
            MethodHandles.lookup().ensureInitialized(TwoPoi.class);
        } catch (IllegalAccessException e) {
            throw new IllegalStateException("a public class of this module cannot be loaded", e);
        }
        return DOORS.join().closes().apply(pairing);
    }
}
