package deferent.page.sheet;

import java.util.List;
import java.util.Optional;

/**
 * A page laid out, not yet printed.
 *
 * @param size of the paper
 * @param margins what may be printed on
 * @param blocks from top to bottom
 * @param bookmark under which name it stands in the reader's list of pages
 */
public record Leaf(PageSize size, Box margins, List<Block> blocks, Optional<String> bookmark) {
    public Leaf {
        blocks = List.copyOf(blocks);
    }

    /** Everything on it. */
    public List<Mark> marks() {
        return blocks.stream().flatMap(block -> block.marks().stream()).toList();
    }
}
