package evenfall.bench.page;

import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;

/**
 * Lines, areas and rasters over two axes, as SVG. What lies outside the axes is cut off. A legend stands below; colours never stand alone.
 *
 * <p>Parts are drawn in the order in which they were added, areas below everything else.
 */
public final class LineChart {
    private static final double WIDE = 720;

    /** For two beside each other: as wide as half a page's column, so that letters keep their size. */
    private static final double HALF = 470;

    private static final double LEFT = 62;
    private static final double RIGHT = 18;
    private static final double TOP = 14;
    private static final double BOTTOM = 48;
    private static final double LEGEND_LINE = 22;

    /** Rough width of a letter, for placing only. */
    private static final double LETTER = 7.2;

    private static final double WORDS_HIGH = 15;
    private static final int MARKS_A_LINE = 7;

    private final String id;
    private final String says;
    private final Axis across;
    private final Axis up;
    private final double plotHigh;
    private final double wide;
    private final List<SvgTag> areas = new ArrayList<>();
    private final List<SvgTag> parts = new ArrayList<>();
    private final List<double[]> contourWords = new ArrayList<>();
    private final List<Entry> legend = new ArrayList<>();

    private record Entry(String name, SvgTag sign) {}

    /**
     * @param id letters and hyphens, of its own on its page
     * @param says what the chart shows, in a sentence, for those who cannot see it
     * @param high height of the plot, where its width is 640
     */
    public LineChart(String id, String says, Axis across, Axis up, double high) {
        this(id, says, across, up, high, WIDE);
    }

    private LineChart(String id, String says, Axis across, Axis up, double high, double wide) {
        this.id = id;
        this.says = says;
        this.across = across;
        this.up = up;
        this.plotHigh = high;
        this.wide = wide;
    }

    /** A chart that stands beside another one: narrower, with letters of the same size. */
    public static LineChart half(String id, String says, Axis across, Axis up, double high) {
        return new LineChart(id, says, across, up, high, HALF);
    }

    /** A line through points, with its entry in the legend. */
    public LineChart line(String name, Ink ink, List<Point> points) {
        parts.add(ink.stroke(new SvgTag("path").attr("d", path(points))).attr("clip-path", plotUrl()));
        int every = Math.max(1, points.size() / MARKS_A_LINE);
        // Lines begin their marks at different places, so that marks of lines that run together do not hide each other.
        for (int i = every / 2 + legend.size() * every / 5 % Math.max(1, every); i < points.size(); i += every) {
            Double y = points.get(i).y();
            if (y != null && inside(points.get(i).x(), y)) {
                parts.add(ink.markAt(x(points.get(i).x()), y(y)));
            }
        }
        SvgTag sign = new SvgTag("g")
                .with(ink.stroke(new SvgTag("path").attr("d", "M0 0h34")))
                .with(ink.markAt(17, 0));
        legend.add(new Entry(name, sign));
        return this;
    }

    /**
     * A thin grey line without a place in the legend; its words stand at its right end. Where another's words stand there already it
     * is left out, for a line that cannot be named says nothing.
     */
    public LineChart contour(String words, List<Point> points) {
        Point last = null;
        for (Point point : points) {
            Double y = point.y();
            if (y != null && inside(point.x(), y)) {
                last = point;
            }
        }
        if (last == null || last.y() == null) {
            return this;
        }
        double atX = x(last.x());
        double atY = y(last.y()) - 4;
        for (double[] taken : contourWords) {
            if (Math.abs(taken[0] - atX) < LETTER * words.length() && Math.abs(taken[1] - atY) < WORDS_HIGH) {
                return this;
            }
        }
        contourWords.add(new double[] {atX, atY});
        parts.add(
                new SvgTag("path").attr("d", path(points)).withClass("contour").attr("clip-path", plotUrl()));
        parts.add(SvgTag.text(atX - 3, atY, "small", words).attr("text-anchor", "end"));
        return this;
    }

    /**
     * An area between two lines of points, with its entry in the legend and a hatch of its own. Where either is not known the area is
     * interrupted; then both must have a point for a point.
     */
    public LineChart area(String name, Ink ink, List<Point> lower, List<Point> upper) {
        int hatch = legend.size();
        areas.add(hatch(ink, hatch));
        areas.add(new SvgTag("path")
                .attr("d", around(lower, upper))
                .attr("fill", hatchUrl(hatch))
                .attr("stroke", ink.colour())
                .attr("stroke-width", "1.5")
                .attr("clip-path", plotUrl()));
        SvgTag sign = new SvgTag("rect")
                .at("x", 0)
                .at("y", -8)
                .at("width", 34)
                .at("height", 14)
                .attr("fill", hatchUrl(hatch))
                .attr("stroke", ink.colour());
        legend.add(new Entry(name, sign));
        return this;
    }

