package deferent.record.number;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.reading.body.Performer;
import deferent.reading.worked.Detail;
import deferent.search.whole.Readings;
import deferent.tell.Lame;
import deferent.tell.TellSizes;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TableTest {
    private static final Readings LINKED =
            Readings.of(
                    Phrase.parse("static spin vs triquetra").pairing(),
                    Performer.USUAL,
                    Detail.LIVE);

    @Test
    void aNumberThatIsNoneIsNeverLeftOutSilently() {
        for (double none : new double[] {Double.NaN, Double.NEGATIVE_INFINITY}) {
            assertThatThrownBy(() -> Written.number("x_m").json().apply(none))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("x_m");
        }
    }

    @ParameterizedTest
    @CsvSource({
        "width_m, 1.2, 120 cm",
        "width_m, 0.00123, 0.12 cm",
        "width_m, 0.00002, under 0.01 cm",
        "width_m, -1e-17, 0 cm",
        "offset_m, -0.08, -8 cm",
        "signed_area_m2, 1.130973, 1.131 m²",
        "off_deg, 12.5, 12.5°",
        "period_s, 1, 1 s",
        "head_speed_m_per_s, 7.5398, 7.54 m/s",
        "along_n_s, 0.25, 0.25 N s",
        "turns_per_s, 2, 2 a second",
        "tempo_cycles_per_min, 32.7076, 32.7 a minute",
        "lag_cycles, 0.25, 0.25 of a cycle",
        "least_share, 0.6, 60%",
        "growth_in_reaction, 3.4, 3.4"
    })
    void theEndOfAKeySaysHowPeopleReadItsNumber(String key, double value, String said) {
        assertThat(Written.number(key).said().apply(value)).isEqualTo(said);
    }

    @Test
    void aNumberThatSomeHaveNotMaySayThatThereIsNone() {
        Written<Optional<Double>> radius = Written.number("x_m").maybe("none");
        assertThat(radius.said().apply(Optional.empty())).isEqualTo("none");
        assertThat(radius.said().apply(Optional.of(0.6))).isEqualTo("60 cm");
    }

    @Test
    void whatIsSeenAsPlacedIsToldBeforeWhatIsPossibleAtBest() {
        SideTable links = SideTable.links(LINKED);
        assertThat(links.lines().get(0)).isEqualTo(new TellSizes.Row("kind", "touching", "none"));
        List<String> names = links.lines().stream().map(TellSizes.Row::name).toList();
        assertThat(names.indexOf("apart now, in plane"))
                .isLessThan(names.indexOf("at best, as shapes"));
        assertThat(names).doesNotHaveDuplicates().doesNotContain("surely at least");
        assertThat(
                        ReadingTables.LINK
                                .json(LINKED.link(Side.LEFT).reading().orElseThrow())
                                .has("shape_gap_at_least_m"))
                .isTrue();
    }

    @Test
    void everyLineOfAReadingThatWasNotWorkedOutSaysSo() {
        Readings lame = Lame.wholly("CAP riding pendulum");
        assertThat(SideTable.links(lame).lines())
                .allSatisfy(
                        line -> {
                            assertThat(line.left()).isEqualTo("not worked out");
                            assertThat(line.right()).isEqualTo("not worked out");
                        });
        assertThat(SideTable.hands(lame).lines())
                .contains(
                        new TellSizes.Row("tether", "60 cm", "60 cm"),
                        new TellSizes.Row("hand radius", "not worked out", "0 cm"),
                        new TellSizes.Row("figure's width", "not worked out", "not worked out"));
    }
}
