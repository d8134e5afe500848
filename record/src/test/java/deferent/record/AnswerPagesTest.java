package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Refusal;
import deferent.search.seek.Answer;
import deferent.search.seek.Filter;
import deferent.search.seek.Seek;
import deferent.search.seek.SeekRequest;
import deferent.search.seek.Space;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Answers that were found elsewhere are told as those that are found here. */
class AnswerPagesTest {
    private static final String INDEX =
            """
            {"deferent_pages": VERSION, "grid": {"circle_steps": 4, "pair_steps": 2,
             "most_tethers": 2, "turns": 3, "starts": 8, "arcs": 3, "stretches": false},
             "tether_m": 0.6, "tethers": "equal", "tolerance_m": 0.01, "links": 12,
             "exact_links": 9, "families": 2, "page_size": 1}
            """;

    @TempDir private Path folder;

    private void written(String name, String text) throws IOException {
        Path pages = Files.createDirectories(folder.resolve("pages"));
        Files.writeString(pages.resolve(name), text);
    }

    private static String page(long carrier, long rider) {
        return "[{\"family\": \"still > circle\", \"carrier\": "
                + carrier
                + ", \"rider\": "
                + rider
                + ", \"gap\": 0.0, \"carriers\": 3, \"riders\": 4, \"links\": 5, \"pairs\": 60}]";
    }

    @Test
    void aPageTellsThePairingsThatASeekHereWouldTell() throws IOException {
        SeekRequest request =
                SeekRequest.of(Space.of(Space.Grid.SMALL)).with(Filter.NONE.reached());
        Answer here = new Seek(request).found().list().get(0);
        written("index.json", INDEX.replace("VERSION", "1"));
        written("page-00001.json", page(here.carrier(), here.rider()));
        AnswerPages pages = AnswerPages.of(folder);
        assertThat(pages.pages()).isEqualTo(2);
        assertThat(pages.request().space().grid()).isEqualTo(Space.Grid.SMALL);
        Answer told =
                pages.page(1)
                        .get(0)
                        .answer(pages.request().with(Filter.NONE.reached()))
                        .orElseThrow();
        assertThat(told.pairing()).isEqualTo(here.pairing());
        assertThat(told.said()).isEqualTo(here.said());
        assertThat(told.merit()).isEqualTo(here.merit());
        assertThat(told.pairs()).isEqualTo(12);
        assertThat(told.family().sizes()).isEqualTo(5);
        assertThat(pages.page(1).get(0).answer(pages.request().with(Filter.NONE.contrasting(50))))
                .as("what passes no filter is not told")
                .isEmpty();
    }

    @Test
    void whatCannotBeReadIsRefusedWithItsPlace() throws IOException {
        assertThatThrownBy(() -> AnswerPages.of(folder))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("no answers to leaf through");
        written("index.json", INDEX.replace("VERSION", "2"));
        assertThatThrownBy(() -> AnswerPages.of(folder)).hasMessageContaining("version 2");
        written("index.json", "{");
        assertThatThrownBy(() -> AnswerPages.of(folder)).hasMessageContaining("is not JSON");
        written("index.json", INDEX.replace("VERSION", "1"));
        AnswerPages pages = AnswerPages.of(folder);
        for (int page : List.of(0, 3)) {
            assertThatThrownBy(() -> pages.page(page)).hasMessageContaining("1 to 2");
        }
        written("page-00001.json", page(1L << 40, 0));
        assertThatThrownBy(() -> pages.page(1)).hasMessageContaining("its space has not");
        written("page-00001.json", page(0, 0).replace("\"links\": 5", "\"links\": \"five\""));
        assertThatThrownBy(() -> pages.page(1)).hasMessageContaining("\"links\"");
    }
}
