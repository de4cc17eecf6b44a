package evenfall.sim.world;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is true at one moment. Five a second. Compared by identity; never changes.
 *
 * <p>Row figures are those of the lines that fall at this moment, all rows of the boom's own width taken, with the adjoining passes as
 * mirror images; how far behind the boom a line falls plays no part (it does in the {@link RowLedger}).
 */
public final class TruthSample {
    private final long timeUs;
    private final double xM;
    private final double speedMps;
    private final double flowM3ps;
    private final double meterM3ps;
    private final double pressurePa;
    private final double feedPressurePa;
    private final double widthOnM;
    private final long sectionMask;
    private final OptionalDouble rateError;
    private final double[] heightM;
    private final RowGrid grid;
    private final double[] rowM3ps;
    private final Segment boom;
    private final List<Segment> segments;

    /**
     * A stretch of the boom.
     *
     * @param name {@code boom}, {@code left}, {@code centre} or {@code right}
     * @param meanHeightM mean height of its outlets over the ground, m
     * @param lowestHeightM its lowest outlet, m
     * @param highestHeightM its highest outlet, m
     * @param rows what its rows get; empty while nothing falls
     * @param lines how the lines lie that fall on it
     */
    public record Segment(
            String name,
            double meanHeightM,
            double lowestHeightM,
            double highestHeightM,
            Optional<RowFigures> rows,
            LineFigures lines) {}

    /**
     * What flows at one moment.
     *
     * @param outletsM3ps what leaves all outlets, m³/s
     * @param meterM3ps liquid through the meter, m³/s
     * @param pressurePa mean at the outlets that are on, Pa
     * @param feedPressurePa where the transmitter sits, Pa
     * @param widthOnM width that is switched on, m
     * @param sectionMask what is switched on, bit 0 is the leftmost section
     */
    record Flows(
            double outletsM3ps,
            double meterM3ps,
            double pressurePa,
            double feedPressurePa,
            double widthOnM,
            long sectionMask) {}

    TruthSample(
            long timeUs,
            double xM,
            double speedMps,
            Flows flows,
            OptionalDouble rateError,
            double[] heightM,
            RowGrid grid,
            double[] rowM3ps,
            Segment boom,
            List<Segment> segments) {
        this.timeUs = timeUs;
        this.xM = xM;
        this.speedMps = speedMps;
        this.flowM3ps = flows.outletsM3ps();
        this.meterM3ps = flows.meterM3ps();
        this.pressurePa = flows.pressurePa();
        this.feedPressurePa = flows.feedPressurePa();
        this.widthOnM = flows.widthOnM();
        this.sectionMask = flows.sectionMask();
        this.rateError = rateError;
        this.heightM = heightM.clone();
        this.grid = grid;
        this.rowM3ps = rowM3ps;
        this.boom = boom;
        this.segments = List.copyOf(segments);
    }

    /** µs since the start of the run. */
    public long timeUs() {
        return timeUs;
    }

    /** Distance driven, m. */
    public double xM() {
        return xM;
    }

    public double speedMps() {
        return speedMps;
    }

    /** What leaves all outlets, m³/s: what passes the meter, but for what the lines take up or give while the pressure changes. */
    public double flowM3ps() {
        return flowM3ps;
    }

    /** Liquid through the meter, m³/s: with what leaks from the line, and what the lines take up. */
    public double meterM3ps() {
        return meterM3ps;
    }

    /** Mean pressure at the outlets that are on, Pa. */
    public double pressurePa() {
        return pressurePa;
    }

    /** Pressure where the line enters the boom and the transmitter sits, Pa. */
    public double feedPressurePa() {
        return feedPressurePa;
    }

    /** Width that is switched on, m. */
    public double widthOnM() {
        return widthOnM;
    }

    /** Which sections are switched on, whatever their valves do; bit 0 is the leftmost. */
    public long sectionMask() {
        return sectionMask;
    }

    /**
     * {@code Q / (v · W on) / target − 1}, a ratio, at this moment; empty below {@link World#LEAST_RATE_SPEED_MPS} or with all sections
     * off, where it means nothing.
     */
    public OptionalDouble rateError() {
        return rateError;
    }

    public int outlets() {
        return heightM.length;
    }

    /** Height of an outlet over the ground under it, m; negative when it is in the ground. */
    public double heightM(int outlet) {
        return heightM[outlet];
    }

    /** How many rows lie under the boom's own width, those on its edges among them. */
    public int rows() {
        return rowM3ps.length;
    }

    /** Place of a row, m right of the centre line. */
    public double rowRightM(int row) {
        return grid.rightM(row);
    }

    /** What falls on a row at this moment, m³/s. */
    public double rowAmount(int row) {
        return rowM3ps[row];
    }

    /** The whole boom. */
    public Segment boom() {
        return boom;
    }

    /** Left, centre, right; the wings begin at the rig's hinge. One without outlets is left out. */
    public List<Segment> segments() {
        return segments;
    }
}
