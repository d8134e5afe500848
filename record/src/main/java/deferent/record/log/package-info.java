/**
 * What follows from a log of practice: a calendar of weeks, what was practised of each pattern, and
 * whether grips and shoulders worked much more of late than is usual, with the sources of that
 * beside it. The day that counts as today is always said by whoever asks.
 */
@NullMarked
package deferent.record.log;

import org.jspecify.annotations.NullMarked;
