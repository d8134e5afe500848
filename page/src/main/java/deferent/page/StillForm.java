package deferent.page;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What kind of picture a still is. */
public sealed interface StillForm {
    /** One moment, as the stage shows it: trails fading behind the heads. */
    StillForm MOMENT = new Moment();

    /** The paths alone, drawn evenly: the figure. */
    StillForm FIGURE = new Figure();

    /** The figure with hands and tethers at the still's moments, numbered. */
    StillForm POSES = new Poses();

    /** The still's moments side by side, with their counts below. */
    StillForm STRIP = new Strip();

    /** The light of one common cycle. */
    StillForm EXPOSURE = new Exposure(OptionalDouble.empty(), Optional.empty());

    /** {@link StillForm#MOMENT}. */
    record Moment() implements StillForm {}

    /** {@link StillForm#FIGURE}. */
    record Figure() implements StillForm {}

    /** {@link StillForm#POSES}. */
    record Poses() implements StillForm {}

    /** {@link StillForm#STRIP}. */
    record Strip() implements StillForm {}

    /**
     * What a camera sees of glowing heads in the dark while its shutter stays open from the still's
     * time on: light adds up, so a stretch of path is the brighter the longer the head spends on
     * it.
     *
     * @param shutter seconds it stays open, above 0 to 60; empty for one common cycle
     * @param blink of the heads' lights; empty where they burn steadily
     */
    record Exposure(OptionalDouble shutter, Optional<Blink> blink) implements StillForm {
        public Exposure {
            shutter.ifPresent(s -> Refusal.positive(s, 60, "shutter of an exposure", "seconds"));
        }
    }

    /**
     * How hands pass from one pattern into another: what is spun before and after faintly, each
     * hand's passage with its poi's strongly, marked where it leaves and joins.
     *
     * @param hands those that pass over
     */
    record Passage(List<Passing> hands) implements StillForm {
        public Passage {
            hands = List.copyOf(hands);
        }
    }

    /**
     * A hand's passage.
     *
     * @param from when it leaves, on the scene's clock, seconds
     * @param to when it joins
     * @param leaves what stands where it leaves: "left leaves on 3"
     * @param joins what stands where it joins
     */
    record Passing(Side side, double from, double to, String leaves, String joins) {}

    /**
     * A light that goes on and off, on at the cycle's start.
     *
     * @param rate times a second, 0.1 to 2000
     * @param duty share of the time it is on, 0.01 to 1
     */
    record Blink(double rate, double duty) {
        public Blink {
            Refusal.within(rate, 0.1, 2000, "rate of a blinking light", "a second");
            Refusal.within(duty, 0.01, 1, "duty of a blinking light", "of the time");
        }
    }

    /** The light while a shutter of so many seconds is open. */
    static StillForm exposure(double shutter) {
        return new Exposure(OptionalDouble.of(shutter), Optional.empty());
    }

    /** The light of blinking heads while a shutter of so many seconds is open. */
    static StillForm exposure(double shutter, double rate, double duty) {
        return new Exposure(OptionalDouble.of(shutter), Optional.of(new Blink(rate, duty)));
    }
}
