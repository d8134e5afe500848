package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.motion.song.Beats;
import deferent.record.Kept;
import deferent.record.PrettyJson;
import deferent.record.SongDocument;
import deferent.record.SongShelf;
import deferent.record.SongSound;
import deferent.record.landing.Landing;
import deferent.sound.Mend;
import deferent.sound.SaidLevel;
import deferent.sound.SongReading;
import deferent.sound.WaveFile;
import deferent.sound.tune.DemoTune;
import deferent.sound.words.SongTree;
import deferent.sound.words.TellSong;
import deferent.tell.Told;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

@Command(
        name = "song",
        mixinStandardHelpOptions = true,
        description = {
            "Finds the beats of a song, its tempo, how that drifts, and its bars; and keeps them on"
                    + " the shelf.",
            "  deferent song song.mp3",
            "  deferent song song.mp3 --taps \"0.5 1.0\" --keep \"To spin to\""
        },
        subcommands = SongCommand.Demo.class)
final class SongCommand implements Callable<Integer> {
    @Spec private CommandSpec spec;

    @Parameters(
            arity = "0..1",
            paramLabel = "FILE",
            description =
                    "A sound file, or a film with sound; two hours at most; - for standard input.")
    private @Nullable Path file;

    @Option(
            names = "--tempo",
            paramLabel = "N",
            description = "About how many beats a minute it has: decides between double and half.")
    private @Nullable Double tempo;

    @Option(
            names = "--taps",
            paramLabel = "\"S S ...\"",
            description =
                    "When two beats or more in a row fall, in seconds, such as \"0.5 1.0\": decides"
                            + " the tempo and where beats are.")
    private @Nullable String taps;

    @Option(names = "--double", description = "Twice as many beats as were found.")
    private boolean twice;

    @Option(names = "--half", description = "Half as many beats as were found.")
    private boolean half;

    @Option(names = "--bar", paramLabel = "N", description = "How many beats make a bar, 1 to 16.")
    private @Nullable Integer bar;

    @Option(
            names = "--first-bar",
            paramLabel = "BEAT",
            description = "The number of the first beat that begins a bar, from 1.")
    private @Nullable Integer firstBar;

    @Option(
            names = "--keep",
            paramLabel = "NAME",
            description = "Keep its beats on the shelf under a name; the sound stays where it is.")
    private @Nullable String keep;

    @Option(
            names = "--replace",
            description = "With --keep: put it in the place of the song of that name.")
    private boolean replace;

    @Option(names = "--why", description = "Say below each sentence where it comes from.")
    private boolean why;

    @Mixin private ProgressOption progress;

    @Mixin private ShelfOption shelf;

    @Override
    public Integer call() throws IOException {
        Path sound = file;
        if (sound == null) {
            throw new Refusal("says no file", "deferent song", "give a sound's file");
        }
        SaidLevel level = level();
        Progress line = progress.line();
        try (Stopping stop = new Stopping();
                Incoming in = Incoming.of(sound, Manners.of(spec))) {
            if (in.passing() && keep != null) {
                throw new Refusal(
                        "has no file that a set could know it by",
                        "--keep of standard input",
                        "give the song's file");
            }
            SongReading heard =
                    SongReading.of(
                                    in.file(),
                                    level,
                                    bar == null ? OptionalInt.empty() : OptionalInt.of(bar),
                                    share -> line.show(share, "listening"),
                                    stop)
                            .orElseThrow(
                                    () ->
                                            new NotMade(
                                                    "stopped before the song was through",
                                                    "nothing was kept"));
            line.clear();
            SongReading song = mended(heard);
            say(in.name(), song);
            if (keep != null) {
                keep(sound, song, keep);
            }
        }
        return Exit.FOUND.code();
    }

    private SaidLevel level() {
        if (replace && keep == null) {
            throw new Refusal("means nothing alone", "--replace", "give --keep too");
        }
        if (twice && half) {
            throw new Refusal("are both given", "--double and --half", "give one of them");
        }
        if (tempo != null && taps != null) {
            throw new Refusal("are both given", "--tempo and --taps", "give one of them");
        }
        if (bar != null) {
            Refusal.within(bar, 1, Beats.LONGEST_BAR, "--bar", "beats");
        }
        if (tempo != null) {
            return SaidLevel.tempo(tempo);
        }
        return taps == null ? SaidLevel.UNSAID : SaidLevel.taps(seconds(taps));
    }

