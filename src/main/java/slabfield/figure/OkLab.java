package slabfield.figure;

/**
 * A colour in OKLab, in which equal steps look about equally large.
 *
 * @param l lightness, 0 black to 1 white
 * @param a green to red
 * @param b blue to yellow
 * @see "B. Ottosson (2020), A perceptual color space for image processing"
 */
record OkLab(double l, double a, double b) {
    /** From lightness, chroma and hue [degrees]. */
    static OkLab of(double l, double chroma, double hue) {
        double h = Math.toRadians(hue);
        return new OkLab(l, chroma * Math.cos(h), chroma * Math.sin(h));
    }

    OkLab towards(OkLab other, double t) {
        return new OkLab(l + t * (other.l - l), a + t * (other.a - a), b + t * (other.b - b));
    }

    double distanceTo(OkLab other) {
        return Math.sqrt(square(l - other.l) + square(a - other.a) + square(b - other.b));
    }

    /** Opaque sRGB, each channel held between 0 and 255. */
    int argb() {
        double p = cube(l + 0.3963377774 * a + 0.2158037573 * b);
        double q = cube(l - 0.1055613458 * a - 0.0638541728 * b);
        double r = cube(l - 0.0894841775 * a - 1.2914855480 * b);
        int red = channel(4.0767416621 * p - 3.3077115913 * q + 0.2309699292 * r);
        int green = channel(-1.2684380046 * p + 2.6097574011 * q - 0.3413193965 * r);
        int blue = channel(-0.0041960863 * p - 0.7034186147 * q + 1.7076147010 * r);
        return 0xFF000000 | red << 16 | green << 8 | blue;
    }

    static OkLab ofArgb(int argb) {
        double red = linear(argb >> 16 & 255), green = linear(argb >> 8 & 255), blue = linear(argb & 255);
        double p = Math.cbrt(0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue);
        double q = Math.cbrt(0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue);
        double r = Math.cbrt(0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue);
        return new OkLab(
                0.2104542553 * p + 0.7936177850 * q - 0.0040720468 * r,
                1.9779984951 * p - 2.4285922050 * q + 0.4505937099 * r,
                0.0259040371 * p + 0.7827717662 * q - 0.8086757660 * r);
    }

    private static int channel(double linear) {
        double v = Math.max(0, Math.min(1, linear));
        double coded = v <= 0.0031308 ? 12.92 * v : 1.055 * Math.pow(v, 1 / 2.4) - 0.055;
        return (int) Math.round(255 * coded);
    }

    private static double linear(int channel) {
        double v = channel / 255.0;
        return v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
    }

    private static double square(double v) {
        return v * v;
    }

    private static double cube(double v) {
        return v * v * v;
    }
}
