package deferent.motion.trade;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What is offered in the place of words that are explained, not said. */
@FunctionalInterface
public interface Instead {
    /**
     * Words to stand there, the likeliest first; empty words leave the place out.
     *
     * @param number the number that stands with the words
     * @param rest what the phrase says without them, where that is a pairing
     */
    List<String> words(OptionalDouble number, Optional<Pairing> rest);

    /** Always these. */
    static Instead of(String... words) {
        List<String> all = List.of(words);
        return (number, rest) -> all;
    }

    /** A number of turns a minute: of the hands, or of a poi. */
    static List<String> turnsAMinute(OptionalDouble number, Optional<Pairing> rest) {
        List<String> tempos = new ArrayList<>();
        if (number.isPresent()) {
            tempos.add(tempo(number.getAsDouble()));
            rest.stream()
                    .flatMap(p -> Arrays.stream(Side.values()).map(side -> p.part(side).motion()))
                    .map(motion -> Math.abs(motion.spin().turns()))
                    .filter(turns -> turns > 1)
                    .forEach(turns -> tempos.add(tempo(number.getAsDouble() / turns)));
        }
        tempos.add("");
        return tempos;
    }

    /** A number of beats a minute: a beat, two or four to a cycle. */
    static List<String> beatsAMinute(OptionalDouble number, Optional<Pairing> rest) {
        return number.isPresent()
                ? List.of(
                        tempo(number.getAsDouble()),
                        tempo(number.getAsDouble() / 2),
                        tempo(number.getAsDouble() / 4),
                        "")
                : List.of("");
    }

    /**
     * The slowest tempo at which the cords stay taut, in whole cycles a minute; a longer tether
     * where a pendulum sets the tempo, and 30 where no tempo keeps them taut.
     */
    static List<String> slowest(OptionalDouble number, Optional<Pairing> rest) {
        if (rest.filter(Pairing::setsOwnTempo).isPresent()) {
            return List.of("tether 80 cm", "");
        }
        OptionalDouble slowest = rest.map(Taut::slowest).orElse(OptionalDouble.empty());
        return slowest.isPresent()
                ? List.of(tempo(Math.ceil(Math.max(1, slowest.getAsDouble()))), "")
                : List.of("tempo 30", "");
    }

    private static String tempo(double aMinute) {
        return "tempo " + Amounts.number(Math.rint(aMinute * 1000) / 1000);
    }
}
