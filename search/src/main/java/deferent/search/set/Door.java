package deferent.search.set;

import deferent.motion.pairing.Refusal;

/**
 * A transition as the choice among several sees it.
 *
 * @param leaves when it leaves, seconds on the clock of the pattern before; once every common cycle
 * @param joins when it has entered, seconds on the clock of the pattern after
 * @param seconds how long it takes
 * @param weight how much it is shunned, in counts that a pattern would rather be off
 */
record Door(double leaves, double joins, double seconds, double weight) {
    Door {
        Refusal.numbers("a transition's times", leaves, joins, seconds, weight);
    }
}
