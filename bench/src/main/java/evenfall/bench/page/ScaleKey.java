package evenfall.bench.page;

import j2html.tags.DomContent;

/** What the colours of a raster mean. */
public final class ScaleKey {
    private static final double WIDE = 720;

    private ScaleKey() {}

    /** The key as a picture of its own. */
    public static DomContent svg() {
        return new SvgTag("svg")
                .attr("xmlns", "http://www.w3.org/2000/svg")
                .attr("viewBox", "0 0 " + SvgTag.number(WIDE) + " 34")
                .attr("role", "img")
                .attr("aria-label", "Colours from nothing over the mean to twice the mean")
                .withClass("chart")
                .with(ShareScale.legend(62, 2))
                .with(new SvgTag("rect")
                        .at("x", 560)
                        .at("y", 2)
                        .at("width", 24)
                        .at("height", 14)
                        .attr("fill", "#e2e2e2"))
                .with(new SvgTag("path")
                        .attr("d", "M560 16l14 -14M568 16l14 -14M576 16l8 -8M560 8l6 -6")
                        .attr("stroke", "#9a9a9a")
                        .attr("stroke-width", "3"))
                .with(SvgTag.text(590, 14, "legend", "not known"));
    }
}
