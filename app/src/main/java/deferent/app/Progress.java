package deferent.app;

import java.io.Console;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * How far long work is, beside the answer, with the share done and the time left: on a terminal one
 * line that is written over and goes away; elsewhere a line now and then, more often where it is
 * asked for; nothing where quiet is asked for.
 */
final class Progress {
    private static final long SECOND = 1_000_000_000;

    /** Between two lines: redrawn on a terminal, asked for, unasked. */
    private static final long REDRAWN = SECOND / 10;

    private static final long ASKED = 2 * SECOND;
    private static final long UNASKED = 30 * SECOND;

    /** Before that, a guess of the time left would be none. */
    private static final double SHARE_TO_GUESS = 0.03;

    private final Manners manner;
    private final boolean asked;
    private final boolean terminal;
    private final LongSupplier clock;
    private final long began;
    private long told;
    private String stage = "";
    private String last = "";

    // From JDK 22 on there is a console without a terminal too, and it says so.
    private static boolean terminal(@Nullable Console console) {
        if (console == null) {
            return false;
        }
        try {
            return (Boolean) Console.class.getMethod("isTerminal").invoke(console);
        } catch (ReflectiveOperationException older) {
            return true;
        }
    }

    Progress(Manners manner, boolean asked) {
        this(manner, asked, terminal(System.console()) && !manner.json(), System::nanoTime);
    }

    /**
     * @param clock nanoseconds
     */
    Progress(Manners manner, boolean asked, boolean terminal, LongSupplier clock) {
        this.manner = manner;
        this.asked = asked;
        this.terminal = terminal;
        this.clock = clock;
        this.began = clock.getAsLong();
        this.told = began;
    }

    /**
     * @param share done, 0 to 1
     * @param what is being done, in words
     */
    void show(double share, String what) {
        tell(OptionalDouble.of(share), what);
    }

    /** Where nobody knows how much there is. */
    void show(String what) {
        tell(OptionalDouble.empty(), what);
    }

    private void tell(OptionalDouble share, String what) {
        if (manner.quiet()) {
            return;
        }
        long now = clock.getAsLong();
        // Numbers alone make no new stage.
        String at = what.replaceAll("[0-9.,]+", "");
        boolean always = (asked || terminal) && (!at.equals(stage) || share.orElse(0) >= 1);
        long pause = terminal ? REDRAWN : asked ? ASKED : UNASKED;
        if (!always && now - told < pause) {
            return;
        }
        stage = at;
        told = now;
        OptionalLong left =
                share.isPresent() ? left(share.getAsDouble(), now - began) : OptionalLong.empty();
        String line =
                what
                        + (share.isPresent() ? ": " + (int) (100 * share.getAsDouble()) + " %" : "")
                        + (left.isPresent() ? ", " + said(left.getAsLong()) + " left" : "");
        if (line.equals(last)) {
            return;
        }
        if (terminal) {
            manner.err()
                    .print("\r" + line + " ".repeat(Math.max(0, last.length() - line.length())));
        } else {
            manner.progress(what, share, left, line);
        }
        manner.err().flush();
        last = line;
    }

    /** How many seconds it will take from here, if it goes on as before. */
    private static OptionalLong left(double share, long nanos) {
        if (share < SHARE_TO_GUESS || share >= 1 || nanos < 2 * SECOND) {
            return OptionalLong.empty();
        }
        return OptionalLong.of(
                Math.max(1, Math.round(nanos / (double) SECOND * (1 - share) / share)));
    }

    private static String said(long seconds) {
        return seconds < 90
                ? "about " + seconds + " s"
                : "about " + Math.round(seconds / 60.0) + " min";
    }

    /** Clears the line, before anything else is said. */
    void clear() {
        if (terminal && !last.isEmpty()) {
            manner.err().print("\r" + " ".repeat(last.length()) + "\r");
            manner.err().flush();
            last = "";
        }
    }
}
