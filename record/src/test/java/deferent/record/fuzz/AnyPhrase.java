package deferent.record.fuzz;

import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Random;

/**
 * Phrases of every make, each made from a seed and a number: every motion that has a word, in every
 * plane and at every lean, of ordinary sizes mostly and now and then of the least and the greatest
 * that a phrase takes, with kits and performers. A few are refused; none is left out for what its
 * reading might be.
 */
final class AnyPhrase {
    private final Random random;

    private AnyPhrase(Random random) {
        this.random = random;
    }

    static Asked of(long seed, int number) {
        // Seeds that stand side by side begin alike: the first numbers are thrown away.
        Random random = new Random(seed * 1_000_003L + number * 7_919L);
        for (int i = 0; i < 8; i++) {
            random.nextLong();
        }
        AnyPhrase any = new AnyPhrase(random);
        String phrase = any.phrase();
        Kit kit = any.kit();
        Performer performer = any.performer();
        Kit.Heads[] heads = Kit.Heads.values();
        return new Asked(
                seed,
                number,
                phrase,
                kit.withHeads(any.one(2) ? Kit.Heads.SOFT : any.pick(heads)),
                performer);
    }

    private String phrase() {
        boolean rides = one(8);
        String left = hand(false);
        String right = hand(rides);
        String whole = one(12) ? right + " vs " + left : left + " vs " + right;
        return whole + shared();
    }

    private String hand(boolean riding) {
        String motion = motion(riding);
        // A pendulum that nobody drives hangs straight down, in an upright plane.
        boolean free = !riding && motion.matches("pendulum.*|point swinging.*");
        return motion + (riding ? " riding" : "") + placed(free);
    }

    private String motion(boolean riding) {
        return switch (random.nextInt(25)) {
            case 0 -> "static spin" + some(3, " turns " + turns()) + start();
            case 1 -> "extension" + radius(riding) + some(4, handStart());
            case 2, 3 ->
                    "isolation"
                            + (riding || !one(3) ? "" : " hand radius " + share(0.02, 0.98))
                            + some(4, handStart());
            case 4, 5 ->
                    pick("", "vertical ", "horizontal ")
                            + "cat-eye"
                            + radius(riding)
                            + some(4, handStart());
            case 6 -> "cat-eye" + some(2, " tilt " + angle()) + radius(riding);
            case 7 -> pick("", "vertical ") + "linear extension" + some(4, handStart());
            case 8 -> riding ? "triquetra" : "linear isolation" + some(3, " tilt " + angle());
            case 9, 10 ->
                    pick("", "box ", "diamond ")
                            + number(1, 9)
                            + "-petal "
                            + pick("antispin", "in-spin")
                            + radius(riding);
            case 11 -> "flower turns " + turns() + some(3, " tilt " + angle()) + radius(riding);
            case 12 -> "triquetra" + some(2, " tilt " + angle()) + radius(riding) + stalling();
            case 13 ->
                    some(2, number(2, 8) + "-petal ")
                            + "half-and-half flower"
                            + radius(riding)
                            + some(3, " ease " + pick("0", "1/16", "0.3"));
            case 14, 15 ->
                    "pendulum" + some(2, amplitude()) + (riding ? some(6, " rest " + angle()) : "");
            case 16 -> "stall" + some(2, amplitude());
            case 17, 18 ->
                    "CAP"
                            + some(
                                    3,
                                    pick(
                                            " turns 3",
                                            " turns 1",
                                            " turns 1.5 out 0.5 back",
                                            " turns 0.5 out 1.5 back",
                                            " turns 1.75 out 0.25 back"))
                            + some(3, " tilt " + angle())
                            + (riding ? "" : some(3, " sweep " + number(1, 180) + "°"))
                            + radius(riding)
                            + stalling();
            case 19 ->
                    "toroid"
                            + some(
                                    2,
                                    pick(
                                            " of a triquetra",
                                            " of an isolation",
                                            " of an extension",
                                            " of a cat-eye"))
                            + some(2, " plane turns " + pick("1", "2", "3", "-1", "-2"))
                            + some(2, pick(" about upright", " about level"))
                            + some(3, " poi alone");
            case 20 -> path(riding) + spin();
            case 21 ->
                    "ellipse axes "
                            + length()
                            + " by "
                            + some(4, "-")
                            + length()
                            + some(2, " tilt " + angle())
                            + spin();
            case 22 ->
                    "loops 1 of "
                            + length()
                            + " plus "
                            + pick("-1", "-2", "-3", "2", "3", "4", "-7", "24")
                            + " of "
                            + length()
                            + some(2, " " + angle())
                            + spin();
            case 23 ->
                    pick("line", "arc", "circle", "point")
                            + (one(2) ? " swinging" + some(2, amplitude()) : spin());
            default ->
                    pick("triangle", "square", "pentagon", "octagon", "7-corner polygon")
                            + radius(riding)
                            + spin();
        };
    }

    private String path(boolean riding) {
        return switch (random.nextInt(4)) {
            case 0 -> "point";
            case 1 -> "circle" + radius(riding);
            case 2 -> pick("line", "vertical line") + radius(riding);
            default ->
                    "arc"
                            + some(2, " sweep " + number(1, 180) + "°")
                            + some(3, " middle " + angle())
                            + radius(riding);
        };
    }

