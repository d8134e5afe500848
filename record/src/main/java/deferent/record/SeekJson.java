package deferent.record;

import static deferent.record.number.Written.rounded;

import deferent.motion.pairing.Pairing;
import deferent.reading.body.Performer;
import deferent.search.seek.Answer;
import deferent.search.seek.Answers;
import deferent.search.seek.Closing;
import deferent.search.seek.Drawer;
import deferent.search.seek.Family;
import deferent.search.seek.Like;
import deferent.search.seek.Merit;
import deferent.search.seek.SeekRequest;
import deferent.search.seek.Space;
import deferent.tell.TellSeek;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * What a seek found as JSON: what was asked, how much there is, and each answer with the pattern
 * document of the pairing that stands for it. A number that is infinite or unknown is left out.
 */
public final class SeekJson {
    private SeekJson() {}

    /**
     * What a seek found.
     *
     * @param answers all links
     * @param list those that are told
     * @param done whether the seek came to its end
     */
    public static ObjectNode tree(
            SeekRequest request, Answers answers, List<Answer> list, boolean done) {
        ObjectNode node = head(request, answers, done);
        ArrayNode array = node.putArray("answers");
        for (Answer answer : list) {
            array.add(tree(answer, request.performer()));
        }
        return node;
    }

    /** The pairings most like a given one, nearest first. */
    public static ObjectNode like(
            SeekRequest request,
            PatternDocument given,
            Answers answers,
            List<Like> list,
            boolean done) {
        ObjectNode node = head(request, answers, done);
        node.put("like", given.phrase().orElse(given.name()));
        ArrayNode array = node.putArray("answers");
        for (Like like : list) {
            ObjectNode one = tree(like.answer(), request.performer());
            one.put("distance_m", rounded(like.distance()));
            ToldJson.put(one.putObject("told"), TellSeek.of(like));
            array.add(one);
        }
        return node;
    }

    /** The motions that draw a figure, and the pairings that link to it. */
    public static ObjectNode drawn(
            SeekRequest request,
            Answers answers,
            List<Drawer> drawers,
            List<Answer> linked,
            boolean done) {
        ObjectNode node = tree(request, answers, linked, done);
        ArrayNode array = node.putArray("drawers");
        for (Drawer drawer : drawers) {
            ObjectNode one = array.addObject();
            one.put("said", drawer.said());
            one.put("gap_m", rounded(drawer.gap()));
            one.put("tether_m", rounded(drawer.tether().length()));
            ToldJson.put(one.putObject("told"), TellSeek.of(drawer));
        }
        return node;
    }

    /** One page of a seek that ran elsewhere. */
    public static ObjectNode page(
            SeekRequest request, AnswerPages pages, int page, List<Answer> list) {
        ObjectNode node = request(request);
        node.put("complete", true);
        node.put("links", pages.links());
        node.put("exact_links", pages.exact());
        node.put("page", page);
        node.put("pages", pages.pages());
        node.put("families", pages.families());
        ToldJson.put(
                node.putArray("told"),
                List.of(TellSeek.afar(request, pages.links(), pages.exact())));
        ArrayNode array = node.putArray("answers");
        for (Answer answer : list) {
            array.add(tree(answer, request.performer()));
        }
        return node;
    }

    /** A seek that was stopped before it compared anything. */
    public static ObjectNode stopped(SeekRequest request) {
        ObjectNode node = request(request);
        node.put("complete", false);
        ToldJson.put(node.putArray("told"), List.of(TellSeek.stopped()));
        node.putArray("answers");
        return node;
    }

    /** Any of these as text. */
    public static String text(ObjectNode tree) {
        return PrettyJson.text(tree);
    }

