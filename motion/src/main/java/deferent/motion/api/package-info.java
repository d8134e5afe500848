/**
 * What is meant, for other programs: {@link deferent.motion.api.TwoPoi} reads a phrase, {@link
 * deferent.motion.api.Traced} tells where hands and heads are.
 *
 * <p>Lengths are metres, times seconds. Frame: right-handed, origin at the performer's breastbone,
 * x to the performer's left, y up, z toward the audience. Keys of sizes end in their unit, as in
 * pattern documents. Values never change and may be shared between threads. Whatever cannot be is
 * refused with a {@link deferent.motion.shared.Refused}, which says what is wrong, where, and what
 * would be right.
 *
 * <p>Public is what this package and {@code deferent.motion.shared} hold, and nothing else of the
 * module. While the version begins with 0, a new second number may change it and the change log
 * says how; a new third number only adds or mends.
 */
@NullMarked
package deferent.motion.api;

import org.jspecify.annotations.NullMarked;
