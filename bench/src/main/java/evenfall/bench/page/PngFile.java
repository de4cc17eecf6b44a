package evenfall.bench.page;

import com.github.weisj.jsvg.SVGDocument;
import com.github.weisj.jsvg.parser.LoaderContext;
import com.github.weisj.jsvg.parser.SVGLoader;
import com.github.weisj.jsvg.view.FloatSize;
import com.github.weisj.jsvg.view.ViewBox;
import java.awt.Color;
import java.awt.Component;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import javax.imageio.ImageIO;

/** A picture as PNG, for what takes no SVG. Letters need a font on the machine. */
public final class PngFile {
    /** Pixels for a unit of the chart: 1440 across, enough for a slide and for 180 mm at 200 dots an inch. */
    private static final double SCALE = 2;

    private PngFile() {}

    /**
     * @throws IOException where the picture cannot be drawn, in one line
     */
    public static byte[] of(Picture picture) throws IOException {
        SVGDocument document = new SVGLoader()
                .load(
                        new ByteArrayInputStream(picture.svg().getBytes(StandardCharsets.UTF_8)),
                        null,
                        LoaderContext.createDefault());
        if (document == null) {
            throw new IOException("the picture " + picture.name() + " cannot be drawn as PNG");
        }
        FloatSize size = document.size();
        int wide = (int) Math.ceil(SCALE * size.width);
        int high = (int) Math.ceil(SCALE * size.height);
        BufferedImage image = new BufferedImage(wide, high, BufferedImage.TYPE_INT_RGB);
        Graphics2D onto = image.createGraphics();
        try {
            onto.setColor(Color.WHITE);
            onto.fillRect(0, 0, wide, high);
            onto.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            onto.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
            onto.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
            document.render((Component) null, onto, new ViewBox(0, 0, wide, high));
        } finally {
            onto.dispose();
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(image, "png", out);
        return out.toByteArray();
    }
}
