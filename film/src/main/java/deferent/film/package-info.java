/**
 * Video in. A film's frames become spots of light ({@link deferent.film.light}), spots two followed
 * heads ({@link deferent.film.follow}), those a period and two mean cycles ({@link
 * deferent.film.cycle}), and, once a tether and a scale are known, metres and the hands ({@link
 * deferent.film.hand}): a taut cord pulls along the head's acceleration less gravity. What was
 * measured so is named, or held against what was meant ({@link deferent.film.held}), and said in
 * words ({@link deferent.film.words}).
 */
@NullMarked
package deferent.film;

import org.jspecify.annotations.NullMarked;
