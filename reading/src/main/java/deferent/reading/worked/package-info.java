/**
 * Readings on their own feet: each is worked out, or says why it could not be, and takes no other
 * with it. Here what is read of one cord is put together; rooms of readings do not know it.
 */
@NullMarked
package deferent.reading.worked;

import org.jspecify.annotations.NullMarked;
