package deferent.page;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.shared.Side;
import java.awt.Color;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PaletteTest {

    /** Source: Okabe and Ito, Color Universal Design (2008), the set of eight. */
    @Test
    void handsAndTieWearColoursOfThePublishedSet() {
        List<String> set =
                List.of(
                        "#000000", "#E69F00", "#56B4E9", "#009E73", "#F0E442", "#0072B2", "#D55E00",
                        "#CC79A7");
        for (Palette.Theme theme : Palette.Theme.values()) {
            for (Palette.Ink ink : List.of(Palette.Ink.LEFT, Palette.Ink.RIGHT, Palette.Ink.LINK)) {
                assertThat(set).contains(Palette.hex(ink.on(theme)));
            }
        }
    }

    /** Source: WCAG 2.2, success criterion 1.4.11: marks that carry meaning, 3 to 1. */
    @ParameterizedTest
    @EnumSource(
            value = Palette.Ink.class,
            names = {"LEFT", "RIGHT", "LINK"})
    void everyMarkStandsOffItsGround(Palette.Ink ink) {
        for (Palette.Theme theme : Palette.Theme.values()) {
            assertThat(contrast(ink.on(theme), Palette.Ink.PAPER.on(theme)))
                    .isGreaterThanOrEqualTo(3);
        }
    }

    /** Source: WCAG 2.2, success criterion 1.4.3: text, 4.5 to 1. */
    @ParameterizedTest
    @EnumSource(
            value = Palette.Ink.class,
            names = {"TEXT", "QUIET", "GOOD", "NOTE", "WARN"})
    void everyTextCanBeRead(Palette.Ink ink) {
        for (Palette.Theme theme : Palette.Theme.values()) {
            for (Palette.Ink ground : List.of(Palette.Ink.PAPER, Palette.Ink.CARD)) {
                assertThat(contrast(ink.on(theme), ground.on(theme))).isGreaterThanOrEqualTo(4.5);
            }
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = Role.class,
            names = {"HAND", "HEAD", "TETHER", "HEAD_TRAIL", "HAND_PATH"})
    void leftAndRightAreToldApartWithoutColour(Role role) {
        Palette.Look left = Palette.of(role, Optional.of(Side.LEFT));
        Palette.Look right = Palette.of(role, Optional.of(Side.RIGHT));
        assertThat(left.dash().equals(right.dash()) && left.marker() == right.marker()).isFalse();
    }

    @Test
    void handHeadTetherAndTieOfOneSideAreToldApartWithoutColour() {
        List<String> looks =
                List.of(Role.HAND, Role.HEAD, Role.TETHER, Role.LINK, Role.HEAD_TRAIL).stream()
                        .map(role -> Palette.of(role, Optional.of(Side.LEFT)))
                        .map(l -> l.marker() + " " + l.dash() + " " + l.width())
                        .toList();
        assertThat(looks).doesNotHaveDuplicates();
    }

    @Test
    void thePageGetsEveryColourInBothThemes() {
        String css = Palette.css();
        for (Palette.Ink ink : Palette.Ink.values()) {
            for (Palette.Theme theme : Palette.Theme.values()) {
                assertThat(css)
                        .contains("--ink-" + ink.key() + ": " + Palette.hex(ink.on(theme)) + ";");
            }
        }
    }

    /** WCAG 2.2's contrast ratio of two colours, from their relative luminance. */
    private static double contrast(Color a, Color b) {
        double x = luminance(a);
        double y = luminance(b);
        return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
    }

    private static double luminance(Color c) {
        return 0.2126 * linear(c.getRed())
                + 0.7152 * linear(c.getGreen())
                + 0.0722 * linear(c.getBlue());
    }

    private static double linear(int channel) {
        double share = channel / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }
}
