package deferent.app;

import deferent.record.Kept;
import deferent.record.Log;
import deferent.record.PrettyJson;
import deferent.record.Shelf;
import deferent.tell.TellLog;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** What was put on the shelf or taken from it: told line by line, or in JSON all at the end. */
final class Putting {
    private final Manners manner;
    private final ObjectNode all = JsonNodeFactory.instance.objectNode();
    private final ArrayNode kept = all.putArray("kept");
    private final ArrayNode removed = all.putArray("removed");
    private final ArrayNode practice = all.putArray("practice");
    private final ArrayNode logs = all.putArray("logs");

    Putting(Manners manner) {
        this.manner = manner;
    }

    private void line(String line) {
        if (!manner.json()) {
            manner.out().println(line);
        }
    }

    void kept(Shelf shelf, Kept one) {
        line(ShelfCommand.Work.said(shelf, one));
        put(kept, shelf, one);
    }

    void removed(Shelf shelf, Kept one) {
        line("Removed: " + shelf.file(one.id()));
        put(removed, shelf, one);
    }

    private static void put(ArrayNode into, Shelf shelf, Kept one) {
        into.addObject()
                .put("id", one.id())
                .put("kind", one.document().kind())
                .put("name", one.document().name())
                .put("file", shelf.file(one.id()).toString());
    }

    /** A record of practice. */
    void practice(String id) {
        line("Kept: " + id);
        practice.add(id);
    }

    /** Entries of a log. */
    void log(String from, Log.Added added) {
        String told = TellLog.taken(added.fresh().size(), added.known(), added.different());
        line(from + ": " + told);
        ObjectNode one =
                logs.addObject()
                        .put("from", from)
                        .put("new", added.fresh().size())
                        .put("known", added.known())
                        .put("told", told);
        ArrayNode different = one.putArray("different");
        added.different().forEach(different::add);
    }

    /** Where answers are read by programs, the whole. */
    void tell() {
        if (manner.json()) {
            manner.out().print(PrettyJson.text(all));
        }
    }
}
