/**
 * How it is said in words.
 *
 * <p>What is exported to everybody is public. The other packages are Deferent's own and change
 * without notice.
 */
// "module": the rooms that it is exported to are compiled later.
@SuppressWarnings({"module", "requires-automatic"})
module deferent.tell {
    requires transitive deferent.motion;
    requires deferent.reading;
    requires deferent.search;
    requires hipparchus.geometry;
    requires static org.jspecify;

    exports deferent.tell.api;
    exports deferent.tell to
            deferent.record,
            deferent.page;
}
