package evenfall.bench.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.util.Base64;
import java.util.List;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;

class PictureTest {
    private static final Raster HALVES =
            new Raster(2, 2, (column, row) -> row == 1 && column == 1 ? null : row == 0 ? 0.0 : 2.0);

    private static LineChart chart() {
        return new LineChart("m", "A map", Axis.of("x", 0, 10), Axis.of("y", 0, 10), 100).raster(HALVES, 0, 10, 0, 10);
    }

    private static Document parsed(String svg) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    }

    @Test
    void anSvgFileStandsAlone() throws Exception {
        String svg = new Picture("map", chart().svg()).svg();
        assertThat(parsed(svg).getDocumentElement().getTagName()).isEqualTo("svg");
        assertThat(svg).contains(".grid {", ".axis {").doesNotContain("svg.chart");
        assertThat(svg.replace("http://www.w3.org/2000/svg", "")).doesNotContain("http");
    }

    /** The plot is 640 wide from 62 and 100 high from 14, by hand. */
    @Test
    void aRasterCoversItsStretchOfBothAxes() throws Exception {
        Element image = (Element)
                parsed(chart().svg().render()).getElementsByTagName("image").item(0);
        assertThat(image.getAttribute("x")).isEqualTo("62.0");
        assertThat(image.getAttribute("y")).isEqualTo("14.0");
        assertThat(image.getAttribute("width")).isEqualTo("640.0");
        assertThat(image.getAttribute("height")).isEqualTo("100.0");
    }

    @Test
    void cellsHaveTheirColoursAndWhatIsNotKnownIsHatched() throws Exception {
        String data = HALVES.dataUri();
        BufferedImage image = ImageIO.read(
                new ByteArrayInputStream(Base64.getDecoder().decode(data.substring(data.indexOf(',') + 1))));
        int right = image.getWidth() - 1;
        int foot = image.getHeight() - 1;
        assertThat(image.getRGB(0, 0) & 0xffffff).isEqualTo(ShareScale.rgb(0));
        assertThat(image.getRGB(right, 0) & 0xffffff).isEqualTo(ShareScale.rgb(0));
        assertThat(image.getRGB(0, foot) & 0xffffff).isEqualTo(ShareScale.rgb(2));
        List<Integer> unknown = List.of(
                image.getRGB(right, foot) & 0xffffff,
                image.getRGB(right - 3, foot) & 0xffffff,
                image.getRGB(right - 6, foot) & 0xffffff);
        assertThat(unknown).contains(0x9a9a9a, 0xe2e2e2);
    }

    /** What a browser would show, drawn by the library: white paper, the map's orange above and blue below. */
    @Test
    void aPngShowsWhatTheSvgSays() throws Exception {
        byte[] png = PngFile.of(new Picture("map", chart().svg()));
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
        assertThat(image.getWidth()).isEqualTo(1440);
        assertThat(image.getRGB(2, 2) & 0xffffff).isEqualTo(0xffffff);
        assertThat(image.getRGB(200, 60) & 0xffffff).isEqualTo(ShareScale.rgb(0));
        assertThat(image.getRGB(200, 200) & 0xffffff).isEqualTo(ShareScale.rgb(2));
    }

    @Test
    void aLaneHoldsItsBarAndWordsThatWouldOverlapAreLeftOut() throws Exception {
        LaneChart lanes = new LaneChart("Lanes", Axis.of("time, s", 0, 10), List.of("one", "two"))
                .bar(0, Ink.GREEN, 2, 4, false)
                .words(0, "first", 2)
                .words(0, "second", 2.1)
                .words(1, "third", 2);
        String svg = lanes.svg().render();
        parsed(svg);
        assertThat(svg).contains(">first<", ">third<", ">one<", ">two<").doesNotContain("second");
    }
}
