/**
 * What is kept, for other programs: pattern documents in and out, their readings as JSON ({@link
 * deferent.record.api.PatternFile}), and the shelf, a folder of them ({@link
 * deferent.record.api.PatternShelf}).
 *
 * <p>Keys of the JSON end in their unit. A key keeps its name, its unit and its meaning as long as
 * the schema's {@code $id} keeps its number; keys may be added, so a reader passes over those it
 * does not know. What other programs write into a document under keys of their own stays in it.
 *
 * <p>Public is what this package holds, and nothing else of the module. While the version begins
 * with 0, a new second number may change it and the change log says how; a new third number only
 * adds or mends.
 */
@NullMarked
package deferent.record.api;

import org.jspecify.annotations.NullMarked;
