package deferent.motion.phrase;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.shared.Side;
import deferent.motion.trade.Both;
import deferent.motion.trade.Trade;
import deferent.motion.trade.TradeMotion;
import deferent.motion.trade.Word;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Nothing is read wrongly in silence, and no refusal leaves anybody without a phrase. */
class ComposedPhrasesProperties {
    private static final List<TradeMotion> MOTIONS =
            Trade.motions().stream()
                    .filter(row -> row.follows().isEmpty() && !row.equals(Trade.FLOWER))
                    .filter(row -> !row.both().map(Both::only).orElse(false))
                    .toList();

    private static final List<String> TRADEISH =
            Stream.concat(
                            Stream.concat(
                                            Trade.motions().stream().map(TradeMotion::spellings),
                                            Word.all().stream().map(Word::spellings))
                                    .flatMap(List::stream),
                            Stream.of(
                                    "vs",
                                    "vs",
                                    "v",
                                    "&",
                                    "/",
                                    ",",
                                    ":",
                                    "iso",
                                    "tri",
                                    "4p",
                                    "anti",
                                    "3",
                                    "60",
                                    "45°",
                                    "60 cm",
                                    "half",
                                    "1/4 time",
                                    "isolaton",
                                    "waffle"))
                    .toList();

    /** A motion as it is spelt somewhere in its row. */
    private record Spelt(TradeMotion row, String words) {
        static Spelt of(Any any) {
            TradeMotion row = any.of(MOTIONS);
            String words = any.of(row.spellings());
            return new Spelt(row, any.of(words, words.toUpperCase(Locale.ROOT)));
        }
    }

    private static Pairing pairing(String phrase) {
        return Phrase.parse(phrase).pairing();
    }

    private static Part alone(TradeMotion row, Side side) {
        return pairing(row.said() + " vs " + row.said()).part(side);
    }

    @Property(tries = 1000)
    void aPairIsComposedOfItsPartsHoweverItIsJoined(Any any) {
        Spelt left = any.from(Spelt::of);
        Spelt right = any.from(Spelt::of);
        String join = any.of(" vs ", " v ", " x ", " & ", " and ", " with ", " / ", ", ", " + ");
        Pairing pairing = pairing(left.words() + join + right.words());
        assertThat(pairing.left()).isEqualTo(alone(left.row(), Side.LEFT));
        assertThat(pairing.right()).isEqualTo(alone(right.row(), Side.RIGHT));
    }

    @Property(tries = 500)
    void aLabelSaysWhoseItIsWhereverItStands(Any any) {
        Spelt left = any.from(Spelt::of);
        Spelt right = any.from(Spelt::of);
        String l = any.of("left", "L", "LH", "left hand");
        String r = any.of("right", "R", "RH", "right hand");
        String phrase =
                any.of(
                        l + ": " + left.words() + " " + r + ": " + right.words(),
                        r + ": " + right.words() + ", " + l + ": " + left.words(),
                        right.words() + " (" + r + ") vs " + left.words() + " (" + l + ")",
                        r + " " + right.words() + " vs " + left.words());
        Pairing pairing = pairing(phrase);
        assertThat(pairing.left()).as(phrase).isEqualTo(alone(left.row(), Side.LEFT));
        assertThat(pairing.right()).as(phrase).isEqualTo(alone(right.row(), Side.RIGHT));
    }

    @Property(tries = 500)
    void oneMotionIsBothHandsDoingIt(Any any) {
        List<TradeMotion> plain = MOTIONS.stream().filter(row -> row.both().isEmpty()).toList();
        TradeMotion row = any.of(plain);
        Spelt one = new Spelt(row, any.of(row.spellings()));
        String shared = any.of("", " split", ", split opp", " SO", ", tog opp", ", tether 50 cm");
        String said = one.row().said();
        assertThat(pairing(one.words() + shared))
                .isEqualTo(
                        pairing(
                                said
                                        + " vs "
                                        + said
                                        + (shared.startsWith(",") ? "" : ",")
                                        + shared));
    }

    @Property(tries = 1500)
    void whateverIsRefusedOffersAPhraseThatReads(Any any) {
        String typed = String.join(" ", any.list(1, 8, () -> any.of(TRADEISH)));
        try {
            assertThat(pairing(typed)).isNotNull();
        } catch (PhraseError error) {
            assertThat(error.offers()).as(typed).isNotEmpty();
            for (String offer : error.offers()) {
                assertThat(pairing(offer)).as("%s for %s", offer, typed).isNotNull();
            }
        }
    }
}
