@NullMarked
package deferent.sound.tune;

import org.jspecify.annotations.NullMarked;
