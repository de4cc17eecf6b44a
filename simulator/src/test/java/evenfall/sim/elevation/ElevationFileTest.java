package evenfall.sim.elevation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenfall.config.ConfigException;
import evenfall.sim.ground.ElevationGrid;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ElevationFileTest {

    private static final String GOOD = """
            ncols        3
            nrows        2
            xllcorner    500000.0
            yllcorner    4650000.0
            cellsize     10
            NODATA_value -9999
            11 12 13.5
            1 2 3e0
            """;

    @Test
    void theFirstRowIsTheNorthernOneAndCornersAreHalfACellFromTheMiddles() throws ConfigException {
        ElevationGrid grid = ElevationFile.parse("field.asc", GOOD);
        assertThat(grid.columns()).isEqualTo(3);
        assertThat(grid.rows()).isEqualTo(2);
        assertThat(grid.westM()).isEqualTo(500_005);
        assertThat(grid.southM()).isEqualTo(4_650_005);
        assertThat(grid.elevationM(500_005, 4_650_005)).isCloseTo(1, within(1e-12));
        assertThat(grid.elevationM(500_025, 4_650_005)).isCloseTo(3, within(1e-12));
        assertThat(grid.elevationM(500_025, 4_650_015)).isCloseTo(13.5, within(1e-12));
    }

    @Test
    void middlesCapitalsAndBrokenLinesAreRead() throws ConfigException {
        ElevationGrid grid = ElevationFile.parse(
                "field.asc", "NCOLS 2\r\nNROWS 2\r\nXLLCENTER 5\r\nYLLCENTER 6\r\nCELLSIZE 1\r\n1 2 3\r\n\r\n4\r\n");
        assertThat(grid.westM()).isEqualTo(5);
        assertThat(grid.elevationM(5, 6)).isCloseTo(3, within(1e-12));
        assertThat(grid.elevationM(6, 7)).isCloseTo(2, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '"', textBlock = """
            ncols        3   | ncols 3.5          | field.asc:1: ncols: 3.5 cannot be used; allowed: a whole number from 2 to 2000000
            ncols        3   | ncols 1            | field.asc:1: ncols: 1 cannot be used; allowed: a whole number from 2 to 2000000
            ncols        3   | ncols 3 4          | field.asc:1: ncols: has 2 values; allowed: one number
            ncols        3   | columns 3          | field.asc:1: columns is not known here; allowed: ncols, nrows, xllcorner, xllcenter, yllcorner, yllcenter, cellsize, nodata_value
            nrows        2   | ncols 2            | field.asc:2: ncols: stands twice; allowed: each key once
            nrows        2   | nrows 2000000      | field.asc:2: nrows: 3 by 2000000 cells are too many; allowed: at most 2000000 cells; cut the field out of the map or take larger cells
            nrows        2   | nrows 3            | field.asc:9: ends after 6 heights; allowed: 9 heights: ncols 3 times nrows 3
            cellsize     10  | cellsize 0.0002777 | field.asc:5: cellsize: 0.0002777 is not the side of a cell in metres; allowed: 0.1 to 1000; a grid in degrees must be projected first
            cellsize     10  | ""                 | field.asc: cellsize: is missing; allowed: a head with ncols, nrows, xllcorner, yllcorner and cellsize
            cellsize     10  | xllcenter 3        | field.asc: cellsize: is missing; allowed: a head with ncols, nrows, xllcorner, yllcorner and cellsize
            1 2 3e0          | 1 2                | field.asc:9: ends after 5 heights; allowed: 6 heights: ncols 3 times nrows 2
            1 2 3e0          | 1 2 3 4            | field.asc:8: holds more heights than ncols times nrows; allowed: 6 heights
            1 2 3e0          | 1 2,5 3            | field.asc:8: row 2 column 2: 2,5 is not a number; allowed: a number with a decimal point
            1 2 3e0          | 1 2 -9999          | field.asc:8: row 2 column 3: -9999 means that no height is known; allowed: a height in every cell; fill the gaps or cut the grid smaller
            1 2 3e0          | 1 2 1e5            | field.asc:8: row 2 column 3: 1e5 is no height on land; allowed: -500.0 to 9000.0 m
            1 2 3e0          | 1 2 1e999          | field.asc:8: row 2 column 3: 1e999 is not a number; allowed: a number with a decimal point
            """)
    void aBadFileIsNamedWithItsLineWhatIsWrongAndWhatIsAllowed(String good, String bad, String message) {
        assertThat(GOOD).contains(good);
        assertThatThrownBy(() -> ElevationFile.parse("field.asc", GOOD.replace(good, bad)))
                .isInstanceOf(ConfigException.class)
                .hasMessage(message);
    }

    @Test
    void bothACornerAndAMiddleAreOneTooMany() {
        assertThatThrownBy(() -> ElevationFile.parse("field.asc", "xllcenter 1\n" + GOOD))
                .hasMessage("field.asc:1: xllcenter: stands beside xllcorner; allowed: one of the two");
    }

    @Test
    void aFileIsReadFromTheDisk(@TempDir Path folder) throws IOException, ConfigException {
        Path file = folder.resolve("field.asc");
        assertThatThrownBy(() -> ElevationFile.read(file))
                .hasMessage(file + ": there is no such file; allowed: the path of a readable file");
        Files.writeString(file, GOOD);
        assertThat(ElevationFile.read(file).columns()).isEqualTo(3);
    }
}
