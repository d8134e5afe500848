package deferent.film.words;

import deferent.film.FilmReading;
import deferent.film.Passages;
import deferent.film.cycle.Unsure;
import deferent.film.hand.Upright;
import deferent.film.held.Fault;
import deferent.film.held.Finding;
import deferent.film.held.Held;
import deferent.film.held.KeptAs;
import deferent.film.held.NearestPairing;
import deferent.film.measured.HowScaled;
import deferent.film.measured.Measured;
import deferent.film.measured.MeasuredSide;
import deferent.motion.shared.Side;
import deferent.tell.Told;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A film's reading in sentences, what matters first. */
public final class TellFilm {
    /** So many things that are off are said; the rest stand in JSON. */
    public static final int MOST = 3;

    private static final double FAR = 0.06; // metres, for a name that is near and no more
    private static final double OFTEN = 0.85; // share of the frames in which a light is seen
    private static final double UNSURE_HAND = 0.02; // metres, of which a hand's error is told

    private static final double LEANS = 0.5; // degrees, from which a lean is told

    private TellFilm() {}

    /** All of it. */
    public static List<Told> of(FilmReading film) {
        List<Told> all = new ArrayList<>();
        all.add(cycle(film.measured()));
        Optional<NearestPairing> rather = film.nearest().filter(nearest -> film.asked());
        if (rather.isPresent()) {
            // How one pattern differs from another is no advice on how to spin it.
            all.add(rather(rather.get()));
        } else {
            film.nearest().ifPresent(nearest -> all.add(name(nearest, film.held())));
            all.add(kept(film.held()));
            all.addAll(findings(film.held()));
            all.add(TellBeats.of(film.held()));
            // A link that is called open has been told so above.
            if (film.held().findings().stream()
                    .limit(MOST)
                    .noneMatch(finding -> finding.fault() == Fault.LINK)) {
                all.addAll(TellBeats.links(film.held()));
            }
        }
        all.addAll(doubts(film));
        return List.copyOf(all);
    }

    /** A passage in one sentence or two: from when to when, what it is, and what is off most. */
    public static Told passage(Passages.Passage passage) {
        FilmReading film = passage.reading();
        Told name =
                film.nearest()
                        .map(n -> film.asked() ? rather(n) : name(n, film.held()))
                        .orElseGet(() -> kept(film.held()));
        String off =
                film.held().findings().stream().findFirst().map(f -> " " + f.said()).orElse("");
        return new Told(
                "film.passage",
                name.tone(),
                String.format(
                        Locale.ROOT,
                        "From %.1f to %.1f s, every %.2f s: %s%s",
                        passage.within().start(),
                        passage.within().end(),
                        film.measured().period(),
                        name.text(),
                        off),
                name.why());
    }

    private static Told cycle(Measured measured) {
        // A last cycle that lacks a frame or two counts.
        long cycles = (long) Math.floor(measured.seconds() / measured.period() + 0.1);
        return new Told(
                "film.cycle",
                Tone.NOTE,
                String.format(
                        Locale.ROOT,
                        "Both poi come back every %.2f s, %d times in this film.",
                        measured.period(),
                        cycles),
                "one period fitted to all cycles of both heads at once; one pixel is "
                        + String.format(Locale.ROOT, "%.2f mm ", 1000 * measured.scale().metres())
                        + measured.how().words());
    }

    private static Told name(NearestPairing nearest, Held held) {
        String said = nearest.phrase().orElse("a pairing that has no name");
        Optional<Finding> first = held.findings().stream().findFirst();
        String text =
                nearest.off() > FAR
                        ? "No pairing of the list lies close. Nearest is "
                                + said
                                + ", but it is "
                                + cm(nearest.off())
                                + " off on the whole."
                        : first.isEmpty()
                                ? "This is " + said + "."
                                : "Nearest is " + said + ", but not quite.";
        return new Told(
                "film.name",
                nearest.off() > FAR ? Tone.WARN : Tone.GOOD,
                text,
                "heads or hands lie "
                        + cm(nearest.off())
                        + " from it, root mean square; each motion of the table was tried");
    }

    private static Told rather(NearestPairing nearest) {
        return new Told(
                "film.rather",
                Tone.WARN,
                "This is hardly what was meant: nearest is "
                        + nearest.phrase().orElse("a pairing that has no name")
                        + ". Hold the film against what was spun, and it is told what is off.",
                "a side is far off, or half or twice the size; the nearest lies "
                        + cm(nearest.off())
                        + " off");
    }

    private static Told kept(Held held) {
        boolean left = held.kept(Side.LEFT) == KeptAs.FIGURE;
        boolean right = held.kept(Side.RIGHT) == KeptAs.FIGURE;
        String text =
                left && right
                        ? "Both figures are kept; the hands went where the cords asked."
                        : !left && !right
                                ? "Both hands kept their paths; the poi went where the cords took"
                                        + " them."
                                : "The "
                                        + (left ? "left" : "right")
                                        + " figure is kept; the "
                                        + (left ? "right" : "left")
                                        + " hand kept its path, and its poi went where the cord"
                                        + " took it.";
        return new Told(
                "film.kept",
                Tone.NOTE,
                text,
                "off by "
                        + cm(held.off(Side.LEFT))
                        + " on the left and "
                        + cm(held.off(Side.RIGHT))
                        + " on the right, size, time and centre apart");
    }

