package deferent.search.api;

import deferent.motion.api.TwoPoi;
import deferent.motion.api.opened.Opened;
import deferent.motion.pairing.Size;
import deferent.motion.shared.Side;
import deferent.reading.worked.Worked;
import deferent.search.fit.Fit;
import deferent.search.fit.Remedy;
import deferent.search.fit.SizeChange;
import java.util.List;

/**
 * One way to close a link: the same two motions in sizes with which the carrier's head traces the
 * path of the other hand.
 *
 * @param pairing with the changes made
 * @param changes none where the link is closed as it stands
 * @param apart how far head and hand then still are apart, metres
 */
public record Fitted(TwoPoi pairing, List<Change> changes, double apart) {
    /**
     * Keeps a copy of the changes.
     *
     * @param pairing with the changes made
     * @param changes in the order they were found
     * @param apart metres
     */
    public Fitted {
        changes = List.copyOf(changes);
    }

    /**
     * A size that was changed.
     *
     * @param key one of {@link TwoPoi#sizes()}
     * @param from what it was, in the unit that the key ends in
     * @param to what it is
     */
    public record Change(String key, double from, double to) {
        private static Change of(SizeChange change) {
            Size size = change.size();
            return size.kind().angle()
                    ? new Change(
                            size.key(), Math.toDegrees(change.from()), Math.toDegrees(change.to()))
                    : new Change(size.key(), change.from(), change.to());
        }
    }

    /**
     * Looks for sizes that close a link; every size may change that leaves both motions what they
     * are.
     *
     * @param pairing what is spun
     * @param carrier whose head leads
     * @return the ways that close it: of one change before those of several, and of these the one
     *     that moves hands and heads least first; none where nothing closes it
     * @throws deferent.motion.shared.Refused where its numbers come to no end
     */
    public static List<Fitted> of(TwoPoi pairing, Side carrier) {
        return Worked.orRefusal(
                        "the numbers of the fit", () -> Fit.of(Opened.pairing(pairing), carrier))
                .answers()
                .stream()
                .map(Fitted::of)
                .toList();
    }

    private static Fitted of(Remedy remedy) {
        return new Fitted(
                Opened.closed(remedy.pairing()),
                remedy.changes().stream().map(Change::of).toList(),
                remedy.gapLeft());
    }
}
