package evenfall.bench.compare;

import evenfall.bench.page.Raster;
import evenfall.bench.page.ShareScale;
import evenfall.bench.run.RunResult;
import evenfall.bench.score.GroundMap;
import evenfall.quantity.FixedDecimals;
import java.util.Locale;

/**
 * The comparison as a picture: rows across, distance along, one strip a type, all over the same ground. One SVG file that needs
 * nothing else; each strip is a small image inside it.
 */
public final class GroundPicture {
    private static final int LEFT = 130;
    private static final int WIDE = 1000;
    private static final int STRIP = 110;
    private static final int GAP = 34;
    private static final int TOP = 92;
    private static final int BOTTOM = 66;

    private GroundPicture() {}

    /** The whole file. */
    public static String svg(Comparison comparison) {
        int types = comparison.results().size();
        int high = TOP + types * (STRIP + GAP) + BOTTOM;
        StringBuilder svg = new StringBuilder();
        svg.append(String.format(
                Locale.ROOT,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\" "
                        + "font-family=\"sans-serif\" font-size=\"14\" fill=\"#222\">%n"
                        + "<rect width=\"100%%\" height=\"100%%\" fill=\"#fff\"/>%n",
                LEFT + WIDE + 30,
                high,
                LEFT + WIDE + 30,
                high));
        RunResult first = comparison.results().get(0);
        text(svg, LEFT, 30, "font-size=\"20\" font-weight=\"bold\"", first.title() + ": what each row got");
        text(
                svg,
                LEFT,
                52,
                "fill=\"#555\"",
                "simulated, invented ground; seed " + first.seed()
                        + "; rows across (left wing above), distance along; 100 % is the mean of the pass");
        legend(svg);
        for (int i = 0; i < types; i++) {
            strip(svg, comparison.results().get(i), TOP + i * (STRIP + GAP));
        }
        distances(svg, first.score().ground().map(), TOP + types * (STRIP + GAP) - GAP + 6);
        return svg.append("</svg>\n").toString();
    }

    private static void strip(StringBuilder svg, RunResult result, int top) {
        GroundMap map = result.score().ground().map();
        text(svg, 10, top + 22, "font-weight=\"bold\"", result.outlet());
        Double cv = result.score().truth().rowCvMean();
        Double p95 = result.score().truth().rowCvP95();
        if (cv != null && p95 != null) {
            text(svg, 10, top + 44, "fill=\"#555\"", "row CV " + FixedDecimals.text(100 * cv, 1) + " %");
            text(svg, 10, top + 64, "fill=\"#555\"", "p95 " + FixedDecimals.text(100 * p95, 1) + " %");
        }
        if (map.cells() > 0) {
            svg.append(String.format(
                    Locale.ROOT,
                    "<image x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" preserveAspectRatio=\"none\" "
                            + "href=\"%s\"/>%n",
                    LEFT,
                    top,
                    WIDE,
                    STRIP,
                    new Raster(map.cells(), map.rows(), map::share).dataUri()));
        }
        svg.append(String.format(
                Locale.ROOT,
                "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" fill=\"none\" stroke=\"#888\"/>%n",
                LEFT,
                top,
                WIDE,
                STRIP));
    }

    private static void legend(StringBuilder svg) {
        for (int percent = 0; percent <= 200; percent += 10) {
            svg.append(String.format(
                    Locale.ROOT,
                    "<rect x=\"%d\" y=\"62\" width=\"16\" height=\"14\" fill=\"#%06x\"/>%n",
                    LEFT + 56 + percent / 10 * 16,
                    ShareScale.rgb(percent / 100.0)));
        }
        text(svg, LEFT, 74, "font-size=\"12\"", "nothing");
        text(svg, LEFT + 56 + 21 * 16 + 6, 74, "font-size=\"12\"", "twice the mean or more");
    }

    private static void distances(StringBuilder svg, GroundMap map, int top) {
        if (map.cells() < 2) {
            return;
        }
        double fromM = map.cellFromM(0);
        double cellM = map.cellFromM(1) - fromM;
        double lengthM = map.cells() * cellM;
        double stepM = lengthM > 1000 ? 200 : lengthM > 250 ? 50 : 25;
        for (double atM = Math.ceil(fromM / stepM) * stepM; atM <= fromM + lengthM; atM += stepM) {
            int x = LEFT + (int) Math.round((atM - fromM) / lengthM * WIDE);
            svg.append(String.format(Locale.ROOT, "<path d=\"M%d %dv6\" stroke=\"#888\"/>%n", x, top));
            text(svg, x, top + 22, "text-anchor=\"middle\" font-size=\"12\"", FixedDecimals.text(atM, 0) + " m");
        }
    }

    private static void text(StringBuilder svg, int x, int y, String style, String words) {
        String safe = words.replace("&", "&amp;").replace("<", "&lt;");
        svg.append(String.format(Locale.ROOT, "<text x=\"%d\" y=\"%d\" %s>%s</text>%n", x, y, style, safe));
    }
}
