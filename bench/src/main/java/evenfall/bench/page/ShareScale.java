package evenfall.bench.page;

import java.util.ArrayList;
import java.util.List;

/**
 * Colours for a share of what is meant, 0 to 2: pale where it is 1, towards orange where it is less, towards blue where it is more.
 *
 * <p>Orange and blue differ for every common kind of colour blindness. Each side is a straight line in CIELAB (CIE 15:2004, white
 * D65), whose distances are those that an eye sees, so that equal steps of the share look equal. Both ends are equally dark: a grey
 * print shows how far off a place is but not to which side, so a picture in these colours says that beside them in another way.
 */
public final class ShareScale {
    /** Nothing, the mean, and twice the mean, sRGB. Chosen by us. */
    private static final double[] NOTHING = lab(0xa64200);

    private static final double[] MEAN = lab(0xf6f6f2);
    private static final double[] TWICE = lab(0x0a4d9c);

    private ShareScale() {}

    /**
     * The colour of a share.
     *
     * @param share over what is meant, 0 or more; above 2 it counts as 2
     * @return 0xRRGGBB
     */
    public static int rgb(double share) {
        double away = Math.min(1, Math.abs(share - 1));
        double[] end = share < 1 ? NOTHING : TWICE;
        double[] at = new double[3];
        for (int i = 0; i < 3; i++) {
            at[i] = MEAN[i] + away * (end[i] - MEAN[i]);
        }
        return rgb(at);
    }

    /** The scale as a line of boxes with words, 22 high. */
    static List<SvgTag> legend(double atX, double atY) {
        List<SvgTag> parts = new ArrayList<>();
        parts.add(SvgTag.text(atX, atY + 12, "legend", "nothing"));
        double boxX = atX + 56;
        for (int percent = 0; percent <= 200; percent += 10) {
            parts.add(new SvgTag("rect")
                    .at("x", boxX + percent * 1.2)
                    .at("y", atY)
                    .at("width", 12)
                    .at("height", 14)
                    .attr("fill", colour(rgb(percent / 100.0))));
        }
        parts.add(SvgTag.text(boxX + 126, atY + 28, "legend", "mean").attr("text-anchor", "middle"));
        parts.add(SvgTag.text(boxX + 258, atY + 12, "legend", "twice or more"));
        return parts;
    }

    static String colour(int rgb) {
        return "#" + Integer.toHexString(0x1000000 | rgb).substring(1);
    }

    /** sRGB (IEC 61966-2-1) to CIELAB: L 0 to 100, a, b. */
    static double[] lab(int rgb) {
        double r = linear((rgb >> 16 & 255) / 255.0);
        double g = linear((rgb >> 8 & 255) / 255.0);
        double b = linear((rgb & 255) / 255.0);
        double x = bent((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / WHITE_X);
        double y = bent(0.2126729 * r + 0.7151522 * g + 0.0721750 * b);
        double z = bent((0.0193339 * r + 0.1191920 * g + 0.9503041 * b) / WHITE_Z);
        return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
    }

    private static final double WHITE_X = 0.4124564 + 0.3575761 + 0.1804375;
    private static final double WHITE_Z = 0.0193339 + 0.1191920 + 0.9503041;
    private static final double LINEAR_BELOW = 6.0 / 29;

    private static int rgb(double[] lab) {
        double fy = (lab[0] + 16) / 116;
        double x = WHITE_X * unbent(fy + lab[1] / 500);
        double y = unbent(fy);
        double z = WHITE_Z * unbent(fy - lab[2] / 200);
        return channel(3.2404542 * x - 1.5371385 * y - 0.4985314 * z) << 16
                | channel(-0.9692660 * x + 1.8760108 * y + 0.0415560 * z) << 8
                | channel(0.0556434 * x - 0.2040259 * y + 1.0572252 * z);
    }

    private static double linear(double channel) {
        return channel <= 0.04045 ? channel / 12.92 : StrictMath.pow((channel + 0.055) / 1.055, 2.4);
    }

    private static int channel(double light) {
        double share = light <= 0.0031308 ? 12.92 * light : 1.055 * StrictMath.pow(light, 1 / 2.4) - 0.055;
        return (int) Math.round(255 * Math.max(0, Math.min(1, share)));
    }

    private static double bent(double light) {
        return light > LINEAR_BELOW * LINEAR_BELOW * LINEAR_BELOW
                ? StrictMath.cbrt(light)
                : light / (3 * LINEAR_BELOW * LINEAR_BELOW) + 4.0 / 29;
    }

    private static double unbent(double value) {
        return value > LINEAR_BELOW ? value * value * value : 3 * LINEAR_BELOW * LINEAR_BELOW * (value - 4.0 / 29);
    }
}