    private static List<Double> seconds(String said) {
        List<Double> taps = new ArrayList<>();
        for (String one : said.strip().split("[\\s,;]+")) {
            try {
                taps.add(Double.parseDouble(one));
            } catch (NumberFormatException notSo) {
                throw new Refusal(
                        "is no time", "--taps " + one, "give seconds, such as \"0.5 1.0\"");
            }
        }
        return taps;
    }

    private SongReading mended(SongReading heard) {
        List<Mend> mends = new ArrayList<>();
        if (twice || half) {
            mends.add(twice ? new Mend.Doubled() : new Mend.Halved());
        }
        if (firstBar != null) {
            mends.add(new Mend.FirstBar(firstBar - 1));
        }
        return Mend.all(heard, mends);
    }

    private void say(String name, SongReading song) {
        PrintWriter out = spec.commandLine().getOut();
        if (Manners.of(spec).json()) {
            out.print(SongTree.write(song, name));
            return;
        }
        long seconds = Math.round(song.seconds());
        out.println("%s, %d:%02d".formatted(name, seconds / 60, seconds % 60));
        out.println();
        int width = Paragraphs.width();
        for (Told one : TellSong.of(song)) {
            String mark = one.tone() == Told.Tone.WARN ? "! " : "  ";
            Paragraphs.wrapped(mark, one.text(), width).forEach(out::println);
            if (why) {
                Paragraphs.wrapped("      why: ", one.why(), width).forEach(out::println);
            }
        }
    }

    private void keep(Path sound, SongReading song, String name) throws IOException {
        boolean set = taps != null || twice || half || bar != null || firstBar != null;
        SongDocument found =
                SongDocument.of(name, SongSound.of(sound, song.seconds()), song.beats());
        SongDocument document = set ? found.withMended(song.beats()) : found;
        Kept kept =
                SongShelf.keep(
                        shelf.shelf(), document, replace, "--replace to put this in its place");
        // Whoever reads JSON gets nothing but that.
        Manners manner = Manners.of(spec);
        if (!manner.json()) {
            manner.out().println();
        }
        manner.beside(ShelfCommand.Work.said(shelf.shelf(), kept));
    }

    @Command(
            name = "demo",
            mixinStandardHelpOptions = true,
            description =
                    "Renders the three tunes of the demo as WAV files: invented, made by arithmetic,"
                            + " played by nobody.")
    static final class Demo implements Callable<Integer> {
        @Spec private CommandSpec spec;

        @Option(
                names = "--out",
                required = true,
                paramLabel = "FOLDER",
                description = "Where to write them; made where it is not there.")
        private Path folder = Path.of("");

        @Override
        public Integer call() throws IOException {
            if (folder.toString().equals(Incoming.STANDARD)) {
                throw new Refusal(
                        "is standard output, which holds one file and these are three",
                        "--out -",
                        "give a folder");
            }
            Files.createDirectories(folder);
            Manners manner = Manners.of(spec);
            ObjectNode written = JsonNodeFactory.instance.objectNode();
            ArrayNode files = written.putArray("files");
            for (DemoTune tune : DemoTune.values()) {
                Path file = folder.resolve(tune.file());
                Landing.write(
                        file, WaveFile.bytes(tune.tune().sound(DemoTune.RATE), DemoTune.RATE));
                files.add(file.toString());
                if (!manner.json()) {
                    manner.out()
                            .println(
                                    "Written: "
                                            + file
                                            + " ("
                                            + tune.title()
                                            + ", "
                                            + tune.character()
                                            + ")");
                }
            }
            if (manner.json()) {
                written.put("told", "three invented tunes, as WAV");
                manner.out().print(PrettyJson.text(written));
            }
            return Exit.FOUND.code();
        }
    }
}
