package deferent.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class FaceTest {
    private static final Pattern EMBEDDED =
            Pattern.compile(
                    "@font-face\\{font-family:(\\w+);font-weight:([\\d ]+);src:url\\(data:font/ttf;base64,([^)]+)\\)");

    /**
     * The second machine has no typeface at all: fontconfig, which JDKs on Linux ask, is given a
     * configuration that lists no folder, and the JDK a home without its cache of earlier answers.
     */
    @Test
    @EnabledOnOs(OS.LINUX)
    void aMachineWithoutTypefacesDrawsTheSameBytes(@TempDir Path folder) throws Exception {
        Path none =
                Files.writeString(
                        folder.resolve("fonts.conf"),
                        "<?xml version=\"1.0\"?><!DOCTYPE fontconfig SYSTEM \"fonts.dtd\"><fontconfig><cachedir>"
                                + folder
                                + "</cachedir></fontconfig>");
        ProcessBuilder bare =
                new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Djava.awt.headless=true",
                        "-Duser.home=" + folder,
                        "-cp",
                        System.getProperty("java.class.path"),
                        Bare.class.getName(),
                        folder.toString());
        bare.environment().put("FONTCONFIG_FILE", none.toString());
        Path told = folder.resolve("told.txt");
        Process run = bare.redirectErrorStream(true).redirectOutput(told.toFile()).start();
        assertThat(run.waitFor()).as(Files.readString(told)).isZero();

        assertThat(folder.resolve(Bare.AWT)).as("typefaces of the machine").hasContent("none");
        for (Map.Entry<String, byte[]> here : Bare.drawn().entrySet()) {
            assertThat(folder.resolve(here.getKey()))
                    .as(here.getKey())
                    .hasBinaryContent(here.getValue());
        }
    }

    @ParameterizedTest
    @EnumSource
    void wordsAreAsLongAsTheFileSays(Face face) throws IOException {
        try (TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(face.file()))) {
            double sum = 0;
            for (char sign : "split time, 60°".toCharArray()) {
                sum += font.getAdvanceWidth(font.getUnicodeCmapLookup().getGlyphId(sign));
            }
            // Advances are kept in whole thousandths, so each sign is off by half of one at most.
            assertThat(face.width("split time, 60°", 100))
                    .isCloseTo(100 * sum / font.getUnitsPerEm(), within(15 * 0.05));
        }
    }

    /**
     * Of a flat-footed H, whose outline is plain: it stands on the line and rises to its height.
     */
    @Test
    void outlinesStandOnTheLineAndFillTheirAdvance() {
        Rectangle2D box = Face.REGULAR.outline("HH").getBounds2D();
        assertThat(box.getMaxY()).isCloseTo(0, within(1e-9));
        assertThat(-box.getMinY()).isBetween(0.65, 0.75);
        double one = Face.REGULAR.outline("H").getBounds2D().getWidth();
        assertThat(box.getWidth()).isCloseTo(one + Face.REGULAR.width("H", 1), within(1e-6));
    }

    @ParameterizedTest
    @EnumSource
    void aSignOfAnotherScriptGivesWayToAStandIn(Face face) {
        String known = face.known("a独\ud83d\ude00\tb");
        assertThat(known).hasSize(5).startsWith("a").endsWith(" b");
        assertThat(known.codePoints()).allMatch(face::has);
        assertThat(face.outline(known).getBounds2D().getWidth()).isPositive();
    }

    @Test
    void anSvgBringsTheLettersItUsesAndNoOthers() throws IOException {
        Scene scene = Scene.of(Trace.of(Phrase.parse("isolation vs triquetra").pairing()));
        String svg = Svg.of(scene, Still.square(400).with(List.of("Ab", "cd 独")));
        assertThat(svg).contains(">Ab</text>", ">cd 独</text>");
        assertThat(svg.replaceAll("font-family:\\w+;", ""))
                .containsPattern("font-family=\"Roboto, sans-serif\"")
                .doesNotContainPattern("font-family=\"(?!Roboto, sans-serif\")");
        Matcher embedded = EMBEDDED.matcher(svg);
        assertThat(embedded.find()).isTrue();
        assertThat(embedded.group(1)).isEqualTo("Roboto");
        // The scale bar's words are of the regular face too.
        assertThat(signs(embedded.group(3), "cd m")).isEqualTo("cd m");
        assertThat(signs(embedded.group(3), "AbBxyz独")).isEmpty();
        assertThat(embedded.find()).isTrue();
        assertThat(embedded.group(2)).isEqualTo("700");
        assertThat(signs(embedded.group(3), "Abcd")).isEqualTo("Ab");
        assertThat(embedded.find()).isFalse();
    }

    @Test
    void anSvgWithoutWordsBringsNoLetters() {
        Scene scene = Scene.of(Trace.of(Phrase.parse("isolation vs triquetra").pairing()));
        assertThat(Svg.of(scene, Still.square(400))).doesNotContain("font");
    }

    /** Those of some signs that an embedded file has a glyph for. */
    private static String signs(String file, String asked) throws IOException {
        byte[] bytes = Base64.getDecoder().decode(file);
        StringBuilder there = new StringBuilder();
        try (TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(bytes))) {
            for (int i = 0; i < asked.length(); i++) {
                char sign = asked.charAt(i);
                if (font.getUnicodeCmapLookup().getGlyphId(sign) > 0) {
                    there.append(sign);
                }
            }
        }
        return there.toString();
    }
}
