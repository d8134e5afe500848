@NullMarked
package deferent.reel;

import org.jspecify.annotations.NullMarked;
