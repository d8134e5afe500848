package deferent.film.hand;

/**
 * Where a hand must have been at one moment.
 *
 * @param time seconds
 * @param x metres, in the wall plane
 * @param y metres
 * @param error standard deviation on either axis, metres
 * @param pull of the cord, in weights of the head; where it is near 0 nothing can be said
 */
public record HandSight(double time, double x, double y, double error, double pull) {}
