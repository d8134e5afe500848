package deferent.studio;

import java.util.List;

/**
 * The figures that a first visitor picks from. Our choice out of what phrases say: links of every
 * kind and pairings that do not link yet, a flower, a star, a swing; each at sizes that arms reach,
 * the trunk turned, and at which nothing is a danger.
 */
final class Gallery {
    private Gallery() {}

    static final List<String> PHRASES =
            List.of(
                    "static spin vs triquetra, tether 50 cm",
                    "isolation vs isolation, split time",
                    "five-petal antispin vs five-petal antispin, tether 35 cm, opposites",
                    "static spin vs four-petal antispin, tether 40 cm",
                    "horizontal cat-eye vs isolation",
                    "static spin vs pentagram, tether 50 cm, tempo 40",
                    "box four-petal antispin vs four-petal antispin, tether 40 cm",
                    "pendulum vs CAP riding, tether 50 cm",
                    "isolation vs four-petal antispin, tether 40 cm",
                    "cat-eye tilt 45° vs cat-eye tilt -45°, opposites",
                    "static spin vs three-petal in-spin, tether 35 cm",
                    "isolation centre 20 cm left vs isolation centre 20 cm right, split time");
}
