/**
 * Drawing. A {@link deferent.page.Scene} is what is seen of a trace, with depth, made once: the
 * browser's stage and the {@link deferent.page.Painter} both draw that. The painter paints a scene
 * on any paper that takes AWT's drawing calls: {@link deferent.page.Svg} and {@link
 * deferent.page.Png} are the papers so far. How things look, colours, dashes and markers, stands in
 * {@link deferent.page.Palette} alone.
 */
@NullMarked
package deferent.page;

import org.jspecify.annotations.NullMarked;
