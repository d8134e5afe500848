/** Benchmarks of what must be fast, each with its baseline in the same run. */
@NullMarked
package deferent.bench;

import org.jspecify.annotations.NullMarked;
