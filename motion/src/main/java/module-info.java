/**
 * What is meant: pairings of two poi, the phrases that say them, and where hands and heads go.
 *
 * <p>What is exported to everybody is public. The other packages are Deferent's own and change
 * without notice.
 */
// "module": the rooms that it is exported to are compiled later.
@SuppressWarnings({"module", "requires-automatic"})
module deferent.motion {
    requires hipparchus.core;
    requires hipparchus.fft;
    requires hipparchus.geometry;
    requires org.locationtech.jts;
    requires static org.jspecify;

    exports deferent.motion.api;
    exports deferent.motion.shared;
    exports deferent.motion.api.opened to
            deferent.reading,
            deferent.search,
            deferent.tell,
            deferent.record,
            deferent.page;
    exports deferent.motion.pairing to
            deferent.reading,
            deferent.search,
            deferent.tell,
            deferent.record,
            deferent.page;
    exports deferent.motion.phrase to
            deferent.reading,
            deferent.search,
            deferent.tell,
            deferent.record,
            deferent.page;
    exports deferent.motion.song to
            deferent.reading,
            deferent.search,
            deferent.tell,
            deferent.record,
            deferent.page;
    exports deferent.motion.trace to
            deferent.reading,
            deferent.search,
            deferent.tell,
            deferent.record,
            deferent.page;
    exports deferent.motion.trade to
            deferent.reading,
            deferent.search,
            deferent.tell,
            deferent.record,
            deferent.page;
}
