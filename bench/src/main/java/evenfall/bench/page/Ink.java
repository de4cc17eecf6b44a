package evenfall.bench.page;

/**
 * How one thing is told from another in a chart: colour, dash and mark together, so that it can be told on a grey print and by those
 * who do not see all colours.
 *
 * <p>Colours by Okabe and Ito, "Color Universal Design" (2008; from memory), those dark enough for lines on white.
 */
public enum Ink {
    BLUE("#0072b2", "", "M-4 0a4 4 0 1 0 8 0a4 4 0 1 0 -8 0z"),
    VERMILION("#d55e00", "8 3", "M-4 -4h8v8h-8z"),
    GREEN("#009e73", "2 3", "M0 -5l5 9h-10z"),
    PURPLE("#aa4499", "10 3 2 3", "M0 -5l5 5l-5 5l-5 -5z"),
    BLACK("#222222", "5 2", "M-4 -4l8 8M4 -4l-8 8"),
    SKY("#3a8fc2", "12 4", "M0 -5v10M-5 0h10"),
    OCHRE("#b37700", "3 2 8 2", "M0 5l5 -9h-10z");

    private final String colour;
    private final String dash;
    private final String mark;

    Ink(String colour, String dash, String mark) {
        this.colour = colour;
        this.dash = dash;
        this.mark = mark;
    }

    /** One after another; after the last the first again. */
    public static Ink number(int index) {
        return values()[index % values().length];
    }

    String colour() {
        return colour;
    }

    SvgTag stroke(SvgTag tag) {
        tag.attr("stroke", colour).attr("fill", "none").attr("stroke-width", "2");
        return dash.isEmpty() ? tag : tag.attr("stroke-dasharray", dash);
    }

    SvgTag markAt(double x, double y) {
        return new SvgTag("path")
                .attr("d", mark)
                .attr("transform", "translate(" + SvgTag.number(x) + " " + SvgTag.number(y) + ")")
                .attr("stroke", colour)
                .attr("stroke-width", "1.5")
                .attr("fill", mark.endsWith("z") ? "#fff" : "none");
    }
}
