package evenfall.sim.elevation;

import evenfall.config.ConfigException;
import evenfall.config.FileCheck;
import evenfall.sim.ground.ElevationGrid;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.StringTokenizer;
import org.jspecify.annotations.Nullable;

/**
 * Reads an Esri ASCII grid (.asc), which every GIS program writes: a head of keys ({@code ncols}, {@code nrows},
 * {@code xllcorner} or {@code xllcenter}, {@code yllcorner} or {@code yllcenter}, {@code cellsize}, perhaps
 * {@code NODATA_value}), then the heights in metres from the north-west corner, row by row.
 *
 * <p>A reader of our own: the Java libraries that read it are parts of large GIS kits, and none of them says at
 * which line a file is wrong.
 */
public final class ElevationFile {

    /** A larger file is not one field. */
    public static final long LARGEST_BYTES = 64_000_000;

    /** More cells than this are not needed for waves of many metres. */
    public static final int MOST_CELLS = 2_000_000;

    private static final List<String> KEYS =
            List.of("ncols", "nrows", "xllcorner", "xllcenter", "yllcorner", "yllcenter", "cellsize", "nodata_value");
    private static final double NO_DATA_BY_DEFAULT = -9999;
    private static final double LOWEST_M = -500;
    private static final double HIGHEST_M = 9000;

    private final String file;
    private final String[] lines;
    private final @Nullable String[] head = new String[KEYS.size()];
    private final int[] headLine = new int[KEYS.size()];

    private ElevationFile(String file, String text) {
        this.file = file;
        this.lines = text.split("\r?\n|\r", -1);
    }

    /** @throws ConfigException when it is absent, too large, or not such a grid */
    public static ElevationGrid read(Path file) throws ConfigException {
        String name = file.toString();
        try {
            FileCheck.isReadable(file, name, "the path of a readable file");
            if (Files.size(file) > LARGEST_BYTES) {
                throw new ConfigException(
                        name, 0, null, "is too large", "an ASCII grid of at most " + LARGEST_BYTES + " bytes");
            }
            return parse(name, Files.readString(file, StandardCharsets.ISO_8859_1));
        } catch (IOException e) {
            throw new ConfigException(name, 0, null, "cannot be read (" + FileCheck.reason(e) + ")", "a readable file");
        }
    }

    /**
     * Reads text that is in hand already.
     *
     * @param name what to call the text in complaints
     * @throws ConfigException when it is not such a grid
     */
    public static ElevationGrid parse(String name, String text) throws ConfigException {
        return new ElevationFile(name, text).grid();
    }

    private ElevationGrid grid() throws ConfigException {
        int body = readHead();
        int columns = wholeNumber("ncols");
        int rows = wholeNumber("nrows");
        if ((long) columns * rows > MOST_CELLS) {
            throw wrong(
                    headLine[KEYS.indexOf("nrows")],
                    "nrows",
                    columns + " by " + rows + " cells are too many",
                    "at most " + MOST_CELLS + " cells; cut the field out of the map or take larger cells");
        }
        double cell = number("cellsize");
        if (!(cell >= 0.1 && cell <= 1000)) {
            throw wrong(
                    headLine[KEYS.indexOf("cellsize")],
                    "cellsize",
                    text("cellsize") + " is not the side of a cell in metres",
                    "0.1 to 1000; a grid in degrees must be projected first");
        }
        double west = corner("xllcorner", "xllcenter", cell);
        double south = corner("yllcorner", "yllcenter", cell);
        return new ElevationGrid(columns, rows, west, south, cell, readBody(body, columns, rows));
    }

    /** Reads the keys; answers the index of the first line of heights. */
    private int readHead() throws ConfigException {
        for (int i = 0; i < lines.length; i++) {
            StringTokenizer words = new StringTokenizer(lines[i]);
            if (!words.hasMoreTokens()) {
                continue;
            }
            String first = words.nextToken();
            if (!Character.isLetter(first.charAt(0))) {
                return i;
            }
            int key = KEYS.indexOf(first.toLowerCase(Locale.ROOT));
            if (key < 0) {
                throw wrong(i + 1, null, brief(first) + " is not known here", String.join(", ", KEYS));
            }
            if (head[key] != null) {
                throw wrong(i + 1, KEYS.get(key), "stands twice", "each key once");
            }
            if (words.countTokens() != 1) {
                throw wrong(i + 1, KEYS.get(key), "has " + words.countTokens() + " values", "one number");
            }
            head[key] = words.nextToken();
            headLine[key] = i + 1;
        }
        return lines.length;
    }

