package deferent.motion.phrase;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Motion;
import deferent.motion.trade.Both;
import deferent.motion.trade.Call;
import deferent.motion.trade.Seen;
import deferent.motion.trade.Spelling;
import deferent.motion.trade.Trade;
import deferent.motion.trade.TradeMotion;
import deferent.motion.trade.Word;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each row of the table of trade motions is whole: what it makes it knows again. */
class TradeTableTest {
    static List<TradeMotion> motions() {
        return Trade.motions();
    }

    private static String said(TradeMotion row) {
        return row.said() + (row.said().equals("loops") ? " 1 of 30 cm plus -3 of 10 cm" : "");
    }

    /** Those that one hand can do. */
    static List<TradeMotion> ofOneHand() {
        return motions().stream().filter(row -> !row.both().map(Both::only).orElse(false)).toList();
    }

    @ParameterizedTest
    @MethodSource("ofOneHand")
    void aMotionIsKnownAgainByItsOwnRowAndSaidBack(TradeMotion row) {
        Seen nothing = new Seen(Motion.staticSpin(1, 0), 0.6, false, false);
        Motion motion = PhraseWriter.made(said(row), nothing, Lexicon.EMPTY).orElseThrow();
        Seen seen = nothing.with(motion);
        Call call = row.recognised().apply(seen).orElseThrow();
        assertThat(call.name()).isNotBlank();
        assertThat(PhraseWriter.made(call.words(), seen, Lexicon.EMPTY)).contains(motion);
        String back = new MotionWriter(seen, Lexicon.EMPTY).words().orElseThrow();
        assertThat(PhraseWriter.made(back, seen, Lexicon.EMPTY)).as(back).contains(motion);
    }

    @ParameterizedTest
    @MethodSource("motions")
    void noSpellingMeansTwoThings(TradeMotion row) {
        for (String spelling : row.spellings()) {
            String key = Spelling.key(spelling);
            assertThat(Trade.spelt(key)).as(spelling).contains(row);
            assertThat(Word.spelt(key)).as(spelling).isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("motions")
    void aNamedFlowerIsSaidByItsNameAndNotByItsPetals(TradeMotion row) {
        Motion motion =
                PhraseWriter.made(
                                said(row),
                                new Seen(Motion.staticSpin(1, 0), 0.6, false, false),
                                Lexicon.EMPTY)
                        .orElseThrow();
        boolean flower = row.takes().contains(Word.BOX) && !row.equals(Trade.FLOWER);
        if (flower) {
            assertThat(Trade.called(new Seen(motion, 0.6, false, false)).name())
                    .isEqualTo(row.said());
        }
    }
}
