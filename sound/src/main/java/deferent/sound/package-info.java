/**
 * Music in: which beats a song has, how quick they are, and which begin a bar.
 *
 * <p>Where something new sounds is told by the spectral flux of a recording; the tempo, which may
 * drift, by how that repeats; the beats by dynamic programming (Ellis 2007). Each class names its
 * source. What is found is never sure: how sure it is stands beside it, and a person can set it
 * right.
 */
@NullMarked
package deferent.sound;

import org.jspecify.annotations.NullMarked;
