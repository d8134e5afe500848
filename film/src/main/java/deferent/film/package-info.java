/**
 * Video in. A film's frames become spots of light ({@link deferent.film.light}), spots two followed
 * heads ({@link deferent.film.follow}), those a period and two mean cycles ({@link
 * deferent.film.cycle}), and, once a tether or a scale is known, metres and the hands: a taut cord
 * pulls along the head's acceleration less gravity.
 */
@NullMarked
package deferent.film;

import org.jspecify.annotations.NullMarked;
