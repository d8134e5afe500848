@NullMarked
package deferent.sound;

import org.jspecify.annotations.NullMarked;
