/**
 * How every file of the house is written: beside its place under a name of our own, and moved there
 * when it is whole. Nobody else opens a file for writing. What a killed run leaves lying about is
 * known by that name, and swept by the next one that writes there.
 */
@NullMarked
package deferent.record.landing;

import org.jspecify.annotations.NullMarked;
