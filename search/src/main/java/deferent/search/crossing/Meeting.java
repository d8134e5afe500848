package deferent.search.crossing;

/**
 * Where two pairings' states are nearest, before anything is said of it.
 *
 * @param a time in the first, in its common cycles, in [0, 1)
 * @param b time in the second, in its common cycles
 * @param late how much later in its common cycle the second's right hand is taken, −1/2 to 1/2
 * @param worst greatest difference in tolerances, at most 1
 */
record Meeting(double a, double b, double late, double worst) {}
