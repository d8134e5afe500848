package deferent.bench;

import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.link.LinkReading;
import deferent.reading.worked.Detail;
import deferent.search.whole.Readings;
import java.util.concurrent.TimeUnit;
import org.locationtech.jts.algorithm.distance.DiscreteFrechetDistance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What a drag costs: phrase to live readings (720 samples, both links with the quick shape gap,
 * figures, room, reach, pull), wanted under 5 ms at the 99th percentile on one core; and after it
 * the certified shape gap of both links, wanted under 50 ms. Baselines in the same run: sampling
 * the trace alone, and one discrete Fréchet distance of JTS on the same 720 points, with nothing
 * moved or turned.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 3)
@Measurement(iterations = 5, time = 3)
@Fork(1)
public class ReadingsBench {
    @Param({
        "isolation vs four-petal antispin",
        "isolation vs horizontal cat-eye",
        "static spin vs triquetra",
        "pendulum vs CAP"
    })
    public String phrase = "";

    @Benchmark
    public Readings phraseToLiveReadings() {
        return Readings.of(Phrase.parse(phrase).pairing(), Performer.USUAL, Detail.LIVE);
    }

    @Benchmark
    public double certifiedShapeGapOfBothLinks() {
        Trace trace = Trace.of(Phrase.parse(phrase).pairing());
        return LinkReading.of(trace, Side.LEFT).shapeGap()
                + LinkReading.of(trace, Side.RIGHT).shapeGap();
    }

    @Benchmark
    public Samples baselinePhraseToSamples() {
        return Trace.of(Phrase.parse(phrase).pairing()).samples();
    }

    @Benchmark
    public double baselineOneFrechetDistanceOfJts() {
        Samples samples = Trace.of(Phrase.parse(phrase).pairing()).samples();
        return DiscreteFrechetDistance.distance(
                line(samples.head(Side.LEFT)), line(samples.hand(Side.RIGHT)));
    }

    private static Geometry line(double[] xyz) {
        Coordinate[] points = new Coordinate[xyz.length / 3];
        for (int i = 0; i < points.length; i++) {
            points[i] = new Coordinate(xyz[3 * i], xyz[3 * i + 1]);
        }
        return new GeometryFactory().createLineString(points);
    }
}
