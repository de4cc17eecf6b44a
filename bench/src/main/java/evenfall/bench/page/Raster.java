package evenfall.bench.page;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import javax.imageio.ImageIO;
import org.jspecify.annotations.Nullable;

/**
 * A table of shares as a picture in the colours of {@link ShareScale}, a rectangle a cell; what is not known is hatched grey.
 *
 * @param columns at least 1
 * @param rows at least 1
 * @param cells what each cell holds
 */
public record Raster(int columns, int rows, Cells cells) {
    /** Finer than a screen shows and a printer prints, so that a picture that is drawn larger keeps its edges. */
    private static final int FINE_ACROSS = 1280;

    private static final int FINE_UP = 300;
    private static final int HATCH = 12;
    private static final int HATCH_DARK = 0x9a9a9a;
    private static final int HATCH_PALE = 0xe2e2e2;

    public Raster {
        if (columns < 1 || rows < 1) {
            throw new IllegalArgumentException("a raster of " + columns + " by " + rows + " cells");
        }
    }

    /** What the cells hold. */
    @FunctionalInterface
    public interface Cells {
        /**
         * @param column from 0, along the level axis
         * @param row from 0, the first at the top
         * @return a share, 1 where it is as meant; null where it is not known
         */
        @Nullable
        Double share(int column, int row);
    }

    /** Pixels for a column: enough that its edges stay sharp. */
    private int across() {
        return Math.max(1, FINE_ACROSS / columns);
    }

    private int up() {
        return Math.max(1, FINE_UP / rows);
    }

    /** The image of its own size, without a place. */
    SvgTag image() {
        return new SvgTag("image").attr("preserveAspectRatio", "none").attr("href", dataUri());
    }

    /** The picture as an address that holds it whole. */
    public String dataUri() {
        return "data:image/png;base64," + Base64.getEncoder().encodeToString(png());
    }

    private byte[] png() {
        int together = together();
        int shown = (columns + together - 1) / together;
        BufferedImage image = new BufferedImage(shown * across(), rows * up(), BufferedImage.TYPE_INT_RGB);
        for (int column = 0; column < shown; column++) {
            for (int row = 0; row < rows; row++) {
                paint(image, column * across(), row * up(), farthest(column * together, row));
            }
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, "png", out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /** How many columns share a pixel where there are more of them than pixels. */
    private int together() {
        return (columns + FINE_ACROSS - 1) / FINE_ACROSS;
    }

    /** Of the columns that share a pixel the one farthest from what is meant: a mean would hide it. */
    private @Nullable Double farthest(int from, int row) {
        Double farthest = null;
        for (int column = from; column < Math.min(columns, from + together()); column++) {
            Double share = cells.share(column, row);
            if (share != null && (farthest == null || Math.abs(share - 1) > Math.abs(farthest - 1))) {
                farthest = share;
            }
        }
        return farthest;
    }

    private void paint(BufferedImage image, int left, int top, @Nullable Double share) {
        int rgb = share == null ? 0 : ShareScale.rgb(share);
        for (int x = left; x < left + across(); x++) {
            for (int y = top; y < top + up(); y++) {
                boolean dark = (x + y) % HATCH < HATCH / 3;
                image.setRGB(x, y, share != null ? rgb : dark ? HATCH_DARK : HATCH_PALE);
            }
        }
    }
}
