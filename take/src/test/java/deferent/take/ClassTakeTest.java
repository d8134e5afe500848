package deferent.take;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.record.DemoShelf;
import deferent.record.PatternDocument;
import deferent.record.SetDocument;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A lesson for a class, file by file. */
class ClassTakeTest {
    @TempDir Path folder;

    private static ClassTake lesson(String phrase, boolean leftHanded) {
        PatternDocument pattern =
                PatternDocument.of("Reed", Phrase.parse(phrase).pairing(), Performer.USUAL);
        return new ClassTake(
                new HallTake("Reed", List.of(pattern), List.of(), Lexicon.EMPTY),
                leftHanded,
                "mirror");
    }

    @Test
    void ofEachHandThatCanGoAloneThereIsAClip() {
        assertThat(lesson("static spin vs triquetra", false).names())
                .containsExactly(
                        "student.pdf",
                        "teacher.pdf",
                        "practice.html",
                        "1-begins.mp4",
                        "2-left-hand-alone.mp4",
                        "3-right-hand-alone.mp4",
                        "4-both.mp4");
        assertThat(lesson("pendulum vs one-petal in-spin riding", false).names())
                .endsWith("1-begins.mp4", "2-left-hand-alone.mp4", "3-both.mp4");
    }

    @Test
    void ofASetThereIsASheetOfItsOrderToo() {
        SetDocument set =
                DemoShelf.documents().stream()
                        .filter(SetDocument.class::isInstance)
                        .map(SetDocument.class::cast)
                        .findFirst()
                        .orElseThrow();
        HallTake one = lesson("static spin vs triquetra", false).hall();
        HallTake.Wanted wanted =
                HallTake.Wanted.on(DemoShelf.listing(), set, Optional.empty(), false);
        HallTake with = new HallTake("Reed", one.patterns(), List.of(wanted), Lexicon.EMPTY);
        assertThat(new ClassTake(with, false, "mirror").names())
                .startsWith("student.pdf", "teacher.pdf", "set.pdf", "practice.html");
    }

    @Test
    void stoppedItKeepsWhatIsReadyAndTheLeftHandedOneSwapsTheHands() throws IOException {
        AtomicBoolean stop = new AtomicBoolean();
        assertThat(
                        lesson("static spin vs triquetra", true)
                                .write(
                                        folder,
                                        at -> stop.set(at.told().startsWith("teacher.pdf")),
                                        stop::get))
                .isEmpty();
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left.map(file -> file.getFileName().toString()))
                    .containsExactly("student.pdf");
        }
        try (PDDocument sheet = Loader.loadPDF(folder.resolve("student.pdf").toFile())) {
            assertThat(new PDFTextStripper().getText(sheet))
                    .contains("Reed (left-handed)", "Your right hand stays still");
        }
    }
}
