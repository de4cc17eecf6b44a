package evenfall.pattern;

import evenfall.outlet.OutletType;
import evenfall.outlet.Stream;
import evenfall.rig.BoomLayout;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * What falls on the rows under a boom whose outlets stand at heights of their own: the field's question. Built once, computed
 * many times; nothing is allocated but the measures.
 *
 * <p>The adjoining pass is taken to mirror this one: beside each line near an end of the boom its mirror image counts too.
 *
 * <p>An outlet that is shut off, or whose height is not known, takes with it the rows that it could reach: they are left out of
 * every measure, for what they get is not this pattern's doing.
 */
public final class BoomPattern {
    private final BoomLayout boom;
    private final double halfWidthM;
    private final double designReachM;
    private final Rows rows;
    private final Lines lines;
    private final Fall fall;
    private final boolean[] rowLeftOut;
    private final double[] picked;
    private final double[] atRest;
    private final double[] offsetM;
    private final double[] downPart;
    private final double[] rightPart;
    private final double[] backPart;
    private final AirDrag[] drag;
    private final double[] exitMps;
    private final double[] share;

    /** For each stream the first that flies as it does, but perhaps to the other side: their time of flight is one sum. */
    private final int[] like;

    private final double[] carriedS;

    /** For how much longer it falls from a greater height, s/m. */
    private final double[] longerSpm;

    private double travelMps = Double.NaN;

    /**
     * @param boom boom and rows
     * @param type outlet as fitted
     * @param targetHeightM height that the boom is set to, m
     * @param specificGravity of the product
     */
    public BoomPattern(BoomLayout boom, OutletType type, double targetHeightM, double specificGravity) {
        this.boom = boom;
        int streams = type.streams().size();
        atRest = new double[boom.outlets()];
        offsetM = new double[streams];
        downPart = new double[streams];
        rightPart = new double[streams];
        backPart = new double[streams];
        drag = new AirDrag[streams];
        exitMps = new double[streams];
        share = new double[streams];
        for (int i = 0; i < streams; i++) {
            Stream stream = type.streams().get(i);
            offsetM[i] = stream.offsetM();
            downPart[i] = stream.downPart();
            rightPart[i] = stream.rightPart();
            backPart[i] = stream.backPart();
            double streamM3ps = stream.share() * type.ratedFlowM3ps();
            drag[i] = new AirDrag(streamM3ps, stream.exitMps(), specificGravity);
            exitMps[i] = stream.exitMps();
            share[i] = stream.share();
        }
        like = new int[streams];
        carriedS = new double[streams];
        longerSpm = new double[streams];
        for (int i = 0; i < streams; i++) {
            like[i] = firstLike(i);
        }
        halfWidthM = 0.5 * boom.widthM();
        rows = new Rows(boom.rowM(), boom.rowPhase(), halfWidthM);
        rowLeftOut = new boolean[rows.count()];
        picked = new double[rows.count()];
        // Each line near an end may bring its mirror image along.
        lines = new Lines(2 * boom.outlets() * streams);
        designReachM = reachM(targetHeightM, type.speedFactor(type.ratedPressurePa(), specificGravity));
        fall = new Fall(boom, feedsM());
    }

    /**
     * Lets every open outlet fall.
     *
     * @param heightM height of each outlet over the ground, m; read only where {@code heightKnown}
     * @param heightKnown whether it is known
     * @param open whether liquid comes out of it
     * @param speedFactor exit speed over the rated one, the same for all
     */
    public void compute(double[] heightM, boolean[] heightKnown, boolean[] open, double speedFactor) {
        compute(heightM, atRest, atRest, heightKnown, open, speedFactor, Double.NaN);
    }

    /**
     * As {@link #compute(double[], boolean[], boolean[], double)}, from outlets that rise and sink: a stream takes their speed along.
     * It goes on with the machine, over ground that rises and falls under it as under the outlet; so the speed that counts is that
     * over the ground.
     *
     * <p>Drops are slowed by the air, which stands over the field and so blows to the rear past the machine; see {@link AirDrag}.
     *
     * @param rateMps how fast each height grows, m/s; read only where {@code heightKnown}
     * @param travelMps ground speed, m/s; NaN for a flight without air
     */
    public void compute(
            double[] heightM,
            double[] rateMps,
            boolean[] heightKnown,
            boolean[] open,
            double speedFactor,
            double travelMps) {
        compute(heightM, rateMps, atRest, heightKnown, open, speedFactor, travelMps);
    }

    /**
     * As {@link #compute(double[], double[], boolean[], boolean[], double, double)}, from heights that are known to a standard deviation. The
     * row CV is then what it may be expected to be: a pattern that is looked at through errors is less even than the one computed from
     * the likeliest heights ({@code E[CV²]} is the square of the CV of what each row may expect, and beside it the mean variance of
     * the rows; second order, in the errors' small size).
     *
     * @param heightSdM by how much each outlet's streams may meet the ground as if from elsewhere, standard deviation, m; neighbours err alike
     */
    public void compute(
            double[] heightM,
            double[] rateMps,
            double[] heightSdM,
            boolean[] heightKnown,
            boolean[] open,
            double speedFactor,
            double travelMps) {
        this.travelMps = travelMps;
        rows.clear();
        lines.clear();
        fall.begin(speedFactor);
        Arrays.fill(rowLeftOut, false);
        for (int outlet = 0; outlet < boom.outlets(); outlet++) {
            double atM = boom.outletRightM(outlet);
            if (!open[outlet] || !heightKnown[outlet]) {
                leaveOutRows(atM);
                continue;
            }
            fall.outlet(outlet, heightM[outlet]);
            fall(outlet, atM, heightM[outlet], rateMps[outlet], heightSdM[outlet], speedFactor);
        }
    }

