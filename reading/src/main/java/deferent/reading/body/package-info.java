/**
 * What a motion asks of a body: can each hand get where its path goes, and how near do heads,
 * hands, tethers and body come to one another.
 *
 * <p>Sources: segment lengths after Drillis and Contini (1966), in Winter, Biomechanics and Motor
 * Control of Human Movement; what is from memory says so where it stands. The body faces the
 * audience or as the trace's heading has it, and is read against the trace as it has it then
 * ({@code Performer.around}); it keeps its trunk upright and its shoulders level; it turns only in
 * {@link deferent.reading.body.TrunkTurn} and leans or shrugs only in {@link
 * deferent.reading.body.Bend}; {@link deferent.reading.body.PoseOver} has all of it over the cycle,
 * which {@link deferent.reading.body.Person} is drawn from. Everything here is a reading and never
 * a veto, because a spinner steps and leans too.
 */
@NullMarked
package deferent.reading.body;

import org.jspecify.annotations.NullMarked;
