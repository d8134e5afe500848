/**
 * What is kept and what is sent: pattern documents and named motions as JSON with a published
 * schema, the shelf they stand on, what was practised beside it (as films tell it, {@link
 * deferent.record.Practice}, and as whoever spun says it, {@link deferent.record.Log}), and
 * readings as JSON.
 *
 * <p>Inside, everything is SI and radians; here at the edge lengths stay metres, angles become
 * degrees where that loses nothing, and tempo is hand cycles a minute. A document that is written
 * and read again is equal to the one before, to the last bit.
 */
@NullMarked
package deferent.record;

import org.jspecify.annotations.NullMarked;
