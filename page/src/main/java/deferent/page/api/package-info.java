/**
 * Pictures of a pairing, for other programs: {@link deferent.page.api.PairingPicture} as SVG, PNG
 * or PDF.
 *
 * <p>What a picture shows and how large it is stays; its strokes, colours and the order of its
 * elements may change with any version.
 *
 * <p>Public is what this package holds, and nothing else of the module. While the version begins
 * with 0, a new second number may change it and the change log says how; a new third number only
 * adds or mends.
 */
@NullMarked
package deferent.page.api;

import org.jspecify.annotations.NullMarked;
