/**
 * Invented tunes, made by arithmetic, whose beats are known since they were composed: what beats
 * that are found can be held against, and music for the demo that is nobody's.
 */
@NullMarked
package deferent.sound.tune;

import org.jspecify.annotations.NullMarked;