    private void fall(
            int outlet, double outletM, double heightM, double rateMps, double heightSdM, double speedFactor) {
        for (int i = 0; i < share.length; i++) {
            double atM = outletM + landingM(i, heightM, rateMps, speedFactor);
            double sdM = exitMps[i] * speedFactor * rightPart[i] * longerSpm[like[i]] * heightSdM;
            lay(atM, share[i], sdM, outlet);
            fall.line(atM, share[i]);
            if (halfWidthM - Math.abs(atM) < boom.rowM()) {
                double mirroredM = Math.copySign(2 * halfWidthM, atM) - atM;
                lay(mirroredM, share[i], -sdM, outlet);
                fall.mirrorImage(mirroredM, share[i]);
            }
        }
    }

    private int firstLike(int stream) {
        for (int i = 0; i < stream; i++) {
            if (exitMps[i] == exitMps[stream]
                    && downPart[i] == downPart[stream]
                    && backPart[i] == backPart[stream]
                    && Math.abs(rightPart[i]) == Math.abs(rightPart[stream])
                    && share[i] == share[stream]) {
                return i;
            }
        }
        return stream;
    }

    private void lay(double atM, double quantity, double sdM, int outlet) {
        rows.add(atM, quantity, sdM);
        lines.add(atM, quantity, outlet);
    }

    /** Where a stream lands, m right of its outlet; streams are asked for in their order. */
    private double landingM(int stream, double heightM, double rateMps, double speedFactor) {
        double speedMps = exitMps[stream] * speedFactor;
        if (like[stream] == stream) {
            carriedS[stream] = carriedS(stream, speedMps, heightM, rateMps);
        }
        return offsetM[stream] + speedMps * rightPart[stream] * carriedS[like[stream]];
    }

    /** For how long its speed carries it sideways, s. */
    private double carriedS(int stream, double speedMps, double heightM, double rateMps) {
        double downMps = speedMps * downPart[stream] - rateMps;
        double flightS = Flight.timeS(downMps, heightM);
        double landsMps = downMps + Flight.GRAVITY_MPS2 * flightS;
        longerSpm[stream] = landsMps > 0 && heightM > 0 ? 1 / landsMps : 0;
        if (!Double.isNaN(travelMps)) {
            double backMps = speedMps * backPart[stream] - travelMps;
            double rightMps = speedMps * rightPart[stream];
            double fallMps = downMps + 0.5 * Flight.GRAVITY_MPS2 * flightS;
            double againstMps = Math.sqrt(backMps * backMps + rightMps * rightMps + fallMps * fallMps);
            flightS = drag[stream].carriesS(flightS, downMps, againstMps);
        }
        return flightS;
    }

    private double reachM(double heightM, double speedFactor) {
        double farM = 0;
        for (int i = 0; i < share.length; i++) {
            farM = Math.max(farM, Math.abs(landingM(i, heightM, 0, speedFactor)));
        }
        return farM;
    }

    private double feedsM() {
        return Math.max(designReachM + boom.rowM(), 0.5 * boom.spacingM());
    }

    private void leaveOutRows(double outletM) {
        double reachM = feedsM();
        int to = rows.endAtOrLeftOf(outletM + reachM);
        for (int j = rows.firstAtOrRightOf(outletM - reachM); j < to; j++) {
            rowLeftOut[j] = true;
        }
    }

    /**
     * Measures of the rows between two places, those left out not counted.
     *
     * @param fromM left end, m right of the centre line
     * @param toM right end, m
     * @return null where fewer than two rows count or nothing fell on them
     */
    public @Nullable RowMeasures rowMeasures(double fromM, double toM) {
        int n = 0;
        double squares = 0;
        int to = rows.endAtOrLeftOf(Math.min(toM, halfWidthM));
        for (int j = rows.firstAtOrRightOf(Math.max(fromM, -halfWidthM)); j < to; j++) {
            if (!rowLeftOut[j]) {
                picked[n++] = rows.amount(j);
                squares += rows.unsure(j) * rows.unsure(j);
            }
        }
        RowMeasures measures = RowMeasures.of(picked, 0, n);
        return measures == null || squares == 0 ? measures : measures.withUnsure(squares, picked, n);
    }

    /** How the lines lie between two places; null where fewer than two lie there. */
    public @Nullable LineMeasures lineMeasures(double fromM, double toM) {
        return lines.measure(Math.max(fromM, -halfWidthM), Math.min(toM, halfWidthM), boom.rowM() / 4);
    }

    /** What fell on a row, as a multiple of what one outlet gives; the rows are those of {@link #rows()}. */
    public Rows rows() {
        return rows;
    }

    /** The same, own lines and mirror images apart. */
    public Fall fall() {
        return fall;
    }
}
