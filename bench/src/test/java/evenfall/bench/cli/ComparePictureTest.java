package evenfall.bench.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

class ComparePictureTest {
    @TempDir
    Path folder;

    @Test
    void typesForgiveInTheOrderThatPracticeKnowsAndThePictureHoldsAStripOfEach() throws Exception {
        Path file = folder.resolve("ground.svg");
        Captured answer = Captured.run("compare", "terrace-crossing", "--json", "--picture", file.toString());
        assertThat(answer.status()).as(answer.err()).isZero();
        JsonNode outlets = new ObjectMapper().readTree(answer.out()).get("outlets");

        // Three-stream least, then five and six, seven to the rear, bar most (common practice, no source).
        double[] p95 = new double[5];
        for (int i = 0; i < 5; i++) {
            p95[i] = outlets.get(i).at("/truth/row_cv/p95").asDouble();
        }
        assertThat(p95[0]).isGreaterThan(Math.max(p95[1], p95[2]));
        assertThat(Math.min(p95[1], p95[2])).isGreaterThan(p95[3]);
        assertThat(p95[3]).isGreaterThan(p95[4]);

        Document svg = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(Files.newInputStream(file));
        var images = svg.getElementsByTagName("image");
        assertThat(images.getLength()).isEqualTo(5);
        for (int i = 0; i < 5; i++) {
            String data = ((Element) images.item(i)).getAttribute("href");
            byte[] png = Base64.getDecoder().decode(data.substring(data.indexOf(',') + 1));
            BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
            // Whole pixels for each row, 36.576 m of boom over rows of 0.1905 m, and for each cell of 2 m.
            assertThat(image.getHeight() % 192).isZero();
            assertThat(image.getWidth()
                            % outlets.get(i).at("/ground/row_cv_by_2_m").size())
                    .isZero();
        }
    }
}
