/**
 * What a camera and an eye make of a spun light: how long a shutter has to stay open for exactly
 * one figure, how often a film has to look so that the light leaves no gaps, how much of the figure
 * an eye holds at once, and what a blinking light leaves instead of a line.
 *
 * <p>All of it follows from where the heads are when ({@code deferent.motion.trace}); the camera
 * adds the speeds that are marked on shutters, the eye its visible persistence, which is a range
 * with a wide spread and never one number: {@link deferent.reading.photo.Persistence}.
 */
@NullMarked
package deferent.reading.photo;

import org.jspecify.annotations.NullMarked;
