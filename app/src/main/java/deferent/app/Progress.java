package deferent.app;

import java.io.Console;
import java.io.PrintWriter;
import org.jspecify.annotations.Nullable;

/**
 * How far long work is, beside the answer: on a terminal one line that is written over and goes
 * away, elsewhere a line each time, and only where it is asked for.
 */
final class Progress {
    private final PrintWriter err;
    private final boolean terminal;
    private final boolean shown;
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

    Progress(PrintWriter err, boolean asked) {
        this.err = err;
        this.terminal = terminal(System.console());
        this.shown = asked || terminal;
    }

    void show(String line) {
        if (!shown || line.equals(last)) {
            return;
        }
        if (terminal) {
            err.print("\r" + line + " ".repeat(Math.max(0, last.length() - line.length())));
        } else {
            err.println(line);
        }
        err.flush();
        last = line;
    }

    /** Clears the line, before anything else is said. */
    void clear() {
        if (shown && terminal && !last.isEmpty()) {
            err.print("\r" + " ".repeat(last.length()) + "\r");
            err.flush();
            last = "";
        }
    }
}
