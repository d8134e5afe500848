/**
 * What in a motion can hurt: each quantity of the other rooms that can, held against two numbers of
 * one table, and the tempo or the size at which it ends. It stands one floor above those rooms,
 * since it needs them all. No number here is a permission.
 */
@NullMarked
package deferent.reading.danger;

import org.jspecify.annotations.NullMarked;
