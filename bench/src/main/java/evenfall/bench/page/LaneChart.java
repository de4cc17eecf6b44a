package evenfall.bench.page;

import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;

/** Lanes over one level axis: bars for what lasted, marks for moments, words beside them. */
public final class LaneChart {
    private static final double WIDE = 720;
    private static final double HALF = 470;
    private static final double RIGHT = 18;
    private static final double TOP = 6;
    private static final double LANE = 26;
    private static final double BOTTOM = 44;
    private static final double LETTER = 7.2;

    private final String says;
    private final Axis across;
    private final double wide;
    private final double left;
    private final List<SvgTag> parts = new ArrayList<>();
    private final List<SvgTag> words = new ArrayList<>();
    private final List<List<double[]>> taken = new ArrayList<>();
    private final List<String> lanes;

    /**
     * @param says what the chart shows, in a sentence
     * @param lanes their names, the first at the top
     */
    public LaneChart(String says, Axis across, List<String> lanes) {
        this(says, across, lanes, WIDE);
    }

    /** A chart that stands beside another one. */
    public static LaneChart half(String says, Axis across, List<String> lanes) {
        return new LaneChart(says, across, lanes, HALF);
    }

    private LaneChart(String says, Axis across, List<String> lanes, double wide) {
        this.says = says;
        this.across = across;
        this.wide = wide;
        this.lanes = List.copyOf(lanes);
        int longest = 0;
        for (String lane : lanes) {
            longest = Math.max(longest, lane.length());
            taken.add(new ArrayList<>());
        }
        this.left = Math.min(0.45 * wide, 16 + LETTER * longest);
    }

    /**
     * A bar.
     *
     * @param lane from 0
     * @param openEnd whether it goes on beyond its end
     */
    public LaneChart bar(int lane, Ink ink, double from, double to, boolean openEnd) {
        double fromX = x(from);
        double toX = Math.max(fromX + 3, x(to));
        double top = top(lane) + 5;
        parts.add(new SvgTag("path")
                .attr(
                        "d",
                        "M" + SvgTag.number(fromX) + " " + SvgTag.number(top) + "H" + SvgTag.number(toX)
                                + (openEnd ? "l6 " + SvgTag.number((LANE - 10) / 2) + "l-6 " : "v")
                                + SvgTag.number(openEnd ? (LANE - 10) / 2 : LANE - 10) + "H" + SvgTag.number(fromX)
                                + "z")
                .attr("fill", ink.colour())
                .attr("fill-opacity", "0.35")
                .attr("stroke", ink.colour())
                .attr("stroke-width", "1.5"));
        return this;
    }

    /** A mark at a moment. */
    public LaneChart mark(int lane, Ink ink, double at) {
        parts.add(ink.markAt(x(at), top(lane) + LANE / 2));
        return this;
    }

    /** Words beginning at a moment; left out where other words of the lane stand already. */
    public LaneChart words(int lane, String words, double at) {
        double wordsWide = LETTER * words.length();
        double fromX = Math.min(x(at) + 4, wide - wordsWide);
        for (double[] other : taken.get(lane)) {
            if (fromX < other[1] + 4 && fromX + wordsWide > other[0]) {
                return this;
            }
        }
        taken.get(lane).add(new double[] {fromX, fromX + wordsWide});
        this.words.add(SvgTag.text(fromX, top(lane) + LANE / 2 + 4, "small", words));
        return this;
    }

    /** The chart. */
    public DomContent svg() {
        double foot = TOP + LANE * lanes.size();
        SvgTag svg = new SvgTag("svg")
                .attr("xmlns", "http://www.w3.org/2000/svg")
                .attr("viewBox", "0 0 " + SvgTag.number(wide) + " " + SvgTag.number(foot + BOTTOM))
                .attr("role", "img")
                .attr("aria-label", says)
                .withClass("chart");
        for (double mark : across.marks()) {
            svg.with(new SvgTag("path")
                    .attr("d", "M" + SvgTag.number(x(mark)) + " " + SvgTag.number(TOP) + "V" + SvgTag.number(foot))
                    .withClass("grid"));
            svg.with(
                    SvgTag.text(x(mark), foot + 17, "number", across.text(mark)).attr("text-anchor", "middle"));
        }
        for (int lane = 0; lane <= lanes.size(); lane++) {
            svg.with(new SvgTag("path")
                    .attr(
                            "d",
                            "M" + SvgTag.number(lane == lanes.size() ? left : 0) + " " + SvgTag.number(top(lane)) + "H"
                                    + SvgTag.number(wide - RIGHT))
                    .withClass("grid"));
        }
        for (int lane = 0; lane < lanes.size(); lane++) {
            svg.with(SvgTag.text(left - 8, top(lane) + LANE / 2 + 4, "lane", lanes.get(lane))
                    .attr("text-anchor", "end"));
        }
        return svg.with(parts)
                .with(words)
                .with(SvgTag.text((left + wide - RIGHT) / 2, foot + 37, "axis", across.label())
                        .attr("text-anchor", "middle"));
    }

    private double top(int lane) {
        return TOP + LANE * lane;
    }

    private double x(double value) {
        return left + Math.max(0, Math.min(1, across.share(value))) * (wide - RIGHT - left);
    }
}
