/**
 * A scene for other programs and other people's pages: a web page that plays offline, the hall file
 * that practises on a phone, a site to publish, an SVG that moves by itself, and a model for 3-D
 * programs. All of them draw the one {@link deferent.page.Scene}; the page draws it with the very
 * modules that draw the studio's stage, which are kept here, in this package's resources, and
 * served by the studio from here.
 */
@NullMarked
package deferent.page.web;

import org.jspecify.annotations.NullMarked;
