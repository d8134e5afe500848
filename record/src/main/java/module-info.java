/**
 * What is kept: pattern documents and their schema, the shelf, readings as JSON.
 *
 * <p>What is exported to everybody is public. The other packages are Deferent's own and change
 * without notice.
 */
// "module": the rooms that it is exported to are compiled later.
@SuppressWarnings({"module", "requires-automatic"})
module deferent.record {
    requires transitive deferent.motion;
    requires deferent.reading;
    requires deferent.search;
    requires deferent.tell;
    requires hipparchus.geometry;
    requires org.apache.xmlgraphics.batik.parser;
    requires org.apache.xmlgraphics.batik.util;
    requires tools.jackson.core;
    requires tools.jackson.databind;
    requires static org.jspecify;

    exports deferent.record.api;
    exports deferent.record to
            deferent.page;
    exports deferent.record.cue to
            deferent.page;
    exports deferent.record.landing to
            deferent.page;
    exports deferent.record.log to
            deferent.page;
    exports deferent.record.number to
            deferent.page;
}
