/**
 * What a pairing is: two motions, one a hand, with their timing, direction and placement.
 *
 * <p>A motion is a {@link deferent.motion.pairing.HandPath hand path} and a {@link
 * deferent.motion.pairing.SpinLaw spin law}, both functions of phase (cycles, so one cycle runs
 * from 0 to 1) in a plane of the motion's own with axes u and v. With a hand circle of radius R, a
 * tether L and n poi turns per hand turn, head(s) = R·e^{2πis} + L·e^{i(2πns+φ)}: the deferent and
 * its epicycle. Lengths are metres, angles radians, times seconds.
 *
 * <p>Frame: right-handed, origin at the performer's breastbone, x to the performer's left, y up, z
 * toward the audience. A pairing becomes points in that frame in {@code deferent.motion.trace}. The
 * performer may turn under the poi ({@link deferent.motion.pairing.Facing}); the frame does not.
 */
@NullMarked
package deferent.motion.pairing;

import org.jspecify.annotations.NullMarked;
