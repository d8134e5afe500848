package deferent.page.sheet;

import java.util.List;

/**
 * Marks that belong together. Blocks of one page don't overlap, and a block's marks lie in its box.
 *
 * @param name what it is, such as "figure" or "cautions"
 */
public record Block(String name, Box box, List<Mark> marks) {
    public Block {
        marks = List.copyOf(marks);
    }
}
