package evenfall.bench.page;

import static j2html.TagCreator.each;
import static j2html.TagCreator.table;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.tr;

import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;

/** A table: words to the left, numbers to the right. */
public final class DataTable {
    private final int leftColumns;
    private final List<String> head;
    private final List<List<String>> rows = new ArrayList<>();
    private int strongRow = -1;

    /**
     * @param leftColumns how many columns from the left hold words
     * @param head names of the columns
     */
    public DataTable(int leftColumns, String... head) {
        this.leftColumns = leftColumns;
        this.head = List.of(head);
    }

    public DataTable row(String... cells) {
        if (cells.length != head.size()) {
            throw new IllegalArgumentException("a row of " + cells.length + " cells under " + head.size());
        }
        rows.add(List.of(cells));
        return this;
    }

    /** Sets the last row in bold. */
    public DataTable strong() {
        strongRow = rows.size() - 1;
        return this;
    }

    public DomContent html() {
        List<DomContent> heads = new ArrayList<>();
        for (int c = 0; c < head.size(); c++) {
            heads.add(th(head.get(c)).withClass(side(c)).attr("scope", "col"));
        }
        List<DomContent> body = new ArrayList<>();
        for (int r = 0; r < rows.size(); r++) {
            List<DomContent> cells = new ArrayList<>();
            for (int c = 0; c < head.size(); c++) {
                cells.add(td(rows.get(r).get(c)).withClass(side(c)));
            }
            body.add(tr(each(cells.stream())).withCondClass(r == strongRow, "strong"));
        }
        return table(thead(tr(each(heads.stream()))), tbody(each(body.stream())));
    }

    private String side(int column) {
        return column < leftColumns ? "words" : "number";
    }
}
