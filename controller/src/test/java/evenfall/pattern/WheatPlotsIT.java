package evenfall.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/**
 * The coefficient of variation on real cereal data: grain of 500 wheat plots, W. B. Mercer and A. D. Hall, "The experimental error of
 * field trials", Journal of Agricultural Science 4 (1911), as Debian's package r-cran-spdata carries it (shapes/wheat.dbf, CC0-1.0).
 * {@code bench/verify} unpacks it.
 */
class WheatPlotsIT {
    private static final Path DATA = Path.of("target", "open-data", "wheat.dbf");

    @Test
    void fiveHundredPlotsVaryByElevenPointSixPerCent() throws IOException {
        assertThat(DATA)
                .as("open data of Debian's r-cran-spdata is not unpacked; bench/verify does that")
                .isRegularFile();
        double[] pounds = column("yield");

        assertThat(pounds).hasSize(500).startsWith(3.63, 4.15, 4.06);
        assertThat(Arrays.stream(pounds).sum()).isCloseTo(1974.32, within(1e-6));
        // Mean 3.95 and standard deviation 0.458 in the paper, from memory; recomputed from the data: 11.606011 %.
        assertThat(RowMeasures.of(pounds, 0, pounds.length).rowCv()).isCloseTo(0.11606011, within(5e-9));
    }

    /** Reads a numeric column of a dBase III table: a header of 32 bytes, 32 bytes a field, records of fixed-width text. */
    private static double[] column(String name) throws IOException {
        ByteBuffer table = ByteBuffer.wrap(Files.readAllBytes(DATA)).order(ByteOrder.LITTLE_ENDIAN);
        int records = table.getInt(4);
        int headerBytes = table.getShort(8);
        int recordBytes = table.getShort(10);
        int offset = 1;
        for (int field = 32; table.get(field) != 0x0D; field += 32) {
            int width = table.get(field + 16) & 0xFF;
            if (text(table, field, 11).split("\0")[0].equals(name)) {
                double[] values = new double[records];
                for (int i = 0; i < records; i++) {
                    values[i] = Double.parseDouble(text(table, headerBytes + i * recordBytes + offset, width)
                            .trim());
                }
                return values;
            }
            offset += width;
        }
        throw new IOException(DATA + " has no column " + name);
    }

    private static String text(ByteBuffer table, int at, int length) {
        return new String(table.array(), at, length, StandardCharsets.US_ASCII);
    }
}
