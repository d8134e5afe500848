package deferent.search.seek;

import deferent.motion.pairing.Refusal;

/**
 * Where a stopped seek stands, in plain numbers that any store can keep. Build and key are made
 * again, which costs seconds; what the join has found is not.
 *
 * @param grid the space's
 * @param tethers equal or free
 * @param nearness the tolerance in the curves' own unit
 * @param joined head classes that have asked
 * @param heads a head class a match
 * @param hands a hand class a match
 * @param gaps in the curves' own unit
 * @param compared full comparisons made
 */
public record Checkpoint(
        Space.Grid grid,
        Tethers tethers,
        double nearness,
        int joined,
        int[] heads,
        int[] hands,
        double[] gaps,
        long compared) {
    public Checkpoint {
        heads = heads.clone();
        hands = hands.clone();
        gaps = gaps.clone();
        if (heads.length != hands.length || heads.length != gaps.length) {
            throw new Refusal(
                    "has arrays of different lengths", "checkpoint", "give one number a match");
        }
    }

    Matches matches() {
        Matches matches = new Matches();
        for (int i = 0; i < heads.length; i++) {
            matches.add(heads[i], hands[i], gaps[i]);
        }
        matches.compared(compared);
        return matches;
    }
}