    private double[] readBody(int from, int columns, int rows) throws ConfigException {
        double noData = head[KEYS.indexOf("nodata_value")] == null ? NO_DATA_BY_DEFAULT : number("nodata_value");
        int cells = columns * rows;
        double[] southFirst = new double[cells];
        int n = 0;
        for (int i = from; i < lines.length; i++) {
            StringTokenizer words = new StringTokenizer(lines[i]);
            while (words.hasMoreTokens()) {
                String word = words.nextToken();
                int row = n / columns;
                int column = n % columns;
                if (n == cells) {
                    throw wrong(i + 1, null, "holds more heights than ncols times nrows", cells + " heights");
                }
                String place = "row " + (row + 1) + " column " + (column + 1);
                double height = number(word, i + 1, place);
                if (height == noData) {
                    throw wrong(
                            i + 1,
                            place,
                            word + " means that no height is known",
                            "a height in every cell; fill the gaps or cut the grid smaller");
                }
                if (!(height >= LOWEST_M && height <= HIGHEST_M)) {
                    throw wrong(i + 1, place, word + " is no height on land", LOWEST_M + " to " + HIGHEST_M + " m");
                }
                southFirst[(rows - 1 - row) * columns + column] = height;
                n++;
            }
        }
        if (n < cells) {
            throw wrong(
                    lines.length,
                    null,
                    "ends after " + n + " heights",
                    cells + " heights: ncols " + columns + " times nrows " + rows);
        }
        return southFirst;
    }

    private double corner(String cornerKey, String centreKey, double cell) throws ConfigException {
        boolean hasCorner = head[KEYS.indexOf(cornerKey)] != null;
        boolean hasCentre = head[KEYS.indexOf(centreKey)] != null;
        if (hasCorner && hasCentre) {
            throw wrong(headLine[KEYS.indexOf(centreKey)], centreKey, "stands beside " + cornerKey, "one of the two");
        }
        return hasCentre ? number(centreKey) : number(cornerKey) + cell / 2;
    }

    private int wholeNumber(String key) throws ConfigException {
        String word = text(key);
        int line = headLine[KEYS.indexOf(key)];
        double value = number(word, line, key);
        if (!(value >= 2 && value <= MOST_CELLS && value == Math.rint(value))) {
            throw wrong(line, key, brief(word) + " cannot be used", "a whole number from 2 to " + MOST_CELLS);
        }
        return (int) value;
    }

    private double number(String key) throws ConfigException {
        return number(text(key), headLine[KEYS.indexOf(key)], key);
    }

    private String text(String key) throws ConfigException {
        String word = head[KEYS.indexOf(key)];
        if (word == null) {
            throw wrong(0, key, "is missing", "a head with ncols, nrows, xllcorner, yllcorner and cellsize");
        }
        return word;
    }

    private double number(String word, int line, String place) throws ConfigException {
        for (int i = 0; i < word.length(); i++) {
            if ("0123456789+-.eE".indexOf(word.charAt(i)) < 0) {
                throw wrong(line, place, brief(word) + " is not a number", "a number with a decimal point");
            }
        }
        try {
            double value = Double.parseDouble(word);
            if (!Double.isInfinite(value)) {
                return value;
            }
        } catch (NumberFormatException e) {
            // Said below.
        }
        throw wrong(line, place, brief(word) + " is not a number", "a number with a decimal point");
    }

    private ConfigException wrong(int line, @Nullable String place, String wrong, String allowed) {
        return new ConfigException(file, line, place, wrong, allowed);
    }

    private static String brief(String word) {
        return word.length() > 40 ? word.substring(0, 40) + "…" : word;
    }
}