    private String around(List<Point> lower, List<Point> upper) {
        if (lower.stream().allMatch(p -> p.y() != null) && upper.stream().allMatch(p -> p.y() != null)) {
            return ring(lower, upper);
        }
        StringBuilder rings = new StringBuilder();
        int from = 0;
        for (int i = 0; i <= lower.size(); i++) {
            boolean known =
                    i < lower.size() && lower.get(i).y() != null && upper.get(i).y() != null;
            if (!known) {
                rings.append(i > from + 1 ? ring(lower.subList(from, i), upper.subList(from, i)) : "");
                from = i + 1;
            }
        }
        return rings.toString();
    }

    private String ring(List<Point> lower, List<Point> upper) {
        List<Point> points = new ArrayList<>(upper);
        for (int i = lower.size() - 1; i >= 0; i--) {
            points.add(lower.get(i));
        }
        return path(points) + "z";
    }

    private SvgTag hatch(Ink ink, int number) {
        double turn = new double[] {45, -45, 0, 90}[number % 4];
        SvgTag pattern = new SvgTag("pattern")
                .attr("id", id + "-hatch" + number)
                .attr("patternUnits", "userSpaceOnUse")
                .at("width", 8)
                .at("height", 8)
                .attr("patternTransform", "rotate(" + SvgTag.number(turn) + ")");
        return pattern.with(new SvgTag("rect")
                        .at("width", 8)
                        .at("height", 8)
                        .attr("fill", ink.colour())
                        .attr("fill-opacity", "0.10"))
                .with(new SvgTag("path")
                        .attr("d", "M0 0v8")
                        .attr("stroke", ink.colour())
                        .attr("stroke-opacity", "0.45")
                        .attr("stroke-width", "1.5"));
    }

    /** A raster below everything else, over a stretch of both axes; its highest row lies at the top. */
    public LineChart raster(Raster raster, double fromX, double toX, double fromY, double toY) {
        areas.add(raster.image()
                .at("x", x(fromX))
                .at("y", y(toY))
                .at("width", Math.max(0, x(toX) - x(fromX)))
                .at("height", Math.max(0, y(fromY) - y(toY))));
        return this;
    }

    /** A grey strip over a stretch of the level axis, with words at its top. */
    public LineChart strip(String words, double from, double to) {
        double left = x(Math.max(across.low(), from));
        double right = x(Math.min(across.high(), to));
        areas.add(new SvgTag("rect")
                .at("x", left)
                .at("y", TOP)
                .at("width", Math.max(0, right - left))
                .at("height", plotHigh)
                .withClass("strip"));
        parts.add(SvgTag.text((left + right) / 2, TOP + 14, "small", words).attr("text-anchor", "middle"));
        return this;
    }

    /** A level line over the whole plot, with words above its right end. */
    public LineChart limit(String words, double at) {
        parts.add(new SvgTag("path")
                .attr("d", "M" + SvgTag.number(LEFT) + " " + SvgTag.number(y(at)) + "H" + SvgTag.number(wide - RIGHT))
                .withClass("limit"));
        parts.add(SvgTag.text(wide - RIGHT - 4, y(at) - 5, "small", words).attr("text-anchor", "end"));
        return this;
    }

    /** As {@link #limit}, with the words below the line: for the lower one of two. */
    public LineChart floor(String words, double at) {
        limit("", at);
        parts.add(SvgTag.text(wide - RIGHT - 4, y(at) + 14, "small", words).attr("text-anchor", "end"));
        return this;
    }

    /** An upright line over the whole plot, with words at its foot. */
    public LineChart post(String words, double at) {
        parts.add(new SvgTag("path")
                .attr("d", "M" + SvgTag.number(x(at)) + " " + SvgTag.number(TOP) + "v" + SvgTag.number(plotHigh))
                .withClass("limit"));
        parts.add(SvgTag.text(x(at) + 4, TOP + plotHigh - 6, "small", words));
        return this;
    }

    /** A black outline around a stretch of both axes, with words inside its upper left corner. */
    public LineChart frame(String words, double fromX, double toX, double fromY, double toY) {
        parts.add(new SvgTag("rect")
                .at("x", x(fromX))
                .at("y", y(toY))
                .at("width", Math.max(0, x(toX) - x(fromX)))
                .at("height", Math.max(0, y(fromY) - y(toY)))
                .withClass("frame"));
        parts.add(SvgTag.text(x(fromX), y(toY) - 5, "small strong", words));
        return this;
    }

