package deferent.page.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;

/** What must be true of every page that is laid out. */
final class Laid {
    // Points: no eye sees it.
    private static final double HAIR = 0.3;

    /** Points. */
    private static final double MILLIMETRES_25 = 25 * 72 / 25.4;

    private Laid() {}

    /** Blocks lie within the margins and apart, and every mark in its block. */
    static void check(Leaf leaf) {
        List<Block> blocks = leaf.blocks();
        for (int i = 0; i < blocks.size(); i++) {
            Block block = blocks.get(i);
            assertThat(leaf.margins().holds(block.box(), HAIR))
                    .as("%s %s within the margins %s", block.name(), block.box(), leaf.margins())
                    .isTrue();
            for (Mark mark : block.marks()) {
                large(block, mark);
                assertThat(block.box().holds(mark.box(), HAIR))
                        .as("%s within %s %s", mark, block.name(), block.box())
                        .isTrue();
            }
            for (Block other : blocks.subList(i + 1, blocks.size())) {
                assertThat(block.box().overlaps(other.box(), HAIR))
                        .as(
                                "%s %s over %s %s",
                                block.name(), block.box(), other.name(), other.box())
                        .isFalse();
            }
            apart(block);
        }
    }

    /** What is a picture of something, and no mere ornament, is 25 mm wide and high. */
    private static void large(Block block, Mark mark) {
        boolean picture = mark instanceof Mark.Plate || mark instanceof Mark.Drawn;
        if (picture && mark.tag().isPresent()) {
            assertThat(Math.min(mark.box().width(), mark.box().height()))
                    .as("%s of %s", mark.tag(), block.name())
                    .isGreaterThanOrEqualTo(MILLIMETRES_25);
        }
    }

    /** No text over another, nor over a picture. */
    private static void apart(Block block) {
        List<Mark> marks =
                block.marks().stream()
                        .filter(m -> m instanceof Mark.Text || m instanceof Mark.Plate)
                        .toList();
        for (int i = 0; i < marks.size(); i++) {
            for (Mark other : marks.subList(i + 1, marks.size())) {
                if (marks.get(i) instanceof Mark.Text || other instanceof Mark.Text) {
                    assertThat(marks.get(i).box().overlaps(other.box(), HAIR))
                            .as("%s over %s", marks.get(i), other)
                            .isFalse();
                }
            }
        }
    }
}
