package deferent.page.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.page.Palette.Ink;
import deferent.page.View;
import deferent.record.PatternDocument;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** A sheet that a student can learn from on paper. */
class SheetTest {
    private static final PatternDocument RING = Patterns.demo("Ring under the eaves");

    private static final String SMALL = "static spin vs triquetra hand radius 42 cm, tether 45 cm";

    private static Printed print(PatternDocument pattern, Edition edition) {
        return Printed.of(Sheet.of(pattern, edition)::write);
    }

    @Test
    void aSheetCanBeSearchedForItsPhraseItsSizesItsWatchwordsAndItsCautions() {
        Printed sheet = print(RING, Edition.USUAL);
        assertThat(sheet.pages()).hasSize(1);
        assertThat(sheet.text())
                .startsWith("Ring under the eaves static spin vs triquetra")
                .contains("Left: Static spin. The hand stays where it is; its poi goes round it")
                .contains("its poi turns twice against it (antispin)")
                .contains("For a performer of 1.84 m, arm 71 cm from shoulder to grip.")
                .contains("Tether 45 cm 45 cm")
                .contains("Hand radius still 45 cm")
                .contains("Linked, touching: the left head stays on the right hand")
                .contains(
                        "If the timing is 5 degrees of a turn out, head and hand are 3.9 cm further apart.")
                .contains(
                        "If the right hand keeps its path, a slip of its poi neither grows nor dies away.")
                .contains("Both hands reach their whole paths, with the trunk turned by up to 33°")
                .contains(
                        "Take care. Clear the space: people, animals and lamps stand well outside")
                .contains("warn them before you start.")
                .endsWith("Invented demo data");
    }

    @Test
    void everyLetterComesWithItsFont() {
        Printed sheet = print(RING, Edition.USUAL);
        assertThat(sheet.foreignFonts()).isEmpty();
        assertThat(sheet.embeddedFonts()).hasSize(2).allMatch(name -> name.contains("+Roboto-"));
    }

    @Test
    void theSignsOfTheTradeArePrinted() {
        PatternDocument pattern =
                Patterns.of("½ × ¼ · 90° – ≤ 60 cm, ¾ √2 π", "isolation vs triquetra");
        assertThat(print(pattern, Edition.USUAL).text()).startsWith(pattern.name());
    }

    @Test
    void signsThatTheTypefaceLacksGiveWayInsteadOfFailing() {
        PatternDocument pattern = Patterns.of("火の輪 🔥 ring", "isolation vs triquetra");
        assertThat(print(pattern, Edition.USUAL).text()).contains("ring isolation vs triquetra");
    }

    @Test
    void thePageIsAsLargeAsThePaper() {
        Printed.Page a4 = print(RING, Edition.USUAL).pages().get(0);
        assertThat(a4.width() / 72 * 25.4).isCloseTo(210, within(0.01));
        assertThat(a4.height() / 72 * 25.4).isCloseTo(297, within(0.01));
        Printed.Page letter = print(RING, Edition.USUAL.with(PageSize.LETTER)).pages().get(0);
        assertThat(letter.width()).isEqualTo(612);
        assertThat(letter.height()).isEqualTo(792);
    }

    @Test
    void theReaderIsToldWhoLooksAndWhetherThePairingIsMirrored() {
        assertThat(print(RING, Edition.USUAL).text()).contains("Seen by the audience.");
        assertThat(print(RING, Edition.USUAL.with(View.Stand.PERFORMER)).text())
                .contains("Seen by the performer.");
        assertThat(print(RING, Edition.USUAL.mirrored(true)).text())
                .contains("Ring under the eaves (left-handed)")
                .contains("triquetra centre 8 cm back vs static spin centre 8 cm forward")
                .contains("left-handed: each hand does what the other did")
                .contains("Left: Triquetra.")
                .contains("counter-clockwise");
        assertThat(print(Patterns.demo("Round the brazier"), Edition.USUAL).text())
                .contains("Seen by the audience, from above.");
    }

