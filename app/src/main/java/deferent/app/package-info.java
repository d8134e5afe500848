/**
 * The {@code deferent} command line. It takes phrases, files and names from the shelf, and numbers
 * with units; it answers in plain words or in JSON. Bad input ends with exit code 2 and an error
 * that says what would be right; what could not be worked out ends with 1; errors go to the error
 * stream and never show a stack trace unless {@code --trace} asks for it.
 */
@NullMarked
package deferent.app;

import org.jspecify.annotations.NullMarked;
