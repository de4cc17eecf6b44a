package evenfall.bench.report;

import java.util.ArrayList;
import java.util.List;

/** A table of text: the first column to the left, the others to the right, two spaces between. */
public final class TextTable {
    private final List<String[]> rows = new ArrayList<>();
    private final Paint paint;
    private final int leftColumns;

    /**
     * @param leftColumns how many columns from the left hold words and are set to the left
     * @param head the names of the columns
     */
    public TextTable(Paint paint, int leftColumns, String... head) {
        this.paint = paint;
        this.leftColumns = leftColumns;
        rows.add(head);
    }

    public TextTable row(String... cells) {
        if (cells.length != rows.get(0).length) {
            throw new IllegalArgumentException("a row of " + cells.length + " cells under " + rows.get(0).length);
        }
        rows.add(cells);
        return this;
    }

    /** The lines of the table, each with two spaces before it. */
    public List<String> lines() {
        int columns = rows.get(0).length;
        int[] width = new int[columns];
        for (String[] row : rows) {
            for (int c = 0; c < columns; c++) {
                width[c] = Math.max(width[c], Paint.width(row[c]));
            }
        }
        List<String> lines = new ArrayList<>();
        for (String[] row : rows) {
            StringBuilder line = new StringBuilder();
            for (int c = 0; c < columns; c++) {
                String gap = " ".repeat(width[c] - Paint.width(row[c]));
                line.append("  ").append(c < leftColumns ? row[c] + gap : gap + row[c]);
            }
            String text = line.toString().stripTrailing();
            lines.add(lines.isEmpty() ? paint.faint(text) : text);
        }
        return lines;
    }
}
