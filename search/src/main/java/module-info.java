/**
 * What else there is: fits, seeks, transitions, routes, sets, orders to learn in.
 *
 * <p>What is exported to everybody is public. The other packages are Deferent's own and change
 * without notice.
 */
// "module": the rooms that it is exported to are compiled later.
@SuppressWarnings({"module", "requires-automatic"})
module deferent.search {
    requires transitive deferent.motion;
    requires deferent.reading;
    requires hipparchus.core;
    requires hipparchus.geometry;
    requires hipparchus.optim;
    requires org.jgrapht.core;
    requires static org.jspecify;

    exports deferent.search.api;
    exports deferent.search.clear to
            deferent.tell,
            deferent.record,
            deferent.page;
    exports deferent.search.fit to
            deferent.tell,
            deferent.record,
            deferent.page;
    exports deferent.search.path to
            deferent.tell,
            deferent.record,
            deferent.page;
    exports deferent.search.route to
            deferent.tell,
            deferent.record,
            deferent.page;
    exports deferent.search.seek to
            deferent.tell,
            deferent.record,
            deferent.page;
    exports deferent.search.set to
            deferent.tell,
            deferent.record,
            deferent.page;
    exports deferent.search.transition to
            deferent.tell,
            deferent.record,
            deferent.page;
    exports deferent.search.whole to
            deferent.tell,
            deferent.record,
            deferent.page;
}