    private String spin() {
        return switch (random.nextInt(4)) {
            case 0 -> "";
            case 1 -> " turns " + turns() + start();
            case 2 -> {
                int whole = random.nextInt(7) - 3;
                double out = (random.nextInt(25) - 12) / 4.0;
                double at = pick(0.25, 0.5, 0.6, 0.75);
                yield " stretches "
                        + plain(at)
                        + " of "
                        + plain(out)
                        + " turns then "
                        + plain(1 - at)
                        + " of "
                        + plain(whole - out)
                        + " turns"
                        + stalling();
            }
            default -> " turns " + pick("1", "-1", "2", "-2") + stalling();
        };
    }

    private String stalling() {
        return some(6, " stalling" + some(3, " ease " + pick("0", "1/16", "0.3")));
    }

    private String start() {
        return some(3, " start " + angle());
    }

    private String handStart() {
        return " hand start " + angle();
    }

    private String amplitude() {
        return " amplitude " + (one(4) ? number(1, 179) : number(20, 90)) + "°";
    }

    private String radius(boolean riding) {
        return riding || one(2) ? "" : " hand radius " + (one(2) ? share(0.1, 2) : length());
    }

    /** A share of the hand's own tether. */
    private String share(double least, double most) {
        return plain(rounded(least + (most - least) * random.nextDouble(), 2)) + " tether";
    }

    private String placed(boolean upright) {
        return some(3, " tether " + length())
                + some(3, pick(" wheel", upright ? " wall" : " floor", " wheel", " wall"))
                + some(6, upright ? "" : " tip " + pick("10°", "-20°", "45°", "90°", "1°", angle()))
                + some(8, " swivel " + angle())
                + some(
                        6,
                        pick(
                                " centre 10 cm left 20 cm up",
                                " centre 30 cm right",
                                " centre at 0.1 m 0.2 m 0.4 m",
                                " depth 50 cm"))
                + some(8, " cycles " + pick("2", "2", "3", "4", "5", "24"));
    }

    private String shared() {
        return some(
                        2,
                        pick(
                                ", together",
                                ", split",
                                ", quarter",
                                ", timing 1/3",
                                ", timing " + plain(rounded(random.nextDouble(), 3))))
                + some(3, pick(", opposite direction", ", same direction"))
                + some(6, ", counter-clockwise")
                + (one(3) ? "" : ", tempo " + tempo())
                + some(5, ", tether " + length());
    }

    private String tempo() {
        return plain(
                one(10)
                        ? rounded(Math.pow(600, random.nextDouble()), 3)
                        : one(3)
                                ? 20 + random.nextInt(161)
                                : rounded(25 + 110 * random.nextDouble(), 1));
    }

    // One in twelve is as small or as great as a phrase takes.
    private String length() {
        if (one(12)) {
            double metres = 1e-5 * Math.pow(5e5, random.nextDouble());
            return plain(rounded(metres * 1000, 2)).equals("0")
                    ? "0.01 mm"
                    : plain(new BigDecimal(metres * 1000).round(new MathContext(3)).doubleValue())
                            + " mm";
        }
        return one(2)
                ? pick("30 cm", "40 cm", "50 cm", "55 cm", "65 cm", "80 cm", "120 cm")
                : plain(rounded(20 + 80 * random.nextDouble(), 1)) + " cm";
    }

    private String angle() {
        return one(2)
                ? pick("0°", "30°", "45°", "90°", "-90°", "120°", "180°")
                : plain(rounded(360 * random.nextDouble() - 180, 1)) + "°";
    }

    private String turns() {
        return one(6)
                ? String.valueOf(random.nextInt(49) - 24)
                : pick("1", "-1", "2", "-2", "3", "-3", "-4", "5", "0");
    }

    private Kit kit() {
        if (one(2)) {
            return Kit.USUAL;
        }
        return new Kit(
                pick(0.12, 0.06, 0.2, 0.3, 0.005 + 0.495 * random.nextDouble()),
                pick(0.07, 0.05, 0.1, 0.01 + 0.19 * random.nextDouble()),
                one(3) ? pick(0.01, 0.03, 0.1, 0.3 * random.nextDouble()) : 0,
                one(2));
    }

    private Performer performer() {
        if (one(2)) {
            return Performer.USUAL;
        }
        Performer some = Performer.of(rounded(1.0 + 1.5 * random.nextDouble(), 2));
        return one(3) ? some.withArm(rounded(0.3 + 0.9 * random.nextDouble(), 2)) : some;
    }

    private boolean one(int of) {
        return random.nextInt(of) == 0;
    }

    private String some(int of, String said) {
        return one(of) ? said : "";
    }

    private String number(int least, int most) {
        return String.valueOf(least + random.nextInt(most - least + 1));
    }

    @SafeVarargs
    private <T> T pick(T... all) {
        return all[random.nextInt(all.length)];
    }

    private static double rounded(double value, int places) {
        double by = Math.pow(10, places);
        return Math.rint(value * by) / by;
    }

    private static String plain(double value) {
        return new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
    }
}
