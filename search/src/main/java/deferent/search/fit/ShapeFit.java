package deferent.search.fit;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Size;
import deferent.reading.link.LinkReading;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Closes the shape gap by hand radii, tethers, swings and, where it changes the figure, the poi's
 * start: first by closed forms, one size and then two together, each read afterwards; where there
 * are none, by search.
 */
final class ShapeFit {
    private static final int MOST = 8;
    private static final double WORTH_POLISHING = 0.03;

    private final FitLink link;
    private final Limits limits;
    private final Pairing from;
    private final List<Size> free;

    ShapeFit(FitLink link, Limits limits, Pairing from, Collection<Size> free) {
        this.link = link;
        this.limits = limits;
        this.from = from;
        this.free =
                free.stream()
                        .filter(s -> bears(s, from))
                        .sorted(
                                Comparator.comparing(Size::kind)
                                        .thenComparing(s -> s.side() == link.carrier() ? 0 : 1))
                        .toList();
    }

    /** The free sizes on which the shape gap depends. */
    List<Size> free() {
        return free;
    }

    private boolean bears(Size size, Pairing pairing) {
        if (size.read(pairing).isEmpty()) {
            return false;
        }
        boolean carriers = size.side() == link.carrier();
        return switch (size.kind()) {
            case HAND_RADIUS -> true;
            case TETHER, AMPLITUDE, START ->
                    carriers || pairing.part(link.carrier()).motion().riding();
            default -> false;
        };
    }

    /** The changes that close the link, each by a closed form and read afterwards. */
    List<Trial> byClosedForm() {
        List<Trial> found = new ArrayList<>();
        for (Trial one : stepped(Trial.of(from), free)) {
            keep(found, one);
        }
        for (Trial one : stepped(Trial.of(from), free)) {
            List<Size> rest = free.stream().filter(s -> !one.sizes().contains(s)).toList();
            for (Trial two : stepped(one, rest)) {
                keep(found, two);
            }
        }
        return found;
    }

    /** The limit that alone keeps a single length from closing the link, if one does. */
    Optional<Why> beyondALimit() {
        for (Size size : free.stream().filter(s -> s.kind().length()).toList()) {
            Limits.Range range = limits.of(size);
            for (double value : Terms.of(from, link.carrier()).candidates(size)) {
                Optional<Pairing> set = FitLink.set(from, size, value);
                if (!range.holds(value)
                        && set.isPresent()
                        && Terms.of(set.get(), link.carrier()).agree()) {
                    double limit = value < range.least() ? range.least() : range.most();
                    return Optional.of(new Why(Obstacle.BEYOND_A_LIMIT, limit, value));
                }
            }
        }
        return Optional.empty();
    }

    private List<Trial> stepped(Trial trial, List<Size> sizes) {
        List<Trial> next = new ArrayList<>();
        for (Size size : sizes) {
            for (double value : Terms.of(trial.pairing(), link.carrier()).candidates(size)) {
                trial.with(size, value, limits, true)
                        .filter(t -> t.changes().size() > trial.changes().size())
                        .ifPresent(next::add);
            }
        }
        return next;
    }

    private void keep(List<Trial> found, Trial trial) {
        if (found.size() < MOST
                && found.stream()
                        .noneMatch(
                                f ->
                                        f.changes().size() == trial.changes().size()
                                                && f.covers(trial))
                && Terms.of(trial.pairing(), link.carrier()).agree()
                && closed(link.certified(trial.pairing()))) {
            found.add(trial);
        }
    }

    /** Whether the certified gap of a trial is closed; asked only where it may be. */
    boolean closes(Trial trial) {
        return link.refined(trial.pairing()) < 10 * FitLink.CLOSED
                && closed(link.certified(trial.pairing()));
    }

    static boolean closed(LinkReading link) {
        return link.shapeGap() < FitLink.CLOSED;
    }

    /**
     * What a search over one free size, and over all of them together, comes to, nearest first.
     *
     * @param hopeful whether it may close, so that what comes near is worth polishing on the
     *     refined gap
     */
    List<Trial> bySearch(boolean hopeful) {
        SizeSearch rough = new SizeSearch(limits, link::estimate);
        SizeSearch fine = new SizeSearch(limits, link::refined);
        Trial here = Trial.of(from);
        List<Trial> found = new ArrayList<>(List.of(here));
        boolean closed = false;
        for (Size size : free) {
            Trial one = rough.overAll(here, size, 10, 12);
            if (hopeful && !one.changes().isEmpty() && near(rough, one)) {
                double at = one.changes().get(0).to();
                one = fine.about(here, size, at * 0.95, at, at * 1.05, 14);
                closed |= closes(one);
            }
            found.add(one);
        }
        if (free.size() > 1 && !closed) {
            Trial start = rough.sorted(found).get(0);
            for (Trial each : List.of(here, start)) {
                Trial all = rough.together(each, free, 0.05, 90);
                found.add(hopeful && near(rough, all) ? fine.together(all, free, 0.004, 60) : all);
            }
        }
        return (hopeful ? fine : rough).sorted(found);
    }

    private static boolean near(SizeSearch rough, Trial trial) {
        return rough.gap(trial.pairing()) < WORTH_POLISHING;
    }
}
