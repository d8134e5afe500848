package deferent.reading.body;

import deferent.motion.pairing.Refusal;

/**
 * What is to be kept clear of what, and by how much. How thick arms and body are is theirs.
 *
 * @param headRadius of the heads, metres
 * @param cords how near two cords may come, metres
 * @param body how near head or cord may come to the body, metres
 * @param knock how fast a head may pass another or a hand that it touches, m/s; slower it stays
 *     with it, as in a link
 */
public record KeptClear(double headRadius, double cords, double body, double knock) {
    public KeptClear {
        Refusal.positive(headRadius, 0.25, "head radius", "m");
        Refusal.within(cords, 0, 0.5, "clearance of cords", "m");
        Refusal.within(body, 0, 0.5, "clearance of the body", "m");
        Refusal.within(knock, 0, 100, "speed of a knock", "m/s");
    }
}
