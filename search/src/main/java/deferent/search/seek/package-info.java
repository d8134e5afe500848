/**
 * Seek: which one-hand motions link to which. A carrier's head path and a rider's hand path are
 * closed curves run through in time; they link when one is the other after a turn, a shift, a
 * mirror and a lag, within a tolerance.
 *
 * <p>A curve is kept as its Fourier series (elliptic Fourier descriptors: Kuhl and Giardina, 1982;
 * Zahn and Roskies, 1972). The shift is its mean and is dropped; turn and lag only move the phases
 * of its coefficients, the mirror swaps k with −k; so their moduli are what every placing keeps. By
 * Parseval's theorem the distance of the moduli is never more than the clock gap, which makes an
 * index over them complete: whatever links is found, and only what is close in moduli is compared
 * in full.
 *
 * <p>Sizes are kept, in tethers: both poi are taken to be of one length unless asked otherwise, so
 * a pairing and the same pairing at another scale are one. With {@link
 * deferent.search.seek.Tethers#FREE free tethers} only shape and timing must agree and the tethers'
 * ratio follows from the link.
 *
 * <p>The work falls into three slices that know each other by integer keys and primitive arrays
 * alone: build (which keys of the {@link deferent.search.seek.Space} are motions), key (a signature
 * for each head path, so that equal ones gather in a class) and join (each class asks the index of
 * hand paths).
 */
@NullMarked
package deferent.search.seek;

import org.jspecify.annotations.NullMarked;
