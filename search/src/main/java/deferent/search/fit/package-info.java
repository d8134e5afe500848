/**
 * Changes the free sizes of a pairing until its link closes; and what each size costs, and which
 * motion a motion falls into as a size changes.
 *
 * <p>With a hand path and a head path as Fourier series in phase, head = hand path +
 * L·e^{i(2πns+φ)}, so a link closes when the head's terms have the radii of the rider's hand path:
 * a size is then the root of an equation of first or second degree. Everywhere else an optimiser
 * searches. What is claimed closed has been read afterwards.
 *
 * <p>Lengths are metres, angles radians, timing cycles, as in {@link deferent.motion.pairing.Size}.
 */
@NullMarked
package deferent.search.fit;

import org.jspecify.annotations.NullMarked;
