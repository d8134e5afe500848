package deferent.record;

import deferent.motion.song.Beats;
import deferent.motion.trial.Any;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Songs of every make, for properties. */
final class AnySong {
    private AnySong() {}

    static SongDocument of(Any any) {
        List<Double> times = new ArrayList<>();
        times.add(any.number(0, 10));
        any.list(1, 40, () -> any.number(0.05, 10))
                .forEach(apart -> times.add(times.get(times.size() - 1) + apart));
        int aBar = any.whole(1, Beats.LONGEST_BAR);
        double last = times.get(times.size() - 1);
        return new SongDocument(
                AnyPattern.text(any),
                AnyPattern.text(any),
                any.oneOf(Optional::empty, () -> Optional.of(AnyPattern.text(any))),
                any.list(0, 3, () -> AnyPattern.text(any)),
                new SongSound(
                        AnyPattern.text(any),
                        String.format("%064x", any.whole(0, 1_000_000)),
                        any.number(last, SongSound.LONGEST)),
                new Beats(times, aBar, any.whole(0, aBar - 1)),
                any.of(false, true),
                any.oneOf(
                        () -> Extras.NONE,
                        () -> new Extras(java.util.Map.of("/x_mine", "[1]", "/sound/x_its", "2"))));
    }
}
