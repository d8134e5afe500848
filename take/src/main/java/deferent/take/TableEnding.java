package deferent.take;

import deferent.motion.trace.Rate;
import deferent.record.TimingTable;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;

/** A table of the motion. */
record TableEnding(String key, String mediaType, String words, Format format) implements Streamed {
    private static final Family FAMILY =
            new Family("timing", "Table", "for music, lights and other programs");

    /** So many lines are previewed. */
    private static final int LINES = 14;

    /** How a table is written; whether all of it was, and it was not stopped. */
    interface Format {
        boolean write(
                TimingTable table, Appendable out, DoubleConsumer progress, BooleanSupplier stop)
                throws IOException;
    }

    /** A line a row, with a mark between the fields. */
    static Format lines(String mark) {
        return (table, out, progress, stop) -> table.lines(mark, out, progress, stop);
    }

    @Override
    public Family family() {
        return FAMILY;
    }

    @Override
    public List<Offer> offers() {
        return Offer.all(List.of(Wish.CORD, Wish.CYCLES, Wish.LEFT_HANDED, Wish.RATE));
    }

    private static TimingTable table(Take take) {
        Wishes wishes = take.wishes();
        Subject subject = take.subject();
        return new TimingTable(
                subject.trace(),
                subject.document().kit(),
                Rate.of(wishes.text(Wish.RATE).orElseThrow()),
                wishes.whole(Wish.CYCLES));
    }

    @Override
    public Writing writing(Take take) {
        return writing(table(take));
    }

    private Writing writing(TimingTable table) {
        String rows = table.rows() + " rows";
        return (out, listener, stop) -> {
            Writer text = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
            boolean done =
                    format.write(
                            table,
                            text,
                            share -> listener.accept(new TakeProgress(share, "of " + rows)),
                            stop);
            text.flush();
            return done ? Optional.of(rows) : Optional.empty();
        };
    }

    @Override
    public Optional<Preview> preview(Take take, boolean calm, BooleanSupplier stop)
            throws IOException {
        TimingTable table = table(take);
        Lines lines = new Lines(LINES);
        // Of a long table only as much is worked out as is shown.
        writing(table).write(lines, p -> {}, () -> lines.full() || stop.getAsBoolean());
        return Optional.of(
                Preview.of(
                        lines.text().getBytes(StandardCharsets.UTF_8),
                        "text/plain",
                        table.rows() + " rows"));
    }

    /** Keeps the first lines of what is written, each cut where nobody reads on. */
    private static final class Lines extends OutputStream {
        private static final int LONGEST = 160;

        private final int most;
        private final StringBuilder text = new StringBuilder();
        private int count;
        private int width;

        Lines(int most) {
            this.most = most;
        }

        boolean full() {
            return count >= most;
        }

        @Override
        public void write(int b) {
            if (full()) {
                return;
            }
            if (b == '\n') {
                count++;
                width = 0;
            } else if (++width > LONGEST) {
                if (width == LONGEST + 1) {
                    text.append('…');
                }
                return;
            }
            text.append((char) (b & 0xff));
        }

        String text() {
            return text.toString();
        }
    }
}
