/** How it is said in words. Nothing in it is public yet; its sentences stand in the readings. */
// "module": the rooms that it is exported to are compiled later.
@SuppressWarnings({"module", "requires-automatic"})
module deferent.tell {
    requires deferent.motion;
    requires deferent.reading;
    requires deferent.search;
    requires hipparchus.geometry;
    requires static org.jspecify;

    exports deferent.tell to
            deferent.record,
            deferent.page;
}
