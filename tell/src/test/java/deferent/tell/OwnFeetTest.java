package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.reading.worked.Detail;
import deferent.reading.worked.Worked;
import deferent.search.whole.Advice;
import deferent.search.whole.Keep;
import deferent.search.whole.Readings;
import deferent.search.whole.Staged;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Every reading stands on its own feet: one that fails says so, and the others are told. */
class OwnFeetTest {
    private static final Readings WHOLE =
            Readings.of(
                    Phrase.parse("static spin vs triquetra").pairing(),
                    Performer.USUAL,
                    Detail.SETTLED);

    static Stream<String> readings() {
        return Lame.names(WHOLE).stream();
    }

    @Test
    void thereAreReadingsOfLinksFiguresReachRoomCordsAndAdvice() {
        assertThat(Lame.names(WHOLE))
                .contains(
                        "left.figure",
                        "leftLeads",
                        "rightLeads",
                        "reach",
                        "room",
                        "leftCord.pull",
                        "leftCord.figureKept",
                        "rightCord.handPathKept",
                        "rightCord.handPathSteadiness",
                        "rightCord.figureSteadiness",
                        "leftCord.slowest",
                        "advice.costs",
                        "advice.left",
                        "advice.truth");
        Readings apart =
                Readings.of(
                        Phrase.parse("extension vs triquetra").pairing(),
                        Performer.USUAL,
                        Detail.SETTLED);
        assertThat(Lame.names(apart)).contains("advice.fit");
    }

    @ParameterizedTest
    @MethodSource("readings")
    void oneThatFailsIsToldWithItsReasonAndTakesNoOtherWithIt(String name) {
        Readings lame = Lame.of(WHOLE, List.of(name));
        List<Told> before = Telling.of(WHOLE);
        List<Told> after = Telling.of(lame);
        List<Told> not = after.stream().filter(t -> t.text().contains(Lame.REASON)).toList();
        assertThat(not).hasSize(1);
        assertThat(not.get(0).text())
                .containsIgnoringCase("the reading " + name + " could not be worked out: ");
        assertThat(not.get(0).tone()).isEqualTo(Told.Tone.WARN);
        assertThat(not.get(0).why()).isEqualTo("Inside: a test.");
        assertThat(after).extracting(Told::key).doesNotHaveDuplicates();
        // At most four sentences of others tell a thing that only the failed one knew: the first,
        // that the other link is an aside, and reach and room, which take up to three sentences.
        List<Told> kept = before.stream().filter(after::contains).toList();
        assertThat(kept.size())
                .isGreaterThanOrEqualTo(before.size() - (name.equals("room") ? 4 : 3));
    }

    @Test
    void wherePracticallyNothingCanBeWorkedOutEverythingIsStillTold() {
        Readings lame = Lame.of(WHOLE, Lame.names(WHOLE));
        assertThat(Telling.of(lame))
                .hasSize(11)
                .allSatisfy(t -> assertThat(t.text()).contains("could not be worked out"))
                .extracting(Told::key)
                .contains("link.left", "link.right", "figure.left", "reach.arms")
                .doesNotHaveDuplicates();
    }

    @Test
    void theLinkThatWasWorkedOutLeads() {
        assertThat(WHOLE.carrier()).isEqualTo(Side.LEFT);
        assertThat(Lame.of(WHOLE, List.of("leftLeads")).carrier()).isEqualTo(Side.RIGHT);
        assertThat(Lame.of(WHOLE, List.of("rightLeads")).carrier()).isEqualTo(Side.LEFT);
        assertThat(Lame.of(WHOLE, List.of("leftLeads", "rightLeads")).carrier())
                .isEqualTo(Side.LEFT);
        Told first = Telling.of(Lame.of(WHOLE, List.of("leftLeads"))).get(1);
        assertThat(first.key()).isEqualTo("link.right");
        assertThat(first.text()).doesNotContain("The other way round");
    }

    @Test
    void whatRestsOnALinkThatFailedSaysSo() {
        Worked<deferent.reading.link.LinkReading> link =
                new Worked.Not<>("the link from the left head", Lame.REASON, "Inside: a test.");
        Advice advice =
                Advice.of(
                        WHOLE.trace(),
                        link,
                        WHOLE.leftCord(),
                        WHOLE.rightCord(),
                        WHOLE.reach(),
                        true);
        for (Worked<?> resting : List.of(advice.fit(), advice.truth())) {
            assertThat(resting.failure().orElseThrow().reason())
                    .contains("it rests on the link from the left head", Lame.REASON);
        }
        assertThat(advice.costs().reading()).isPresent();
        assertThat(advice.left().reading()).isPresent();
    }

    @Test
    void slipsOfAFigureThatCannotBeKeptAreToldInItsSentence() {
        Readings square =
                Readings.of(
                        Phrase.parse("static spin vs square turns 2").pairing(),
                        Performer.USUAL,
                        Detail.SETTLED);
        List<Told> cords =
                Telling.of(square).stream().filter(t -> t.key().startsWith("cord.")).toList();
        assertThat(cords).hasSize(1);
        assertThat(cords.get(0).text())
                .contains("keeping the right figure".substring(1), "infinite force", "Nor could")
                .contains("what becomes of a slip of the right poi, its figure kept");
    }

    @ParameterizedTest
    @EnumSource(Keep.class)
    void aStageShowsTheIdealAndSaysWhyWhereACordCannotBeFollowed(Keep keep) {
        Readings lame =
                Lame.of(
                        WHOLE,
                        List.of(
                                "rightCord.pull",
                                "rightCord.figureKept",
                                "rightCord.handPathKept",
                                "rightCord.closestFigure"));
        Staged staged = Staged.of(lame, keep, Kit.USUAL);
        assertThat(staged.corded(Side.RIGHT)).isFalse();
        assertThat(staged.pulls()).containsOnlyKeys(Side.LEFT);
        if (keep == Keep.IDEAL) {
            assertThat(staged.why()).isEmpty();
        } else {
            assertThat(staged.why()).containsEntry(Side.RIGHT, Lame.REASON);
            // No motion of a static spin's poi behind its still hand pulls throughout.
            assertThat(staged.corded(Side.LEFT)).isEqualTo(keep != Keep.HAND_PATH);
        }
    }
}
