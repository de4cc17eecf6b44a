package evenfall.bench.page;

import j2html.tags.DomContent;
import java.util.stream.Collectors;

/**
 * A chart on its way out of a page: a file that needs nothing else.
 *
 * @param name letters and hyphens; what its file is called
 * @param chart as a chart of this room gives it
 */
public record Picture(String name, DomContent chart) {
    private static final String OF_CHARTS = "svg.chart .";

    /** The whole SVG file. */
    public String svg() {
        String text = chart.render();
        int open = text.indexOf('>') + 1;
        return text.substring(0, open)
                + "<style>text{fill:#1b1b1b;font-family:sans-serif;font-size:13px}" + styles() + "</style>"
                + "<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>"
                + text.substring(open)
                + "\n";
    }

    /** The page's rules for charts, made to stand alone. */
    private static String styles() {
        return Page.css()
                .lines()
                .filter(line -> line.startsWith(OF_CHARTS))
                .map(line -> line.substring(OF_CHARTS.length() - 1))
                .collect(Collectors.joining());
    }
}
