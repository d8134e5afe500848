/**
 * What follows from a pairing: links, cords, bodies, photographs, what can hurt.
 *
 * <p>What is exported to everybody is public. The other packages are Deferent's own and change
 * without notice.
 */
// "module": the rooms that it is exported to are compiled later.
@SuppressWarnings({"module", "requires-automatic"})
module deferent.reading {
    requires transitive deferent.motion;
    requires hipparchus.core;
    requires hipparchus.geometry;
    requires hipparchus.ode;
    requires hipparchus.optim;
    requires org.locationtech.jts;
    requires static org.jspecify;

    exports deferent.reading.api;
    exports deferent.reading.shared;
    exports deferent.reading.body to
            deferent.search,
            deferent.tell,
            deferent.record,
            deferent.page;
    exports deferent.reading.closest to
            deferent.search,
            deferent.tell,
            deferent.record,
            deferent.page;
    exports deferent.reading.danger to
            deferent.search,
            deferent.tell,
            deferent.record,
            deferent.page;
    exports deferent.reading.link to
            deferent.search,
            deferent.tell,
            deferent.record,
            deferent.page;
    exports deferent.reading.photo to
            deferent.search,
            deferent.tell,
            deferent.record,
            deferent.page;
    exports deferent.reading.tether to
            deferent.search,
            deferent.tell,
            deferent.record,
            deferent.page;
    exports deferent.reading.worked to
            deferent.search,
            deferent.tell,
            deferent.record,
            deferent.page;
}
