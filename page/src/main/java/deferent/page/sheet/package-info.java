/**
 * Printed pages: a still as a PDF, a sheet that teaches one pairing, a booklet of a shelf or a
 * route, cards to cut, and what a class is taught from. Every page is first laid out as plain
 * values, a {@link deferent.page.sheet.Leaf} of {@link deferent.page.sheet.Block blocks} whose
 * boxes can be checked, and only then printed by {@link deferent.page.sheet.Press}, so that a long
 * name can never run over its neighbour unseen. Marks carry {@link deferent.page.sheet.Tag tags},
 * which the press makes the document's structure of, so that it can be read aloud. What a reading
 * says in words comes from {@code motion.tell}; this room only sets it. A face that sets the same
 * sentences in its own way asks {@link deferent.page.sheet.Taught}.
 */
@NullMarked
package deferent.page.sheet;

import org.jspecify.annotations.NullMarked;
