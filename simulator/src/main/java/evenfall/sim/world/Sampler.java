package evenfall.sim.world;

import evenfall.rig.BoomLayout;
import evenfall.sim.jet.Landings;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/** Puts a truth sample together from the lines that fall at its moment. */
final class Sampler {
    private final RowGrid grid;
    private final double[] strip;
    private final LineOrder lineOrder;
    private final double hingeM;
    private final int rowsLeft;
    private final int rowsRight;
    private final int outletsLeft;
    private final int outletsRight;

    Sampler(BoomLayout boom) {
        grid = new RowGrid(boom);
        strip = new double[grid.length()];
        lineOrder = new LineOrder(boom.rowM());
        hingeM = boom.hingeM();
        int leftRows = 0;
        int inRows = 0;
        for (int j = 0; j < grid.count(); j++) {
            leftRows += grid.rightM(j) < -boom.hingeM() ? 1 : 0;
            inRows += grid.rightM(j) <= boom.hingeM() ? 1 : 0;
        }
        int leftOutlets = 0;
        int inOutlets = 0;
        for (int i = 0; i < boom.outlets(); i++) {
            leftOutlets += boom.outletRightM(i) < -boom.hingeM() ? 1 : 0;
            inOutlets += boom.outletRightM(i) <= boom.hingeM() ? 1 : 0;
        }
        rowsLeft = leftRows;
        rowsRight = inRows;
        outletsLeft = leftOutlets;
        outletsRight = inOutlets;
    }

    /** Takes the lines of the last step for what falls at its end. */
    void take(Falls falls, double stepsPerSecond) {
        Arrays.fill(strip, 0);
        int end = falls.places();
        int from = end - falls.outlets;
        Landings lines = falls.lines;
        lineOrder.take(lines, stepsPerSecond);
        for (int k = 0; k < lines.streams(); k++) {
            double[] rightM = lines.rightM()[k];
            double[] sigmaM = lines.sigmaM()[k];
            double[] quantity = lines.quantity()[k];
            for (int i = from; i < end; i++) {
                add(rightM[i], sigmaM[i], quantity[i] * stepsPerSecond);
            }
        }
        if (falls.leaks) {
            for (int i = from; i < end; i++) {
                add(falls.outletRightM[i], 0, falls.leakedM3[i] * stepsPerSecond);
            }
        }
    }

    private void add(double rightM, double sigmaM, double flowM3ps) {
        if (flowM3ps > 0) {
            grid.add(strip, rightM, sigmaM, flowM3ps);
            grid.addMirrored(strip, rightM, sigmaM, flowM3ps);
        }
    }

    TruthSample end(
            long timeUs,
            double xM,
            double speedMps,
            TruthSample.Flows flows,
            OptionalDouble rateError,
            double[] heightM) {
        int outlets = heightM.length;
        return new TruthSample(
                timeUs,
                xM,
                speedMps,
                flows,
                rateError,
                heightM,
                grid,
                Arrays.copyOfRange(strip, grid.margin(), grid.margin() + grid.count()),
                segment(
                        "boom",
                        heightM,
                        0,
                        outlets,
                        0,
                        grid.count(),
                        lineOrder.between(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY)),
                segments(heightM));
    }

    /** Left, centre and right, those that have outlets: a boom without a stiff centre has no centre. */
    private List<TruthSample.Segment> segments(double[] heightM) {
        List<TruthSample.Segment> segments = new ArrayList<>();
        if (outletsLeft > 0) {
            segments.add(segment(
                    "left",
                    heightM,
                    0,
                    outletsLeft,
                    0,
                    rowsLeft,
                    lineOrder.between(Double.NEGATIVE_INFINITY, -hingeM)));
        }
        if (outletsRight > outletsLeft) {
            segments.add(segment(
                    "centre",
                    heightM,
                    outletsLeft,
                    outletsRight,
                    rowsLeft,
                    rowsRight,
                    lineOrder.between(-hingeM, hingeM)));
        }
        if (heightM.length > outletsRight) {
            segments.add(segment(
                    "right",
                    heightM,
                    outletsRight,
                    heightM.length,
                    rowsRight,
                    grid.count(),
                    lineOrder.between(hingeM, Double.POSITIVE_INFINITY)));
        }
        return segments;
    }

    private TruthSample.Segment segment(
            String name, double[] heightM, int from, int to, int firstRow, int endRow, LineFigures lines) {
        double sum = 0;
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = from; i < to; i++) {
            sum += heightM[i];
            lowest = Math.min(lowest, heightM[i]);
            highest = Math.max(highest, heightM[i]);
        }
        return new TruthSample.Segment(
                name,
                sum / (to - from),
                lowest,
                highest,
                RowFigures.of(strip, grid.margin() + firstRow, grid.margin() + endRow),
                lines);
    }
}
