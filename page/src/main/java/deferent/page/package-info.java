/**
 * Drawing. A {@link deferent.page.Scene} is what is seen of a trace, with depth, made once: the
 * browser's stage and the {@link deferent.page.Painter} both draw that. The painter paints a scene
 * on any paper that takes AWT's drawing calls: {@link deferent.page.Svg} and {@link
 * deferent.page.Png} are the papers so far. How things look, colours, dashes and markers, stands in
 * {@link deferent.page.Palette} alone.
 *
 * <p>What passes before what is one law for all of them: where lines cross, the farther gives way
 * ({@link deferent.page.Crossings}); the performer's trunk and arms lie over each other as they are
 * seen, and hide or let through what is behind them ({@link deferent.page.Silhouette}); cords come
 * in the pieces that are seen ({@link deferent.page.Strand}). The stage's {@code crossings.js},
 * {@code person.js} and {@code strand.js} are the same, for its camera moves without the server.
 */
@NullMarked
package deferent.page;

import org.jspecify.annotations.NullMarked;