    @Test
    void aSheetTellsWhatItLeadsToOnlyWhereItIsAsked() {
        PatternDocument one = Patterns.of("Small leaves", SMALL);
        PatternDocument other = Patterns.of("Leaves", "static spin vs triquetra, tether 45 cm");
        PatternDocument apart = Patterns.of("Spins", "static spin vs static spin, tether 40 cm");
        Sheet alone = Sheet.of(one, Edition.USUAL);
        assertThat(Printed.of(alone::write).text()).doesNotContain("leads to");
        String text = Printed.of(alone.among(List.of(one, other))::write).text();
        assertThat(text)
                .contains("Grows from Leaves: ")
                .contains("Leads to Leaves: ")
                .contains("both figures are faint");
        assertThat(Printed.of(alone.among(List.of(apart))::write).text())
                .contains(
                        "Grows from and leads to – None of the patterns it was compared with, even with practice.")
                .doesNotContain("both figures are faint");
    }

    /** Words and picture would otherwise put the left hand on different sides of the page. */
    @Test
    void theWordsSayOnWhichSideOfThePictureThePerformersLeftIs() {
        for (View.Stand stand : View.Stand.values()) {
            boolean right = new View(stand, 0, 0).see(1, 0, 0).right() > 0;
            assertThat(print(RING, Edition.USUAL.with(stand)).text())
                    .contains(
                            "in the picture, "
                                    + stand.seenBy()
                                    + ", the performer's left is on the "
                                    + (right ? "right." : "left."));
        }
        PatternDocument wheels =
                Patterns.of("Wheels", "static spin wheel plane vs static spin wheel plane");
        assertThat(print(wheels, Edition.USUAL).text())
                .contains("Seen by the audience, from the performer's left.")
                .contains("Left, right and clockwise are the performer's own.");
    }

    @Test
    void aNoteOfAnyLengthGoesOnOverleafWithoutLosingAWord() {
        StringBuilder note = new StringBuilder();
        for (int i = 0; note.length() < 3900; i++) {
            note.append("word").append(i).append(' ');
        }
        Printed sheet = print(RING.withNote(note.toString().strip()), Edition.USUAL);
        assertThat(sheet.pages()).hasSizeGreaterThan(1);
        assertThat(sheet.pages().get(1).text()).startsWith("Ring under the eaves, continued");
        String text = sheet.text();
        for (String word : note.toString().strip().split(" ")) {
            assertThat(text).contains(word);
        }
    }

    @Test
    void aDangerStandsUnderTheNameInRedAndInWords() {
        PatternDocument fast = RING.withPairing(RING.pairing().withTempo(OptionalDouble.of(180)));
        Leaf leaf = Sheet.of(fast, Edition.USUAL).leaves(p -> {}, () -> false).orElseThrow().get(0);
        List<Mark.Text> red =
                leaf.marks().stream()
                        .filter(Mark.Text.class::isInstance)
                        .map(Mark.Text.class::cast)
                        .filter(text -> text.ink() == Ink.DANGER)
                        .toList();
        assertThat(red)
                .extracting(Mark.Text::words)
                .contains("!!")
                .anyMatch(words -> words.startsWith("Danger:"));
        assertThat(print(fast, Edition.USUAL).text()).contains("The danger ends at ");
        double lowest = red.stream().mapToDouble(Mark.Text::baseline).max().orElseThrow();
        assertThat(
                        leaf.marks().stream()
                                .filter(Mark.Text.class::isInstance)
                                .map(Mark.Text.class::cast)
                                .filter(text -> text.words().startsWith("What each hand")))
                .allMatch(text -> text.baseline() > lowest)
                .isNotEmpty();
        assertThat(print(RING, Edition.USUAL).text()).doesNotContain("Danger");
    }

    @Test
    void thePicturesAreLinesAndNotPixels() {
        Leaf leaf = Sheet.of(RING, Edition.USUAL).leaves(p -> {}, () -> false).orElseThrow().get(0);
        assertThat(leaf.marks().stream().filter(Mark.Plate.class::isInstance)).hasSize(10);
        String raw =
                new String(
                        print(RING, Edition.USUAL).bytes(),
                        java.nio.charset.StandardCharsets.ISO_8859_1);
        assertThat(raw).contains("/Form").doesNotContain("/Subtype /Image");
    }

    @Test
    void theSameSheetIsTheSameFile() {
        assertThat(print(RING, Edition.USUAL).bytes())
                .isEqualTo(print(RING, Edition.USUAL).bytes());
    }

    @Test
    void aStoppedSheetWritesNothing() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        List<String> told = new ArrayList<>();
        boolean written =
                Sheet.of(RING, Edition.USUAL)
                        .write(out, p -> told.add(p.told()), () -> !told.isEmpty());
        assertThat(written).isFalse();
        assertThat(out.size()).isZero();
        assertThat(told).containsExactly("1 of 1 patterns read");
    }
}
