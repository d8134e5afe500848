package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.search.crossing.Crossing;
import deferent.search.crossing.CrossingRequest;
import deferent.search.crossing.Crossings;
import deferent.search.crossing.FlowingSet;
import deferent.search.crossing.Freedom;
import deferent.search.crossing.ShelfMap;
import deferent.search.crossing.ShelfTable;
import java.util.List;
import org.junit.jupiter.api.Test;

class TellCrossingTest {
    private static Pairing said(String phrase) {
        return Phrase.parse(phrase).pairing();
    }

    @Test
    void aCrossingIsSaidWithTheDirectionAndTimingOfItsProps() {
        Crossings crossings =
                Crossings.between(
                        said("extension vs extension, split time"),
                        said("extension vs extension, hand radius 56 cm, split time"));
        List<Told> told = TellCrossing.of(crossings);
        assertThat(told.get(0).text()).contains("at one moment");
        assertThat(told.get(1).text())
                .contains("split time, same direction")
                .contains("both hands go on as they are")
                .contains("times the head's weight");
    }

    @Test
    void whereThereIsNoneItIsSaidHowNearTheyCome() {
        List<Told> told =
                TellCrossing.of(
                        Crossings.between(
                                said("triquetra vs triquetra"), said("extension vs extension")));
        assertThat(told).hasSize(1);
        assertThat(told.get(0).text())
                .contains("cannot go straight over into the second")
                .contains("m/s apart");
    }

    @Test
    void aChangeOfTimingIsSaid() {
        Crossings crossings =
                Crossings.between(
                        said("isolation vs isolation, together"),
                        said("isolation vs isolation, split time"),
                        CrossingRequest.USUAL.with(Freedom.NONE.withTiming(true)));
        assertThat(TellCrossing.of(crossings).get(1).text())
                .contains("the timing between the hands changes by half a cycle");
    }

    @Test
    void aPassageSaysWhetherACordCanDoIt() {
        Pairing quick = said("extension vs extension, tempo 100");
        Crossing c = Crossings.between(quick, quick).smoothest().orElseThrow();
        assertThat(TellCrossing.of(c.passage()).text()).contains("A cord can do it");
        Pairing square = said("square vs square");
        Crossing corner = Crossings.between(square, square).smoothest().orElseThrow();
        assertThat(TellCrossing.of(corner.passage()).text())
                .contains("No cord can do it")
                .contains("corner");
    }

    @Test
    void aRouteAndASetAreSaidByName() {
        List<Pairing> shelf =
                List.of(
                        said("extension vs extension"),
                        said("extension vs extension, hand radius 56 cm"),
                        said("extension vs extension, hand radius 57 cm"));
        ShelfTable table = new ShelfTable(shelf, CrossingRequest.USUAL);
        table.run();
        ShelfMap map = ShelfMap.of(table);
        List<String> names = List.of("the long arm", "the middle", "the short");
        assertThat(TellCrossing.of(map.route(0, 1).orElseThrow(), names::get).text())
                .isEqualTo("the long arm, then the middle.");
        FlowingSet set = map.set(0, 3);
        assertThat(TellCrossing.of(set, 3, names::get).why()).contains("gentler");
        assertThat(TellCrossing.of(map.set(0, 8), 8, names::get).text())
                .contains("There is no set of 8 patterns");
    }
}
