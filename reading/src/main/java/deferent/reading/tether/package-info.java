/**
 * The tether is a cord: what gravity, tempo and hands really do to a poi.
 *
 * <p>Model. A point mass m (the head) hangs on an inextensible cord of length L from a hand that
 * moves as it likes, h(t); gravity acts along −y; a sphere's air drag D may act on the head; the
 * cord may have a mass of its own, taken as straight and uniform. With the direction e of the cord
 * (hand to head) and the tension T ≥ 0, the head p = h + L·e obeys
 *
 * <pre>  m·p″ = m·g + D − T·e,    |e| = 1. </pre>
 *
 * A cord can only pull. Where the equation asks for T &lt; 0 the cord is slack, the head flies, and
 * it comes back on the cord with a snap that takes its outward speed.
 *
 * <p>The equation is read in both directions. Given the head (its figure and timing), e must point
 * against p″ − g − D/m, so the hand follows without solving anything ({@link
 * deferent.reading.tether.KeepTheFigure}); this is the differential flatness of a cable-borne load
 * (Sreenath, Lee and Kumar, CDC 2013). Given the hand, the head obeys the equation of a pendulum on
 * a moving pivot, whose periodic solutions are found by shooting ({@link
 * deferent.reading.tether.KeepTheHandPath}) and whose slips grow or do not ({@link
 * deferent.reading.tether.Steadiness}), and are held or not by a hand that answers them late and
 * lets the timing give ({@link deferent.reading.tether.Correction}).
 *
 * <p>Everything is in three dimensions, SI units, in the frame of {@code deferent.motion.pairing}.
 */
@NullMarked
package deferent.reading.tether;

import org.jspecify.annotations.NullMarked;
