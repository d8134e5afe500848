package deferent.reel;

import static org.bytedeco.ffmpeg.global.avutil.av_dict_set;
import static org.bytedeco.ffmpeg.global.avutil.av_make_q;
import static org.bytedeco.ffmpeg.global.avutil.av_mallocz;

import deferent.page.Chapters;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.bytedeco.ffmpeg.avformat.AVChapter;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.Pointer;
import org.bytedeco.javacpp.PointerPointer;

/** Chapters inside a film, by which players jump. */
final class ChapterMarks {
    private ChapterMarks() {}

    /** The chapters of a clip by their names, each until the next; none of what has one. */
    static List<Cue> of(Clip clip, Loop loop) {
        List<Chapters.Title> titles = clip.chapters().map(Chapters::titles).orElse(List.of());
        List<Cue> cues = new ArrayList<>();
        for (int i = 0; i < titles.size(); i++) {
            double from = loop.seen(titles.get(i).starts(), 0);
            double to =
                    i + 1 < titles.size()
                            ? loop.seen(titles.get(i + 1).starts(), 0)
                            : loop.seconds();
            if (to > from) {
                cues.add(new Cue(from, to, titles.get(i).name()));
            }
        }
        return cues;
    }

    /**
     * Puts them into a container that has not begun, which then owns them.
     *
     * @param cues each until the next
     */
    static void into(AVFormatContext container, List<Cue> cues) {
        PointerPointer<AVChapter> all =
                new PointerPointer<>(
                        av_mallocz((long) cues.size() * Pointer.sizeof(Pointer.class)));
        for (int i = 0; i < cues.size(); i++) {
            Cue cue = cues.get(i);
            AVChapter chapter = new AVChapter(av_mallocz(Pointer.sizeof(AVChapter.class)));
            chapter.id(i + 1L);
            chapter.time_base(av_make_q(1, 1000));
            chapter.start(cue.fromMillis());
            chapter.end(cue.toMillis());
            AVDictionary about = new AVDictionary(null);
            try (BytePointer key = new BytePointer("title");
                    BytePointer title =
                            new BytePointer((cue.text() + "\0").getBytes(StandardCharsets.UTF_8))) {
                av_dict_set(about, key, title, 0);
            }
            chapter.metadata(about);
            all.put(i, chapter);
        }
        container.chapters(all);
        container.nb_chapters(cues.size());
    }
}
