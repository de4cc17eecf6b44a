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
        compute(heightM, atRest, heightKnown, open, speedFactor, Double.NaN);
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
            fall(outlet, atM, heightM[outlet], rateMps[outlet], speedFactor);
        }
    }

    private void fall(int outlet, double outletM, double heightM, double rateMps, double speedFactor) {
        for (int i = 0; i < share.length; i++) {
            double atM = outletM + landingM(i, heightM, rateMps, speedFactor);
            lay(atM, share[i], outlet);
            fall.line(atM, share[i]);
            if (halfWidthM - Math.abs(atM) < boom.rowM()) {
                double mirroredM = Math.copySign(2 * halfWidthM, atM) - atM;
                lay(mirroredM, share[i], outlet);
                fall.mirrorImage(mirroredM, share[i]);
            }
        }
    }

    private void lay(double atM, double quantity, int outlet) {
        rows.add(atM, quantity);
        lines.add(atM, quantity, outlet);
    }

    private double landingM(int stream, double heightM, double rateMps, double speedFactor) {
        double speedMps = exitMps[stream] * speedFactor;
        double downMps = speedMps * downPart[stream] - rateMps;
        double flightS = Flight.timeS(downMps, heightM);
        if (!Double.isNaN(travelMps)) {
            double backMps = speedMps * backPart[stream] - travelMps;
            double rightMps = speedMps * rightPart[stream];
            double fallMps = downMps + 0.5 * Flight.GRAVITY_MPS2 * flightS;
            double againstMps = Math.sqrt(backMps * backMps + rightMps * rightMps + fallMps * fallMps);
            flightS = drag[stream].carriesS(flightS, downMps, againstMps);
        }
        return offsetM[stream] + speedMps * rightPart[stream] * flightS;
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
        int to = rows.endAtOrLeftOf(Math.min(toM, halfWidthM));
        for (int j = rows.firstAtOrRightOf(Math.max(fromM, -halfWidthM)); j < to; j++) {
            if (!rowLeftOut[j]) {
                picked[n++] = rows.amount(j);
            }
        }
        return RowMeasures.of(picked, 0, n);
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
