package deferent.page.sheet;

import deferent.motion.phrase.MotionWords;
import deferent.motion.shared.Side;
import deferent.motion.trace.Count;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.StillForm;
import deferent.page.Track;
import deferent.page.View;
import java.util.ArrayList;
import java.util.List;

/**
 * What is seen in a picture, said to somebody who cannot see it. The hands are the performer's;
 * where a hand or a head is, is where the picture shows it, which depends on who looks.
 */
final class PictureWords {
    /** Of the picture's height or width, from which on something is off its middle. */
    private static final double OFF = 1.0 / 6;

    /** Of a tether's length, below which head and hand are one on the other: sin 15°. */
    private static final double ONE = 0.26;

    /** The sine of 22.5 degrees: half of one of eight ways. */
    private static final double SLANTED = 0.38;

    private final Scene scene;
    private final View view;

    private PictureWords(Scene scene, View view) {
        this.scene = scene;
        this.view = view;
    }

    /** The whole figure, with both hands at one moment. */
    static String figure(String name, Scene scene, View view, Count first) {
        return sign(name, scene, view) + pose(" The cycle begins with", scene, view, first.time());
    }

    /** The whole figure alone. */
    static String sign(String name, Scene scene, View view) {
        return "The paths of both heads in "
                + name
                + ", "
                + view.stand().seenBy()
                + ". "
                + line(scene, Side.LEFT, "Left head, an unbroken blue line: ")
                + " "
                + line(scene, Side.RIGHT, "Right head, a dashed orange line: ");
    }

    /** What a still shows, its caption first. */
    static String still(Scene scene, Still still) {
        List<String> said = new ArrayList<>(still.caption());
        said.add(sign(called(scene), scene, still.view()));
        if (still.form() instanceof StillForm.Moment) {
            said.add(pose("A moment:", scene, still.view(), still.time()));
        }
        return String.join("\n", said);
    }

    /** Of a document that holds a still alone. */
    static String title(Scene scene, Still still) {
        return still.caption().isEmpty() ? called(scene) : still.caption().get(0);
    }

    /** A scene that nobody gave a name. */
    static String called(Scene scene) {
        return MotionWords.of(scene.trace().pairing(), Side.LEFT)
                + " vs "
                + MotionWords.of(scene.trace().pairing(), Side.RIGHT);
    }

    private static String line(Scene scene, Side side, String before) {
        return before + MotionWords.of(scene.trace().pairing(), side) + ".";
    }

    /** Both hands at a count. */
    static String pose(String called, Scene scene, View view, double time) {
        return called + " " + new PictureWords(scene, view).hands(time) + ".";
    }

    private String hands(double time) {
        return hand(Side.LEFT, time) + "; " + hand(Side.RIGHT, time);
    }

    private String hand(Side side, double time) {
        View.Seen hand = view.see(scene.at(Track.hand(side), time));
        View.Seen head = view.see(scene.at(Track.head(side), time));
        return "the "
                + side.word()
                + " hand "
                + place(hand)
                + ", its head "
                + from(head.right() - hand.right(), head.up() - hand.up(), side);
    }

    /** Where a hand and its poi are: "in the middle, poi up", "on the left, poi to the left". */
    static String start(Scene scene, View view, Side side, double time) {
        PictureWords words = new PictureWords(scene, view);
        View.Seen hand = view.see(scene.at(Track.hand(side), time));
        View.Seen head = view.see(scene.at(Track.head(side), time));
        return words.place(hand)
                        .replace("at the picture's left", "on the left")
                        .replace("at the picture's right", "on the right")
                        .replace("the picture's", "the")
                        .replace(" of the picture", "")
                + ", poi "
                + words.from(head.right() - hand.right(), head.up() - hand.up(), side)
                        .replace(" of it", "")
                        .replace("in line with it", "straight in front or behind")
                        .replace("above it", "up")
                        .replace("below it", "down")
                        .replace(" to the ", " and to the ")
                        .replaceFirst("^ and ", "")
                        .strip();
    }

    private String place(View.Seen hand) {
        SeenSize.Bounds all = SeenSize.Bounds.of(scene, view);
        double across = (hand.right() - all.left()) / all.width() - 0.5;
        double up = (hand.up() - all.bottom()) / all.height() - 0.5;
        String side = across > OFF ? "right" : across < -OFF ? "left" : "";
        if (Math.abs(up) <= OFF) {
            return side.isEmpty() ? "in the middle of the picture" : "at the picture's " + side;
        }
        if (side.isEmpty()) {
            return "at the picture's " + (up > 0 ? "top" : "bottom");
        }
        return "at the picture's " + (up > 0 ? "upper " : "lower ") + side;
    }

    private String from(double right, double up, Side side) {
        double length = Math.hypot(right, up);
        if (length < ONE * scene.trace().pairing().part(side).tether().length()) {
            return "in line with it";
        }
        String beside =
                Math.abs(right) < SLANTED * length
                        ? ""
                        : right > 0 ? "to the right" : "to the left";
        if (Math.abs(up) < SLANTED * length) {
            return beside + " of it";
        }
        String over = up > 0 ? "above it" : "below it";
        return beside.isEmpty() ? over : over + " " + beside;
    }
}
