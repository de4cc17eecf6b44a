package evenfall.pattern;

import evenfall.outlet.OutletType;
import evenfall.outlet.Stream;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What one outlet type does on a level boom at one height: the desk's question.
 *
 * <p>Measures are over the interior rows, {@code |r_j| ≤ W/2 − reach} with {@code W = n · spacing} and {@code reach = max |y_i| +
 * w}: rows that no end of the boom can touch.
 *
 * @param heightM height of the outlets over the ground, m
 * @param lines where one outlet's streams land
 * @param rows the interior rows, left to right
 * @param rowMeasures null where no interior row is fed
 * @param lineMeasures null where fewer than two lines lie in the interior
 * @param grooveCv the broadcast measure: sample CV over 100 mm grooves of the same interior, each line falling whole into its
 *     groove; null as {@code rowMeasures}
 */
public record StaticPattern(
        double heightM,
        List<Line> lines,
        List<Row> rows,
        @Nullable RowMeasures rowMeasures,
        @Nullable LineMeasures lineMeasures,
        @Nullable Double grooveCv) {

    /** Groove width of a patternator, m. */
    public static final double GROOVE_M = 0.1;

    /**
     * One outlet's landing line.
     *
     * @param rightM m right of the outlet
     * @param backM m behind it
     * @param share of the outlet's flow
     */
    public record Line(double rightM, double backM, double share) {}

    /**
     * One row.
     *
     * @param atM m right of the boom's centre line
     * @param share what it got over the mean of the interior rows
     */
    public record Row(double atM, double share) {}

    /**
     * The boom and its rows.
     *
     * @param outlets how many, at least 1
     * @param spacingM between outlets, m
     * @param rowM row spacing, m
     * @param rowPhase place of row 0, in row spacings right of the centre line
     */
    public record Layout(int outlets, double spacingM, double rowM, double rowPhase) {
        public double widthM() {
            return outlets * spacingM;
        }

        /** Place of an outlet, m right of the centre line. */
        public double outletRightM(int outlet) {
            return (outlet - 0.5 * (outlets - 1)) * spacingM;
        }
    }

    /**
     * @param type outlet as fitted
     * @param layout boom and rows
     * @param heightM height of the outlets over the ground, m; below 0 each stream lands at its own hole
     * @param pressurePa pressure at the outlets, Pa
     * @param specificGravity of the product
     */
    public static StaticPattern of(
            OutletType type, Layout layout, double heightM, double pressurePa, double specificGravity) {
        double factor = type.speedFactor(pressurePa, specificGravity);
        List<Line> lines = new ArrayList<>();
        double farM = 0;
        for (Stream stream : type.streams()) {
            double exitMps = stream.exitMps() * factor;
            double flightS = Flight.timeS(exitMps * stream.downPart(), heightM);
            double rightM = stream.offsetM() + exitMps * stream.rightPart() * flightS;
            lines.add(new Line(rightM, exitMps * stream.backPart() * flightS, stream.share()));
            farM = Math.max(farM, Math.abs(rightM));
        }
        double halfM = 0.5 * layout.widthM();
        double interiorM = halfM - (farM + layout.rowM());
        Rows rows = new Rows(layout.rowM(), layout.rowPhase(), halfM + farM);
        Lines all = new Lines(layout.outlets() * lines.size());
        int grooves = 2 * (int) Math.floor(Math.max(0, interiorM) / GROOVE_M);
        double[] groove = new double[grooves];
        int slot = 0;
        for (int outlet = 0; outlet < layout.outlets(); outlet++) {
            for (Line line : lines) {
                double atM = layout.outletRightM(outlet) + line.rightM();
                rows.add(atM, line.share());
                all.add(slot++, atM, line.share(), outlet);
                int bin = (int) Math.floor(atM / GROOVE_M) + grooves / 2;
                if (bin >= 0 && bin < grooves) {
                    groove[bin] += line.share();
                }
            }
        }
        int from = rows.firstAtOrRightOf(-interiorM);
        int to = rows.endAtOrLeftOf(interiorM);
        return new StaticPattern(
                heightM,
                List.copyOf(lines),
                relative(rows, from, to),
                rows.measures(from, to),
                all.measure(-interiorM, interiorM, layout.rowM() / 4),
                coefficientOfVariation(groove));
    }

    private static List<Row> relative(Rows rows, int from, int to) {
        double sum = 0;
        for (int j = from; j < to; j++) {
            sum += rows.amount(j);
        }
        double mean = to > from ? sum / (to - from) : 0;
        List<Row> list = new ArrayList<>();
        for (int j = from; j < to && mean > 0; j++) {
            list.add(new Row(rows.rightM(j), rows.amount(j) / mean));
        }
        return List.copyOf(list);
    }

    /** Sample CV (n − 1); null for fewer than two values or a mean that is not above 0. */
    static @Nullable Double coefficientOfVariation(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        double mean = sum / values.length;
        if (values.length < 2 || !(mean > 0)) {
            return null;
        }
        double squares = 0;
        for (double value : values) {
            squares += (value - mean) * (value - mean);
        }
        return Math.sqrt(squares / (values.length - 1)) / mean;
    }
}
