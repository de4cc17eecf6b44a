package evenfall.bench.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

class PageTest {
    private static final List<Point> SLOPE = List.of(new Point(0, 0.0), new Point(5, 50.0), new Point(10, 100.0));

    private static LineChart chart(String id) {
        return new LineChart(id, "A slope", Axis.of("x, m", 0, 10), Axis.of("y, %", 0, 100), 200);
    }

    private static Document parsed(LineChart chart) throws IOException, SAXException, ParserConfigurationException {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(chart.svg().render())));
    }

    private static List<String> all(Document svg, String tag, String attribute) {
        List<String> values = new ArrayList<>();
        NodeList nodes = svg.getElementsByTagName(tag);
        for (int i = 0; i < nodes.getLength(); i++) {
            values.add(
                    nodes.item(i).getAttributes().getNamedItem(attribute) == null
                            ? ""
                            : nodes.item(i)
                                    .getAttributes()
                                    .getNamedItem(attribute)
                                    .getNodeValue());
        }
        return values;
    }

    /** The plot is 640 wide from 62 and 200 high from 14: by hand, (5, 50 %) lies at 382, 114. */
    @Test
    void aLineRunsThroughItsPoints() throws Exception {
        Document svg = parsed(chart("a").line("slope", Ink.BLUE, SLOPE));
        assertThat(all(svg, "path", "d")).contains("M62.0 214.0L382.0 114.0L702.0 14.0");
    }

    @Test
    void whatIsNotKnownBreaksTheLine() throws Exception {
        Document svg = parsed(chart("a")
                .line("broken", Ink.BLUE, List.of(new Point(0, 0.0), new Point(5, null), new Point(10, 100.0))));
        assertThat(all(svg, "path", "d")).contains("M62.0 214.0M702.0 14.0");
    }

    /** Two rings of three corners a side, by hand; the point that is not known belongs to neither. */
    @Test
    void whatIsNotKnownInterruptsAnArea() throws Exception {
        List<Point> low = List.of(
                new Point(0, 0.0), new Point(1, 0.0), new Point(5, null), new Point(9, 0.0), new Point(10, 0.0));
        List<Point> high = List.of(
                new Point(0, 50.0), new Point(1, 50.0), new Point(5, null), new Point(9, 50.0), new Point(10, 50.0));
        Document svg = parsed(chart("a").area("band", Ink.GREEN, low, high));
        assertThat(all(svg, "path", "d"))
                .contains("M62.0 114.0L126.0 114.0L126.0 214.0L62.0 214.0z"
                        + "M638.0 114.0L702.0 114.0L702.0 214.0L638.0 214.0z");
    }

    @Test
    void everyIdOfAChartIsItsOwnAndEveryReferenceIsMet() throws Exception {
        Document svg = parsed(chart("own")
                .area("low", Ink.BLUE, SLOPE, SLOPE)
                .area("high", Ink.GREEN, SLOPE, SLOPE)
                .line("slope", Ink.BLACK, SLOPE));
        List<String> ids = new ArrayList<>(all(svg, "pattern", "id"));
        ids.addAll(all(svg, "clipPath", "id"));
        assertThat(ids).doesNotHaveDuplicates().allMatch(id -> id.startsWith("own-"));
        Pattern.compile("url\\(#([^)]*)\\)")
                .matcher(chart("own").area("low", Ink.BLUE, SLOPE, SLOPE).svg().render())
                .results()
                .forEach(match -> assertThat(ids).contains(match.group(1)));
    }

    @Test
    void inksDifferInMoreThanColour() {
        for (Ink one : Ink.values()) {
            for (Ink other : Ink.values()) {
                if (one != other) {
                    assertThat(one.stroke(new SvgTag("path")).render().replace(one.colour(), ""))
                            .isNotEqualTo(
                                    other.stroke(new SvgTag("path")).render().replace(other.colour(), ""));
                }
            }
        }
    }

    /** Contrast of 3 to 1 against white, as the Web Content Accessibility Guidelines 2.1, 1.4.11, ask of graphics. */
    @Test
    void everyInkIsDarkEnoughOnWhite() {
        for (Ink ink : Ink.values()) {
            int rgb = Integer.parseInt(ink.colour().substring(1), 16);
            double luminance =
                    0.2126 * linear(rgb >> 16) + 0.7152 * linear(rgb >> 8 & 255) + 0.0722 * linear(rgb & 255);
            assertThat(1.05 / (luminance + 0.05)).as(ink.name()).isGreaterThan(3);
        }
    }

    private static double linear(int channel) {
        double share = channel / 255.0;
        return share <= 0.03928 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }

    @Test
    void contoursWhoseWordsWouldOverlapAreLeftOut() throws Exception {
        LineChart chart = chart("a");
        for (double lift : new double[] {0, 1, 30}) {
            chart.contour("at " + lift, List.of(new Point(0, 10 + lift), new Point(10, 20 + lift)));
        }
        String svg = chart.svg().render();
        assertThat(svg).contains("at 0.0", "at 30.0").doesNotContain("at 1.0");
    }

    @Test
    void aPageNeedsNothingFromAnywhereAndEscapesWhatItIsGiven() {
        String html = new Page("a < b & c", List.of("<script>"))
                .lead("lead")
                .section(
                        "part",
                        chart("a").line("x<y", Ink.BLUE, SLOPE).svg(),
                        new DataTable(1, "name", "n").row("<b>", "1").strong().html())
                .caution("caution")
                .html();
        assertThat(html)
                .startsWith("<!DOCTYPE html>")
                .contains("a &lt; b &amp; c", "&lt;script&gt;", "&lt;b&gt;", "x&lt;y", "@page", "@media print")
                .doesNotContain("<script", "<link", "<img", "@import", "src=");
        assertThat(html.replace("http://www.w3.org/2000/svg", "")).doesNotContain("http:", "https:");
    }

    @Test
    void aRowOfTheWrongLengthIsRefused() {
        assertThatThrownBy(() -> new DataTable(1, "a", "b").row("only one"))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