    private static List<Told> findings(Held held) {
        if (held.findings().isEmpty()) {
            return List.of(
                    new Told(
                            "film.off",
                            Tone.GOOD,
                            "Nothing is off by more than " + cm(Held.WORTH_SAYING) + ".",
                            "size, time, centre, lean and proportions of both sides"));
        }
        List<Told> all = new ArrayList<>();
        for (Finding finding : held.findings().stream().limit(MOST).toList()) {
            all.add(
                    new Told(
                            "film.off." + finding.fault().key(),
                            Tone.WARN,
                            finding.said() + " " + finding.mend(),
                            String.format(
                                    Locale.ROOT,
                                    "it spoils the picture by about %s; the advice is common"
                                            + " practice, no source",
                                    cm(finding.weight()))));
        }
        return all;
    }

    private static List<Told> doubts(FilmReading film) {
        List<Told> all = new ArrayList<>();
        Measured measured = film.measured();
        if (measured.sides() == Measured.HowSided.ASSUMED) {
            all.add(
                    note(
                            "film.sides",
                            "Which light is whose cannot be told: the one further right in the"
                                    + " picture at first is taken for the left hand's. If it is the"
                                    + " other way round, say whose is further left."));
        }
        if (measured.how() != HowScaled.GIVEN) {
            all.add(
                    note(
                            "film.scale",
                            String.format(
                                    Locale.ROOT,
                                    "One pixel is taken for %.1f mm, %s.",
                                    1000 * measured.scale().metres(),
                                    measured.how().words())));
        }
        all.addAll(camera(measured.upright(), film.readout()));
        for (Side side : Side.values()) {
            MeasuredSide one = measured.side(side);
            if (one.handKnown() < OFTEN) {
                all.add(
                        note(
                                "film.hand." + side.word(),
                                "Where the "
                                        + side.word()
                                        + " cord hangs loose, "
                                        + percent(1 - one.handKnown())
                                        + " of the cycle, its hand cannot be told."));
            }
        }
        double error = Math.max(measured.left().handError(), measured.right().handError());
        if (error > UNSURE_HAND) {
            all.add(note("film.hands", "Hands are known to about " + cm(error) + "."));
        }
        for (double seen : film.seen()) {
            if (seen < OFTEN) {
                all.add(
                        note(
                                "film.seen",
                                "One light was seen in "
                                        + percent(seen)
                                        + " of the frames; the rest is filled in from its other"
                                        + " turns."));
            }
        }
        for (Unsure.Why why : Unsure.Why.values()) {
            List<Unsure> such = film.unsure().stream().filter(u -> u.why() == why).toList();
            if (!such.isEmpty()) {
                all.add(unsure(such));
            }
        }
        return all;
    }

    /** How the camera stood and read, where that is known, and where it cannot be. */
    private static List<Told> camera(Upright upright, double readout) {
        List<Told> all = new ArrayList<>();
        double roll = Math.toDegrees(upright.roll());
        if (upright.how() == Upright.How.STILL_HAND && Math.abs(roll) >= LEANS) {
            all.add(
                    note(
                            "film.upright",
                            String.format(
                                    Locale.ROOT,
                                    "The picture leans %s by %.1f°, within %.1f°: the cord of the"
                                            + " hand that keeps still shows it, and it is set right.",
                                    roll < 0 ? "clockwise" : "counter-clockwise",
                                    Math.abs(roll),
                                    2 * Math.toDegrees(upright.error()))));
        }
        boolean level = upright.how() == Upright.How.ASSUMED;
        if (level || readout == 0) {
            String text =
                    !level
                            ? "These lights do not tell the camera's readout: none is corrected."
                            : readout > 0
                                    ? "These lights do not tell whether the camera leans: it is"
                                            + " taken as level."
                                    : "The lights tell neither how the camera leans nor its readout;"
                                            + " neither is corrected.";
            all.add(note("film.camera", text));
        }
        return all;
    }

    private static Told unsure(List<Unsure> such) {
        Unsure first = such.get(0);
        String from = String.format(Locale.ROOT, "%.1f", first.from());
        String to = String.format(Locale.ROOT, "%.1f s", first.to());
        String more = such.size() > 1 ? ", and " + (such.size() - 1) + " times more" : "";
        String text =
                switch (first.why()) {
                    case MEET ->
                            "Where both lights meet, at "
                                    + to
                                    + more
                                    + ", either may have gone on as the other.";
                    case ELSE -> "From " + from + " to " + to + more + ", something else is spun.";
                    case UNSEEN -> "From " + from + " to " + to + more + ", a light is hidden.";
                    case OTHERS ->
                            "From "
                                    + from
                                    + " to "
                                    + to
                                    + more
                                    + ", more than two lights move; if the wrong two were followed,"
                                    + " point at each head.";
                };
        return new Told(
                "film.unsure." + first.why().name().toLowerCase(Locale.ROOT),
                first.why() == Unsure.Why.MEET ? Tone.WARN : Tone.NOTE,
                text,
                "the lights there against the mean cycles of both heads");
    }

    private static Told note(String key, String text) {
        return new Told(key, Tone.NOTE, text, "from the film itself");
    }

    private static String percent(double share) {
        return Math.round(100 * share) + " %";
    }

    private static String cm(double metres) {
        double cm = 100 * Math.abs(metres);
        return cm < 0.95 ? String.format(Locale.ROOT, "%.1f cm", cm) : Math.round(cm) + " cm";
    }
}
