/**
 * The seek of {@code search} over more than one machine, on Apache Spark: motions keyed in parts,
 * gathered by band, joined band by band, answers kept as Parquet. What is compared with what, and
 * how, is {@link deferent.search.seek.Bands}; here is only what brings the pieces together, how it
 * goes on after a stop, and where answers are kept. Nobody depends on this module.
 */
@org.jspecify.annotations.NullMarked
package deferent.far;
