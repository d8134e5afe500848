package deferent.reading.photo;

/** Least, mean and greatest of a length along a light, metres. */
public record Spread(double least, double mean, double greatest) {}
