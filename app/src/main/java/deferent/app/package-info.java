/**
 * The {@code deferent} command line. It takes phrases, files and names from the shelf, and numbers
 * with units; it answers in plain words or in JSON, each command by its row of {@link
 * deferent.app.CommandAnswer}. How it ended is a row of {@link deferent.app.Exit}. Errors say what
 * would be right, go to the error stream, and show no stack trace unless {@code --trace} asks for
 * it.
 */
@NullMarked
package deferent.app;

import org.jspecify.annotations.NullMarked;
