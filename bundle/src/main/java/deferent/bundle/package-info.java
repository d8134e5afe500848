/**
 * The program as one archive that runs on a machine without Java: what is unpacked holds a Java of
 * its own, trimmed to what the program uses (jlink), the program's jars, a cache of its classes for
 * a quick start, man pages, completions for shells, a list of all parts and the text of every
 * licence.
 */
@NullMarked
package deferent.bundle;

import org.jspecify.annotations.NullMarked;
