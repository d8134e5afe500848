package deferent.motion.trial;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;

/**
 * The values of one try. Each is drawn by a choice, a random number of 64 bits; choice nought draws
 * the plainest value there is, so that {@link Trials} makes a failing try plainer by setting
 * choices to nought. Edges (bounds, nought, one) are mixed in: into most tries a few, into every
 * fourth many, for where two of them meet.
 */
public final class Any {
    private final SplittableRandom source;
    private final int edgeOneIn;
    private final List<Long> given;
    private final List<Long> choices = new ArrayList<>();
    private final List<Object> shown = new ArrayList<>();
    private int depth;

    Any(long seed, List<Long> given) {
        this.source = new SplittableRandom(seed);
        this.edgeOneIn = source.nextInt(4) == 0 ? 2 : 16;
        this.given = given;
    }

    public double number(double least, double most) {
        double[] edges = within(least, most, 0, 1, -1, least, most);
        return choose(
                edges[0],
                random -> {
                    if (random.nextInt(edgeOneIn) == 0) {
                        return edges[random.nextInt(edges.length)];
                    }
                    double number = least + (most - least) * random.nextDouble();
                    double round = Math.rint(number * 100) / 100 + 0.0; // Never −0.0.
                    return random.nextBoolean() && round >= least && round <= most ? round : number;
                });
    }

    public int whole(int least, int most) {
        double[] edges = within(least, most, 0, 1, -1, least, most);
        return choose(
                (int) edges[0],
                random ->
                        random.nextInt(edgeOneIn) == 0
                                ? (int) edges[random.nextInt(edges.length)]
                                : random.nextInt(least, most + 1));
    }

    @SafeVarargs
    @SuppressWarnings("varargs") // they are only read
    public final <T> T of(T... values) {
        return of(Arrays.asList(values));
    }

    public <T> T of(Class<T> constants) {
        return of(constants.getEnumConstants());
    }

    public <T> T of(List<T> values) {
        return choose(values.get(0), random -> values.get(random.nextInt(values.size())));
    }

    @SafeVarargs
    @SuppressWarnings("varargs") // they are only read
    public final <T> T oneOf(Supplier<? extends T>... ways) {
        return from(any -> any.of(ways).get());
    }

    public <T> List<T> list(int least, int most, Supplier<T> one) {
        return from(
                any -> {
                    int size = any.whole(least, most);
                    List<T> values = new ArrayList<>();
                    while (values.size() < size) {
                        values.add(one.get());
                    }
                    return values;
                });
    }

    /** A text of these signs, the first of them the plainest. */
    public String text(String signs, int least, int most) {
        return from(
                any ->
                        any
                                .list(
                                        least,
                                        most,
                                        () -> signs.charAt(any.whole(0, signs.length() - 1)))
                                .stream()
                                .map(String::valueOf)
                                .collect(Collectors.joining()));
    }

    /** A text of any signs at all, halves of pairs too. */
    public String text(int least, int most) {
        return from(
                any ->
                        any
                                .list(least, most, () -> (char) any.whole(0, Character.MAX_VALUE))
                                .stream()
                                .map(String::valueOf)
                                .collect(Collectors.joining()));
    }

    /** What is made of several draws; a failure shows it as one value. */
    public <T> T from(Function<Any, T> made) {
        depth++;
        T value = made.apply(this);
        depth--;
        return show(value);
    }

    private <T> T choose(T plainest, Function<SplittableRandom, T> other) {
        long drawn = source.nextLong();
        long choice = choices.size() < given.size() ? given.get(choices.size()) : drawn;
        choices.add(choice);
        return show(choice == 0 ? plainest : other.apply(new SplittableRandom(choice)));
    }

    private <T> T show(T value) {
        if (depth == 0) {
            shown.add(value);
        }
        return value;
    }

    List<Long> choices() {
        return choices;
    }

    String shown() {
        String all = Arrays.deepToString(shown.toArray());
        return all.substring(1, all.length() - 1);
    }

    private static double[] within(double least, double most, double... edges) {
        return DoubleStream.of(edges).filter(edge -> edge >= least && edge <= most).toArray();
    }
}
