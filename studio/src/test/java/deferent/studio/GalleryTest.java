package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.reading.body.Performer;
import deferent.reading.danger.Level;
import deferent.reading.link.LinkReading;
import deferent.reading.shared.LinkKind;
import deferent.reading.worked.Detail;
import deferent.search.whole.Readings;
import java.util.EnumSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a first visitor picks from can be spun. */
class GalleryTest {
    static Iterable<String> phrases() {
        return Gallery.PHRASES;
    }

    private static Readings readings(String phrase) {
        return Readings.of(Phrase.parse(phrase).pairing(), Performer.USUAL, Detail.SETTLED);
    }

    @ParameterizedTest
    @MethodSource("phrases")
    void armsReachItAndNothingInItIsADanger(String phrase) {
        Readings readings = readings(phrase);
        assertThat(readings.reach().reading().orElseThrow().reached()).isTrue();
        assertThat(readings.dangers().reading().orElseThrow().level()).isEqualTo(Level.CALM);
    }

    @ParameterizedTest
    @MethodSource("phrases")
    void itIsWrittenAsThePhraseLineWritesIt(String phrase) {
        assertThat(Phrase.write(Phrase.parse(phrase).pairing())).contains(phrase);
    }

    @Test
    void aDozenShowLinksOfSeveralKindsAndSomeThatDoNotLink() {
        Set<LinkKind> kinds = EnumSet.noneOf(LinkKind.class);
        boolean open = false;
        for (String phrase : Gallery.PHRASES) {
            Readings readings = readings(phrase);
            for (Side side : Side.values()) {
                readings.link(side).reading().map(LinkReading::kind).ifPresent(kinds::add);
            }
            open |= !Readings.links(readings.leftLeads()) && !Readings.links(readings.rightLeads());
        }
        assertThat(Gallery.PHRASES).hasSize(12).doesNotHaveDuplicates();
        assertThat(kinds).contains(LinkKind.TOUCHING, LinkKind.CARRIED, LinkKind.FOLLOWED);
        assertThat(open).isTrue();
    }
}
