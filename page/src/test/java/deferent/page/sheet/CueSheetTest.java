package deferent.page.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.motion.song.Beats;
import deferent.motion.song.SongClock;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.record.PatternDocument;
import deferent.record.SetPlaces;
import deferent.record.SetReading;
import deferent.record.SetStep;
import deferent.record.Shelf;
import deferent.record.cue.SetCues;
import deferent.record.cue.SungSet;
import deferent.search.set.BodyTurn;
import deferent.search.set.PairBook;
import deferent.search.transition.Grade;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CueSheetTest {
    /** The same pattern again and again: nothing has to be looked for between. */
    private static final PatternDocument RINGS =
            PatternDocument.of(
                    "Rings", Phrase.parse("static spin vs static spin").pairing(), Performer.USUAL);

    @TempDir Path folder;

    private SetReading set(int steps) {
        List<SetStep> all = new ArrayList<>();
        for (int i = 0; i < steps; i++) {
            all.add(SetStep.of(RINGS, 8).with(new BodyTurn(1, 3)));
        }
        all.add(new SetStep(new SetStep.OfShelf("gone", "Lost lanterns"), 8));
        return SetReading.of(
                        "Evening",
                        SetPlaces.on(Shelf.at(folder).look()).of(all),
                        new PairBook(Grade.USUAL, Performer.USUAL, Kit.USUAL),
                        false,
                        p -> {},
                        () -> false)
                .orElseThrow();
    }

    @Test
    void cautionsStandFirstAndEveryPageHasTheTablesHead() throws IOException {
        SetReading reading = set(40);
        SongClock clock = SongClock.of(Beats.even(0.5, 60, 400, 4), 4, 60);
        SungSet sung = new SungSet(reading, "Slow lanterns", clock, Optional.empty());
        byte[] bytes = Printed.of(new CueSheet(SetCues.of(sung), Edition.USUAL)::write).bytes();
        assertThat(Accessible.faults(bytes)).isEmpty();
        try (PDDocument pdf = Loader.loadPDF(bytes)) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setSortByPosition(true);
            int pages = pdf.getNumberOfPages();
            assertThat(pages).isGreaterThan(1);
            String all = stripper.getText(pdf);
            assertThat(all.split("Bar and beat", -1)).hasSize(pages + 1);
            assertThat(all.split("Quarter turn to the left", -1)).hasSize(41);
            assertThat(all.indexOf("Lost lanterns")).isLessThan(all.indexOf("Bar and beat"));
            // The second begins eight beats later, on the fourth bar and its first beat.
            assertThat(all)
                    .contains("To \"Slow lanterns\"")
                    .containsPattern("0:04\\.5 2, 1 Rings, 8 counts")
                    .containsPattern("0:12\\.5 4, 1 Rings, 8 counts");
        }
    }

    @Test
    void aSetWithoutASongIsTimedFromItsOwnStart() throws IOException {
        byte[] bytes = Printed.of(new CueSheet(SetCues.of(set(2)), Edition.USUAL)::write).bytes();
        try (PDDocument pdf = Loader.loadPDF(bytes)) {
            String text = new PDFTextStripper().getText(pdf);
            assertThat(text)
                    .contains("0:00.0", "0:08.0", "Times are counted from the start of the set.")
                    .doesNotContain("Bar and beat");
        }
    }
}
