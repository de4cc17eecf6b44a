package evenfall.pattern;

import evenfall.outlet.OutletType;
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
    /** What is not known of heights holds together for so far, m: about as far as height sensors are apart on a wide boom. Our choice. */
    private static final double TOGETHER_M = 8;

    private final BoomLayout boom;
    private final double halfWidthM;
    private final Rows rows;
    private final Lines lines;
    private final boolean[] rowLeftOut;
    private final double[] picked;
    private final double[] unsure;
    private final int rowsTogether;
    private final double[] atRest;
    private final Landings landings;

    private final Nearness near;

    /** Which outlets fall, from left to right. */
    private final int[] falling;

    private int fallingCount;

    /** Of the lines that fall, stream by stream: where, m right of the centre line, and how unsure that is. */
    private final double[] atM;

    private final double[] sdM;

    /** Where not all fall: of those that do which they are, as the order of {@link Landings#land} counts, their shares and spreads. */
    private final int[] lineOf;

    private final double[] partShare;
    private final double[] partSpreadM;

    /** No spread, for flights without air. */
    private final double[] unspread;

    private final MirrorImages images;
    private final double[] imageSdM;
    private final double[] imageSpreadM;

    /** Measures of the whole boom since the last compute; judgement and the live message ask for the same. */
    private @Nullable RowMeasures wholeRows;

    private @Nullable LineMeasures wholeLines;
    private boolean wholeRowsAsked;
    private boolean wholeLinesAsked;

    /**
     * @param boom boom and rows
     * @param type outlet as fitted
     * @param targetHeightM height that the boom is set to, m
     * @param specificGravity of the product
     */
    public BoomPattern(BoomLayout boom, OutletType type, double targetHeightM, double specificGravity) {
        this.boom = boom;
        landings = new Landings(boom, type, targetHeightM, specificGravity);
        atRest = new double[boom.outlets()];
        falling = new int[boom.outlets()];
        int most = landings.lines();
        atM = new double[most];
        sdM = new double[most];
        lineOf = new int[most];
        partShare = new double[most];
        partSpreadM = new double[most];
        unspread = new double[most];
        images = new MirrorImages(boom, landings.reachM(), most);
        imageSdM = new double[most];
        imageSpreadM = new double[most];
        halfWidthM = 0.5 * boom.widthM();
        rows = new Rows(boom.rowM(), boom.rowPhase(), halfWidthM);
        near = new Nearness(boom.rowM(), boom.rowPhase(), most);
        rowLeftOut = new boolean[rows.count()];
        picked = new double[rows.count()];
        unsure = new double[rows.count()];
        rowsTogether = Math.max(1, (int) Math.round(TOGETHER_M / boom.rowM()));
        // Each line near an end may bring its mirror image along.
        lines = new Lines(2 * most);
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
     * the likeliest heights; see {@link RowMeasures#withUnsure}.
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
        wholeRowsAsked = false;
        wholeLinesAsked = false;
        rows.clear();
        lines.clear();
        Arrays.fill(rowLeftOut, false);
        landings.fly(heightM, rateMps, speedFactor, travelMps);
        int n = 0;
        for (int outlet = 0; outlet < open.length; outlet++) {
            if (!open[outlet] || !heightKnown[outlet]) {
                leaveOutRows(landings.outletM()[outlet]);
                continue;
            }
            falling[n++] = outlet;
        }
        fallingCount = n;
        landings.land(atM);
        landings.fartherM(sdM, heightSdM);
        double[] share = landings.shareOfLine();
        double[] spreadM = Double.isNaN(travelMps) ? unspread : landings.spreadOfLineM();
        int count = atM.length;
        if (n == open.length) {
            lines.addWhole(atM, share, n);
        } else {
            count = fallPartly(n, spreadM);
            share = partShare;
            spreadM = partSpreadM;
        }
        near.find(atM, sdM, spreadM, count);
        rows.addUnsure(near, share);
        mirror(share, spreadM, count);
    }

    /** Keeps of all lines those of so many outlets that fall. */
    private int fallPartly(int n, double[] spreadM) {
        lines.addEach();
        double[] share = landings.shareOfLine();
        int count = landings.linesOf(falling, n, lineOf);
        for (int k = 0; k < count; k++) {
            int line = lineOf[k];
            lines.add(line, atM[line], share[line], line % boom.outlets());
            atM[k] = atM[line];
            sdM[k] = sdM[line];
            partShare[k] = share[line];
            partSpreadM[k] = spreadM[line];
        }
        return count;
    }

    /** Lets the mirror images fall of lines near an end of the boom. */
    private void mirror(double[] share, double[] spreadM, int count) {
        images.find(atM, share, count);
        for (int k = 0; k < images.count; k++) {
            int i = images.of[k];
            int line = count == atM.length ? i : lineOf[i];
            lines.add(atM.length + line, images.atM[k], images.share[k], line % boom.outlets());
            imageSdM[k] = -sdM[i];
            imageSpreadM[k] = spreadM[i];
        }
        near.find(images.atM, imageSdM, imageSpreadM, images.count);
        rows.addUnsure(near, images.share);
    }

    private void leaveOutRows(double aroundM) {
        double reachM = landings.reachM();
        int to = rows.endAtOrLeftOf(aroundM + reachM);
        for (int j = rows.firstAtOrRightOf(aroundM - reachM); j < to; j++) {
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
        if (!isWhole(fromM, toM)) {
            return pickedRows(fromM, toM);
        }
        if (!wholeRowsAsked) {
            wholeRowsAsked = true;
            wholeRows = pickedRows(-halfWidthM, halfWidthM);
        }
        return wholeRows;
    }

    private boolean isWhole(double fromM, double toM) {
        return fromM <= -halfWidthM && toM >= halfWidthM;
    }

    private @Nullable RowMeasures pickedRows(double fromM, double toM) {
        int from = rows.firstAtOrRightOf(Math.max(fromM, -halfWidthM));
        int to = rows.endAtOrLeftOf(Math.min(toM, halfWidthM));
        if (fallingCount == boom.outlets()) {
            return rows.measures(from, to, rowsTogether);
        }
        int n = 0;
        for (int j = from; j < to; j++) {
            if (!rowLeftOut[j]) {
                unsure[n] = rows.unsure(j);
                picked[n++] = rows.amount(j);
            }
        }
        RowMeasures sure = RowMeasures.of(picked, 0, n);
        return sure == null ? null : sure.withUnsure(picked, unsure, 0, n, rowsTogether);
    }

    /** How the lines lie between two places; null where fewer than two lie there. */
    public @Nullable LineMeasures lineMeasures(double fromM, double toM) {
        if (!isWhole(fromM, toM)) {
            return lines.measure(Math.max(fromM, -halfWidthM), Math.min(toM, halfWidthM), boom.rowM() / 4);
        }
        if (!wholeLinesAsked) {
            wholeLinesAsked = true;
            wholeLines = lines.measure(-halfWidthM, halfWidthM, boom.rowM() / 4);
        }
        return wholeLines;
    }

    /**
     * How far to the side lines land from their own outlets, m: the mean over the liquid of all outlets between two places that are open and
     * whose height is known.
     *
     * @return 0 where there is no such outlet
     */
    public double reachM(double fromM, double toM) {
        double[] outletM = landings.outletM();
        double sum = 0;
        double all = 0;
        for (int outlet = 0; outlet < outletM.length; outlet++) {
            if (outletM[outlet] < fromM || outletM[outlet] > toM) {
                continue;
            }
            for (int i = 0; i < landings.streams(); i++) {
                double landsM = lines.atM(i * outletM.length + outlet);
                if (!Double.isNaN(landsM)) {
                    sum += landings.share(i) * Math.abs(landsM - outletM[outlet]);
                    all += landings.share(i);
                }
            }
        }
        return all > 0 ? sum / all : 0;
    }

    BoomLayout boom() {
        return boom;
    }

    /** Where each stream of each outlet landed last. */
    Landings landings() {
        return landings;
    }

    /** How many outlets fell. */
    int fallingCount() {
        return fallingCount;
    }

    /** Which outlet that is, of those that fell, from left to right. */
    int falling(int k) {
        return falling[k];
    }

    /** What fell on a row, as a multiple of what one outlet gives; the rows are those of {@link #rows()}. */
    public Rows rows() {
        return rows;
    }
}
