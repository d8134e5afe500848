package deferent.app;

import deferent.record.landing.Outlet;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.Writer;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * How a command answers: in sentences or in JSON on standard output, with remarks on the error
 * stream beside it or, asked to be quiet, without. Beside JSON, each line of the error stream is an
 * object of its own.
 *
 * @param json whether programs read it
 * @param quiet whether progress and remarks are left out
 * @param in standard input
 * @param bytes standard output, for what is no text
 * @param spec of the command that answers
 */
record Manners(boolean json, boolean quiet, InputStream in, Outlet bytes, CommandSpec spec) {
    static Manners of(CommandSpec spec) {
        // What is mixed into a mixin knows its command by the command line alone.
        CommandLine front = spec.commandLine();
        while (front.getParent() != null) {
            front = front.getParent();
        }
        return front.<Deferent>getCommand().manner(spec);
    }

    PrintWriter out() {
        return spec.commandLine().getOut();
    }

    PrintWriter err() {
        return spec.commandLine().getErr();
    }

    /** Something that is good to know and belongs to no answer. */
    void remark(String line) {
        if (quiet) {
            return;
        }
        caution(line);
    }

    /** The same that nobody may miss: told to who asked for quiet as well. */
    void caution(String line) {
        err().println(json ? object().put("remark", line).toString() : line);
    }

    /** A line of an answer in sentences; beside an answer in JSON a remark. */
    void beside(String line) {
        if (json) {
            remark(line);
        } else {
            out().println(line);
        }
    }

    /**
     * How far long work is.
     *
     * @param share done, 0 to 1, where it is known
     * @param left seconds, where they can be guessed
     * @param line all of it in a line for people
     */
    void progress(String what, OptionalDouble share, OptionalLong left, String line) {
        ObjectNode told = object().put("progress", what);
        share.ifPresent(done -> told.put("share", done));
        left.ifPresent(seconds -> told.put("left_s", seconds));
        err().println(json ? told.toString() : line);
    }

    /** From here on standard output holds a file alone, and sentences are remarks. */
    void giveWayToAFile() {
        spec.commandLine().setOut(quiet ? new PrintWriter(Writer.nullWriter()) : err());
    }

    private static ObjectNode object() {
        return JsonNodeFactory.instance.objectNode();
    }
}
