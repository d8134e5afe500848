package deferent.motion.pairing;

import java.util.List;
import java.util.function.Function;

/**
 * The hand goes where the other poi's head goes, carried along by the vector between the two hands'
 * centres (their depths included), and ahead of it or behind as the timing says.
 */
public record Riding() implements HandPath {
    static final Form FORM = new Form("riding", "", "", List.of(), sizes -> new Riding());

    @Override
    public Course course() {
        throw new IllegalStateException(
                "a rider's hand has no path without its carrier; the trace knows both");
    }

    @Override
    public List<Break> breaks() {
        return List.of();
    }

    /** 0: the size is the carrier's. */
    @Override
    public double radius() {
        return 0;
    }

    @Override
    public boolean rides() {
        return true;
    }

    @Override
    public String noun() {
        return FORM.key();
    }

    @Override
    public String goes() {
        return "goes where the other head goes";
    }

    @Override
    public <T> T match(
            Function<Form.Sized, T> sized, Function<Series, T> summed, Function<Drawn, T> drawn) {
        return sized.apply(FORM.of());
    }

    @Override
    public Riding scaled(double factor) {
        return this;
    }

    @Override
    public Riding turned(double angle) {
        return this;
    }
}
