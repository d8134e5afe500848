package deferent.reading.danger;

import deferent.motion.pairing.Refusal;
import deferent.reading.tether.Kit;
import java.util.List;
import java.util.stream.Stream;

/**
 * From which number on a hazard asks for care, and from which it is a danger: the one table of
 * levels. SI units, as {@link Hazard} says them; no number here is a permission.
 *
 * <p>Sources:
 *
 * <ul>
 *   <li>Link, Maron, Wang, VanderBrink, Zhu, Estes, Upper and lower limits of vulnerability to
 *       sudden arrhythmic death with chest-wall impact, Journal of the American College of
 *       Cardiology 41 (2003) 99: a baseball at 20 mph (8.9 m/s) stopped no heart of the animals
 *       struck, at 25 mph (11.2 m/s) it stopped 7% and at 40 mph (17.9 m/s) 68%. With the ball's
 *       145 g (from memory) those are 5.8, 9.1 and 23 J. Hard heads are taken as that ball, from
 *       none to the first hearts stopped; soft ones from the first to the most; for fire we halve
 *       what asks for care of hard ones and put the danger where no heart stopped.
 *   <li>Duma, Ng, Kennedy, Stitzel, Herring, Kuhn, Determination of significant parameters for eye
 *       injury risk from projectiles, Journal of Trauma 59 (2005) 960: half the eyes had their
 *       cornea torn at 1503 J over each square metre of the projectile's cross-section, which for a
 *       head of 7 cm is 5.8 J.
 *   <li>Mathiowetz and others, Grip and pinch strength: normative data for adults, Archives of
 *       Physical Medicine and Rehabilitation 66 (1985) 69, table of grip: women of 20 to 24 close
 *       the left hand with 61.0 lb (271 N) on average, the weakest with 33 lb (147 N). A hand that
 *       is closed so is taken to hold a pull as great (our choice). Danger is the weakest hand,
 *       care half of it; for hard heads and fire two thirds of both (our choice).
 *   <li>Deeb, Drury, Pendergast, Ergonomics 35 (1992), its abstract: what is held for long should
 *       ask no more than 15% of a muscle's greatest force. That is 41 N of the mean above; danger
 *       is twice as much; for hard heads and fire two thirds of both (our choice).
 *   <li>EN 1005-3 (2002), table of greatest isometric forces, from memory: a seated arm pulls 225 N
 *       where the trunk is supported. Care is half of it, and for hard heads and fire two thirds of
 *       both (our choice).
 * </ul>
 *
 * @param hazard of what
 * @param heads with which heads
 * @param care from where on to take care
 * @param danger from where on it is a danger
 * @param source where the two come from
 */
public record Bound(Hazard hazard, Kit.Heads heads, double care, double danger, String source) {
    private static final String LINK = "Link and others (2003), soft heads as far up again";
    private static final String EYE = LINK + "; Duma and others (2005)";
    private static final String MOST = "Mathiowetz and others (1985), the weakest hand";
    private static final String LONG =
            "Mathiowetz and others (1985), 15% of the mean; Deeb and others (1992)";
    private static final String ARM = "EN 1005-3, from memory";
    private static final String OURS = "our choice";

    /** Of each hazard soft, hard and fire heads; care, then danger. */
    private static final List<Bound> TABLE =
            Stream.of(
                            of(Hazard.BODY, 0.05, 0, 0.05, 0, 0.10, 0.02, OURS),
                            of(Hazard.FACE, 0.20, 0.15, 0.25, 0.20, 0.40, 0.20, OURS),
                            of(Hazard.THROAT, 0.20, 0.15, 0.25, 0.20, 0.40, 0.20, OURS),
                            of(Hazard.GROIN, 0.20, 0.15, 0.25, 0.20, 0.40, 0.20, OURS),
                            of(Hazard.HEADS_MEET, 1, 5, 0.5, 2, 0.5, 2, OURS),
                            of(Hazard.HAND_STRUCK, 1, 5, 0.5, 2, 0.5, 2, OURS),
                            of(Hazard.CORDS, 0.03, 0.01, 0.03, 0.01, 0.05, 0.01, OURS),
                            of(Hazard.AUDIENCE, 2, 3, 1.8, 2.5, 1.5, 2, OURS),
                            of(Hazard.PULL, 73, 147, 49, 98, 49, 98, MOST),
                            of(Hazard.GRIP, 41, 81, 27, 54, 27, 54, LONG),
                            of(Hazard.SHOULDER, 112, 225, 75, 150, 75, 150, ARM),
                            of(Hazard.HEAD_SPEED, 11.2, 17.9, 8.9, 11.2, 4.5, 8.9, LINK),
                            of(Hazard.HEAD_ENERGY, 9.1, 23, 5.8, 9.1, 2.9, 5.8, EYE),
                            of(Hazard.POI_TURNS, 4, 6, 3, 5, 2, 4, OURS))
                    .flatMap(List::stream)
                    .toList();

    private static List<Bound> of(
            Hazard hazard,
            double softCare,
            double softDanger,
            double hardCare,
            double hardDanger,
            double fireCare,
            double fireDanger,
            String source) {
        return List.of(
                new Bound(hazard, Kit.Heads.SOFT, softCare, softDanger, source),
                new Bound(hazard, Kit.Heads.HARD, hardCare, hardDanger, source),
                new Bound(hazard, Kit.Heads.FIRE, fireCare, fireDanger, source));
    }

    public Bound {
        Refusal.numbers("a bound", care, danger);
        if (hazard.keptAway() ? care < danger : care > danger) {
            throw new Refusal(
                    "asks for care only within the danger",
                    "the bound of " + hazard,
                    "put care before danger");
        }
    }

    public static List<Bound> table() {
        return TABLE;
    }

    /** The row of a hazard with such heads. */
    public static Bound of(Hazard hazard, Kit.Heads heads) {
        return TABLE.get(hazard.ordinal() * Kit.Heads.values().length + heads.ordinal());
    }

    /** How grave a value is. */
    public Level level(double value) {
        return beyond(value, danger) ? Level.DANGER : beyond(value, care) ? Level.CARE : Level.CALM;
    }

    /** The number at which a level begins, and at which it ends. */
    public double at(Level level) {
        return level == Level.DANGER ? danger : care;
    }

    private boolean beyond(double value, double number) {
        return hazard.keptAway() ? value < number : value > number;
    }
}
