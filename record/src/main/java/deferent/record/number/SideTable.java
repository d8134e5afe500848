package deferent.record.number;

import deferent.motion.shared.Side;
import deferent.reading.worked.Worked;
import deferent.search.whole.Readings;
import deferent.tell.TellSizes;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Numbers of both sides as people read them, side by side.
 *
 * @param caption what they are about
 * @param columns what the two columns are about
 */
public record SideTable(String caption, List<String> columns, List<TellSizes.Row> lines) {
    public SideTable {
        columns = List.copyOf(columns);
        lines = List.copyOf(lines);
    }

    /** Both hands with what their heads draw. */
    public static SideTable hands(Readings readings) {
        return new SideTable(
                "Hands and figures",
                List.of("left hand", "right hand"),
                Stream.concat(
                                lines(ReadingTables.HAND, ReadingTables.OneSide.of(readings)),
                                lines(ReadingTables.FIGURE, readings::figure))
                        .toList());
    }

    /** Both links. */
    public static SideTable links(Readings readings) {
        return new SideTable(
                "Links",
                List.of("left head, right hand", "right head, left hand"),
                lines(ReadingTables.LINK, readings::link).toList());
    }

    private static <R> Stream<TellSizes.Row> lines(
            Table<R> table, Function<Side, Worked<R>> reading) {
        return table.told().stream().map(row -> line(row, reading));
    }

    /** One row of both sides. */
    public static <R> TellSizes.Row line(Row<R> row, Function<Side, Worked<R>> reading) {
        return new TellSizes.Row(
                row.name(),
                reading.apply(Side.LEFT).said(row.value().said()),
                reading.apply(Side.RIGHT).said(row.value().said()));
    }
}