    private static ObjectNode head(SeekRequest request, Answers answers, boolean done) {
        ObjectNode node = request(request);
        node.put("complete", done);
        node.put("head_paths", answers.headPaths());
        node.put("hand_paths", answers.handPaths());
        node.put("links", answers.count());
        node.put("exact_links", answers.exactCount());
        node.put("pairs", answers.pairs());
        node.put("exact_pairs", answers.exactPairs());
        node.put("comparisons", answers.comparisons());
        ToldJson.put(node.putArray("told"), List.of(TellSeek.of(request, answers, done)));
        return node;
    }

    private static ObjectNode request(SeekRequest request) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        Space.Grid grid = request.space().grid();
        ObjectNode space = node.putObject("space");
        space.put("motions", request.space().count());
        space.putObject("grid")
                .put("circle_steps", grid.circleSteps())
                .put("pair_steps", grid.pairSteps())
                .put("most_tethers", grid.most())
                .put("turns", grid.turns())
                .put("starts", grid.starts())
                .put("arcs", grid.arcs())
                .put("stretches", grid.stretches());
        node.put("tether_m", request.tether().length());
        node.put("tethers", Keys.word(request.tethers()));
        node.put("tolerance_m", request.tolerance());
        node.put("order", Keys.word(request.order()));
        return node;
    }

    /** One answer, with the pattern that stands for it. */
    public static ObjectNode tree(Answer answer, Performer performer) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("said", answer.said());
        if (answer.phrase()) {
            node.put("phrase", answer.said());
        }
        node.put("exact", answer.exact());
        node.put("gap_m", rounded(answer.gap()));
        node.put("carriers", answer.carriers());
        node.put("riders", answer.riders());
        node.put("pairs", answer.pairs());
        node.put("idea", answer.idea().words());
        family(node.putObject("family"), answer.family());
        answer.against()
                .ifPresent(
                        against -> {
                            ArrayNode array = node.putArray("against");
                            against.forEach(what -> array.add(Keys.word(what)));
                        });
        ArrayNode closings = node.putArray("closings");
        for (Closing closing : answer.closings()) {
            closings.addObject()
                    .put("size", closing.size().key())
                    .put("from", rounded(closing.from()))
                    .put("to", rounded(closing.to()));
        }
        node.set("merit", merit(answer.merit()));
        ToldJson.put(node.putObject("told"), TellSeek.of(answer));
        node.set("pattern", PatternJson.tree(pattern(answer, answer.said(), performer)));
        return node;
    }

    private static void family(ObjectNode node, Family family) {
        node.put("name", family.name());
        node.put("sizes", family.sizes());
        node.put("pairs", family.pairs());
        ArrayNode members = node.putArray("members");
        for (Family.Member member : family.members()) {
            ObjectNode one = members.addObject();
            one.put("idea", member.idea().words());
            one.put("said", member.said());
            if (member.phrase()) {
                one.put("phrase", member.said());
            }
        }
    }

    private static ObjectNode merit(Merit merit) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("contrast", rounded(merit.contrast()));
        node.put("symmetry", merit.symmetry());
        node.put("missing_m", rounded(merit.missing()));
        put(node, "slowest_cycles_per_min", merit.slowest());
        put(node, "growth_in_reaction", merit.growth());
        put(node, "to_shelf_m", merit.toShelf());
        return node;
    }

    private static void put(ObjectNode node, String key, OptionalDouble value) {
        if (value.isPresent() && Double.isFinite(value.getAsDouble())) {
            node.put(key, rounded(value.getAsDouble()));
        }
    }

    /** An answer as a pattern document, to keep on the shelf under a name. */
    public static PatternDocument pattern(Answer answer, String name, Performer performer) {
        Pairing pairing = answer.pairing();
        String bounded =
                name.length() > Wording.NAME ? name.substring(0, Wording.NAME - 1) + "…" : name;
        Optional<String> phrase =
                answer.phrase() && answer.said().length() <= Wording.PHRASE
                        ? Optional.of(answer.said())
                        : Optional.empty();
        return PatternDocument.of(bounded, pairing, performer).withPhrase(phrase);
    }
}
