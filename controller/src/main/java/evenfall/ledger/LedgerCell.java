package evenfall.ledger;

import evenfall.sense.Unknown;
import org.jspecify.annotations.Nullable;

/**
 * A finished distance cell: what each row under the boom got in it. Never changes; compared by identity.
 *
 * <p>Rows are counted from the left, 0 the leftmost under the boom's own width. A row's <em>own</em> amount is what this pass put on it;
 * its <em>share</em> is all that it has got, earlier passes or mirror images among it, over the target rate.
 */
public final class LedgerCell {
    private final Span span;
    private final Ages ages;
    private final @Nullable CellPlace place;
    private final @Nullable Unknown placeUnknown;
    private final Beside beside;
    private final double firstRowRightM;
    private final double rowM;
    private final double nitrogenKgpM3;
    private final double[] ownM3;
    private final double[] share;
    /** {@linkplain GroundState#code Codes}: a fifth of what the states themselves would take. */
    private final byte[] state;

    private final @Nullable Unknown rowsUnknown;
    private final @Nullable LeafContact leaf;
    private final LedgerTotals totals;

    /**
     * Which cell it is.
     *
     * @param finishedUs event time, µs
     * @param pass number of the pass, from 1
     * @param cell number of the cell in its pass, from 0
     * @param fromM where it begins, m of way since the pass began
     * @param lengthM m; a pass's last cell may be shorter
     */
    public record Span(long finishedUs, int pass, int cell, double fromM, double lengthM) {}

    /**
     * Age of the oldest input of each kind at any moment in the cell, µs; -1 where there was none.
     *
     * @param flowUs of the flow
     * @param speedUs of the speed
     * @param heightsUs of the oldest height
     * @param placeUs of the fix
     */
    public record Ages(long flowUs, long speedUs, long heightsUs, long placeUs) {
        static final Ages NONE = new Ages(-1, -1, -1, -1);

        Ages oldest(Ages other) {
            return oldest(other.flowUs, other.speedUs, other.heightsUs, other.placeUs);
        }

        Ages oldest(long otherFlowUs, long otherSpeedUs, long otherHeightsUs, long otherPlaceUs) {
            boolean none = otherFlowUs <= flowUs
                    && otherSpeedUs <= speedUs
                    && otherHeightsUs <= heightsUs
                    && otherPlaceUs <= placeUs;
            return none
                    ? this
                    : new Ages(
                            Math.max(flowUs, otherFlowUs),
                            Math.max(speedUs, otherSpeedUs),
                            Math.max(heightsUs, otherHeightsUs),
                            Math.max(placeUs, otherPlaceUs));
        }
    }

    /**
     * Where the antenna was when the cell was finished.
     *
     * @param latitudeDeg degrees, north positive
     * @param longitudeDeg degrees, east positive
     * @param courseDeg from true north, clockwise, degrees
     */
    public record CellPlace(double latitudeDeg, double longitudeDeg, double courseDeg) {}

    /**
     * What lies on either side.
     *
     * @param leftDriven whether an earlier pass is known to lie beside the left end; where not, it is taken to mirror this one
     * @param rightDriven the same for the right end
     * @param overlapM width that an earlier pass had treated; counts only where {@code unknown} is null
     * @param missedM width left out between this pass and an earlier one, likewise
     * @param unknown why neither is known; null where they are
     */
    public record Beside(
            boolean leftDriven,
            boolean rightDriven,
            double overlapM,
            double missedM,
            @Nullable PlaceDoubt unknown) {}

    /** The arrays become the cell's own. */
    LedgerCell(
            Span span,
            Ages ages,
            @Nullable CellPlace place,
            @Nullable Unknown placeUnknown,
            Beside beside,
            double firstRowRightM,
            double rowM,
            double nitrogenKgpM3,
            double[] ownM3,
            double[] share,
            byte[] state,
            @Nullable Unknown rowsUnknown,
            @Nullable LeafContact leaf,
            LedgerTotals totals) {
        this.span = span;
        this.ages = ages;
        this.place = place;
        this.placeUnknown = placeUnknown;
        this.beside = beside;
        this.firstRowRightM = firstRowRightM;
        this.rowM = rowM;
        this.nitrogenKgpM3 = nitrogenKgpM3;
        this.ownM3 = ownM3;
        this.share = share;
        this.state = state;
        this.rowsUnknown = rowsUnknown;
        this.leaf = leaf;
        this.totals = totals;
    }

    public Span span() {
        return span;
    }

    public Ages ages() {
        return ages;
    }

    /** Null where it is not known, for the reason that {@link #placeUnknown} gives. */
    public @Nullable CellPlace place() {
        return place;
    }

    public @Nullable Unknown placeUnknown() {
        return placeUnknown;
    }

    public Beside beside() {
        return beside;
    }

    /** How many rows lie under the boom's own width. */
    public int rows() {
        return share.length;
    }

    /** Place of a row, m right of the centre line. */
    public double rowRightM(int row) {
        return firstRowRightM + row * rowM;
    }

    /** What this pass put on a row, litres; of a row that is not known, the part that is. */
    public double litres(int row) {
        return 1000 * ownM3[row];
    }

    /** Nitrogen in it, kg. */
    public double nitrogenKg(int row) {
        return ownM3[row] * nitrogenKgpM3;
    }

    /** What a row got against the target. */
    public GroundState state(int row) {
        return GroundState.ofCode(state[row]);
    }

    /** What a row has got over the target rate, a ratio; asked for only where it is known. */
    public double share(int row) {
        if (state(row) == GroundState.NOT_KNOWN) {
            throw new IllegalStateException("asked for what a row got that is not known");
        }
        return share[row];
    }

    /** Why rows are not known, by the leftmost of them; null where all are. */
    public @Nullable Unknown rowsUnknown() {
        return rowsUnknown;
    }

    /** Null where nothing fell or it is not known. */
    public @Nullable LeafContact leaf() {
        return leaf;
    }

    /** Sums since the core was started, this cell among them. */
    public LedgerTotals totals() {
        return totals;
    }
}
