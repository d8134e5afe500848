package deferent.tell;

import deferent.reading.tether.Kit;
import deferent.reading.tether.LetGo;
import deferent.reading.tether.LetGoTable;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.List;

/** Says what a poi does that is let go at a still hand, and what of it is worked out. */
public final class TellLetGo {
    /** More slack stretches than this are not told one by one. */
    private static final int TOLD = 3;

    private TellLetGo() {}

    public static List<Told> of(LetGoTable table) {
        LetGo run = table.run();
        List<Told> all = new ArrayList<>();
        all.add(
                new Told(
                        "letgo.angles",
                        Tone.NOTE,
                        "Angles are from straight down, positive to the performer's left as the poi"
                                + " swings in the wall plane.",
                        "A start speed is the head's, across the cord, positive toward greater"
                                + " angles."));
        all.add(slack(run));
        all.add(worked(run.cord().kit()));
        all.add(
                new Told(
                        "letgo.left_out",
                        Tone.NOTE,
                        "Left out: the cord's own mass, stretch and drag, friction at the hand, the"
                                + " head turning about itself, wind.",
                        "A measured swing loses to those as well."));
        return List.copyOf(all);
    }

    private static Told worked(Kit kit) {
        return new Told(
                "letgo.worked",
                Tone.NOTE,
                "Worked out: a head on a cord at a hand that keeps still, under gravity"
                        + (kit.air()
                                ? ", and the air's drag on a smooth ball of "
                                        + Say.size(kit.headDiameter())
                                        + " and "
                                        + Say.trimmed(1000 * kit.headMass(), 1)
                                        + " g."
                                : "; without air, so nothing damps the swing."),
                kit.air()
                        ? "Standard drag curve of a sphere: Clift, Grace and Weber (1978); air at 20"
                                + " °C and one atmosphere, from memory."
                        : "A taut cord swings as a pendulum does, whatever the head weighs.");
    }

    private static Told slack(LetGo run) {
        if (run.taut()) {
            return new Told(
                    "letgo.slack",
                    Tone.NOTE,
                    "The cord stays taut throughout.",
                    "Its pull never falls to nothing.");
        }
        List<String> told = new ArrayList<>();
        for (LetGo.Event event : run.events()) {
            told.add(
                    event.kind() == LetGo.Kind.SLACK
                            ? "goes slack at " + Say.seconds(event.time())
                            : "snaps taut at "
                                    + Say.seconds(event.time())
                                    + " (and takes "
                                    + Say.trimmed(event.speed(), 2)
                                    + " m/s)");
        }
        int left = told.size() - 2 * TOLD;
        return new Told(
                "letgo.slack",
                Tone.WARN,
                "The cord "
                        + String.join(", ", told.subList(0, Math.min(told.size(), 2 * TOLD)))
                        + (left > 0 ? ", and so on" : "")
                        + ".",
                "Slack, the head flies freely until it is a cord's length from the hand again; then"
                        + " the cord takes its outward speed at once, without a bounce, and what is"
                        + " across the cord stays.");
    }
}
