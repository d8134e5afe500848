/**
 * Drawing: scenes and the one painter for SVG, PNG and PDF; sheets, pages, models.
 *
 * <p>What is exported to everybody is public. The other packages are Deferent's own and change
 * without notice.
 */
@SuppressWarnings("requires-automatic")
module deferent.page {
    requires transitive deferent.motion;
    requires deferent.reading;
    requires deferent.record;
    requires deferent.search;
    requires deferent.tell;
    // Nothing here uses these by itself: libraries without a descriptor do, and cannot ask for
    // them.
    requires com.fasterxml.jackson.databind;
    requires org.apache.commons.io;
    requires org.apache.commons.logging;
    requires jdk.unsupported;
    requires com.formdev.flatlaf.fonts.roboto;
    requires de.rototor.pdfbox.graphics2d;
    requires hipparchus.core;
    requires hipparchus.geometry;
    requires java.desktop;
    requires java.xml;
    requires jgltf.impl.v2;
    requires jgltf.model;
    requires jgltf.model.builder;
    requires org.apache.fontbox;
    requires org.apache.pdfbox;
    requires org.apache.pdfbox.io;
    requires org.apache.xmlgraphics.batik.svggen;
    requires org.locationtech.jts;
    requires tools.jackson.databind;
    requires static org.jspecify;

    exports deferent.page.api;
}
