/**
 * Trade words in, trade words out: a pairing said on one line, in the order a spinner says it.
 *
 * <p>A phrase is read in three steps. {@link deferent.motion.phrase.Phrase#parse} cuts the line
 * into words and finds each in the table of trade motions or among the other words; what was said
 * is kept as it was said, and sizes left unsaid stay unsaid. {@link
 * deferent.motion.phrase.Phrase#with} then gives those their usual sizes for a tether. The way
 * back, {@link deferent.motion.phrase.Phrase#write}, offers a phrase only when reading it gives the
 * very same pairing again.
 *
 * <p>Lengths are said in cm, m, mm, in, ft or tethers, angles in degrees, radians or turns; inside
 * they are metres and radians.
 */
@NullMarked
package deferent.motion.phrase;

import org.jspecify.annotations.NullMarked;