    /** A dot with words beside it. */
    public LineChart dot(String words, double atX, double atY) {
        parts.add(new SvgTag("circle")
                .at("cx", x(atX))
                .at("cy", y(atY))
                .at("r", 3.5)
                .withClass("dot"));
        boolean right = across.share(atX) > 0.6;
        parts.add(
                SvgTag.text(x(atX) + (right ? -7 : 7), y(atY) + (up.share(atY) > 0.5 ? 15 : -7), "small strong", words)
                        .attr("text-anchor", right ? "end" : "start"));
        return this;
    }

    private String plotUrl() {
        return "url(#" + id + "-plot)";
    }

    private String hatchUrl(int number) {
        return "url(#" + id + "-hatch" + number + ")";
    }

    /** The chart. */
    public DomContent svg() {
        double legendTop = TOP + plotHigh + BOTTOM;
        List<SvgTag> entries = new ArrayList<>();
        double atX = LEFT;
        double atY = legendTop + 6;
        for (Entry entry : legend) {
            double entryWide = 44 + LETTER * entry.name.length() + 18;
            if (atX > LEFT && atX + entryWide > wide) {
                atX = LEFT;
                atY += LEGEND_LINE;
            }
            entries.add(new SvgTag("g")
                    .attr("transform", "translate(" + SvgTag.number(atX) + " " + SvgTag.number(atY) + ")")
                    .with(entry.sign)
                    .with(SvgTag.text(42, 4, "legend", entry.name)));
            atX += entryWide;
        }
        double high = legend.isEmpty() ? legendTop : atY + 14;
        SvgTag svg = new SvgTag("svg")
                .attr("xmlns", "http://www.w3.org/2000/svg")
                .attr("viewBox", "0 0 " + SvgTag.number(wide) + " " + SvgTag.number(high))
                .attr("role", "img")
                .attr("aria-label", says)
                .withClass("chart");
        svg.with(new SvgTag("defs")
                .with(new SvgTag("clipPath")
                        .attr("id", id + "-plot")
                        .with(new SvgTag("rect")
                                .at("x", LEFT)
                                .at("y", TOP)
                                .at("width", wide - LEFT - RIGHT)
                                .at("height", plotHigh))));
        svg.with(areas).with(grid()).with(parts).with(entries);
        return svg;
    }

    private List<SvgTag> grid() {
        List<SvgTag> grid = new ArrayList<>();
        for (double mark : across.marks()) {
            grid.add(new SvgTag("path")
                    .attr("d", "M" + SvgTag.number(x(mark)) + " " + SvgTag.number(TOP) + "v" + SvgTag.number(plotHigh))
                    .withClass("grid"));
            grid.add(SvgTag.text(x(mark), TOP + plotHigh + 17, "number", across.text(mark))
                    .attr("text-anchor", "middle"));
        }
        for (double mark : up.marks()) {
            grid.add(new SvgTag("path")
                    .attr(
                            "d",
                            "M" + SvgTag.number(LEFT) + " " + SvgTag.number(y(mark)) + "H"
                                    + SvgTag.number(wide - RIGHT))
                    .withClass("grid"));
            grid.add(SvgTag.text(LEFT - 7, y(mark) + 4, "number", up.text(mark)).attr("text-anchor", "end"));
        }
        grid.add(SvgTag.text((LEFT + wide - RIGHT) / 2, TOP + plotHigh + 37, "axis", across.label())
                .attr("text-anchor", "middle"));
        grid.add(SvgTag.text(0, 0, "axis", up.label())
                .attr("text-anchor", "middle")
                .attr("transform", "translate(16 " + SvgTag.number(TOP + plotHigh / 2) + ") rotate(-90)"));
        return grid;
    }

    private boolean inside(double atX, double atY) {
        return atX >= across.low() && atX <= across.high() && atY >= up.low() && atY <= up.high();
    }

    private double x(double value) {
        return LEFT + across.share(value) * (wide - LEFT - RIGHT);
    }

    private double y(double value) {
        return TOP + (1 - up.share(value)) * plotHigh;
    }

    private String path(List<Point> points) {
        StringBuilder d = new StringBuilder();
        boolean open = false;
        for (Point point : points) {
            Double y = point.y();
            if (y == null) {
                open = false;
                continue;
            }
            // Far outside the plot is as good as just outside, and keeps numbers writable.
            double far = 4 * plotHigh;
            double at = Math.max(-far, Math.min(far, y(y)));
            d.append(open ? "L" : "M")
                    .append(SvgTag.number(x(point.x())))
                    .append(' ')
                    .append(SvgTag.number(at));
            open = true;
        }
        return d.toString();
    }
}
