/**
 * The studio's server: a page for the user's own browser, on this machine alone.
 *
 * <p>The server works out traces, readings, pictures and what a drag means; the page shows and
 * asks. How they talk is written down in {@code studio/PROTOCOL.md}. {@link deferent.studio.Studio}
 * opens and closes it; {@link deferent.studio.Gate} lets in nobody else; {@link
 * deferent.studio.Desk} answers questions; {@link deferent.studio.Grab} is the mathematics of
 * dragging.
 */
@NullMarked
package deferent.studio;

import org.jspecify.annotations.NullMarked;
