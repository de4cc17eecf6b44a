package evenfall.sim.world;

import evenfall.sim.jet.Landings;
import java.util.Arrays;

/** The boom seen from behind at one moment: for a picture. Compared by identity; never changes. */
public final class RearView {
    private final long timeUs;
    private final double xM;
    private final double[] rightM;
    private final double[] elevationM;
    private final double[] heightM;
    private final double[][] landsM;

    /**
     * @param from where the moment begins among the lines that were worked out together
     */
    RearView(long timeUs, double xM, double[] rightM, double[] elevationM, double[] heightM, Landings lines, int from) {
        this.timeUs = timeUs;
        this.xM = xM;
        this.rightM = rightM.clone();
        this.elevationM = elevationM.clone();
        this.heightM = heightM.clone();
        landsM = new double[lines.streams()][];
        for (int k = 0; k < landsM.length; k++) {
            landsM[k] = Arrays.copyOfRange(lines.rightM()[k], from, from + rightM.length);
            for (int i = 0; i < landsM[k].length; i++) {
                if (!(lines.quantity()[k][from + i] > 0)) {
                    landsM[k][i] = Double.NaN;
                }
            }
        }
    }

    /** µs since the start of the run. */
    public long timeUs() {
        return timeUs;
    }

    /** Distance driven, m. */
    public double xM() {
        return xM;
    }

    public int outlets() {
        return rightM.length;
    }

    /** How many streams each outlet has. */
    public int streams() {
        return landsM.length;
    }

    /** Place of an outlet, m right of the centre line. */
    public double rightM(int outlet) {
        return rightM[outlet];
    }

    /** Elevation of an outlet over the ground's datum, m. */
    public double elevationM(int outlet) {
        return elevationM[outlet];
    }

    /** Height of an outlet over the ground under it, m; negative when it is in the ground. */
    public double heightM(int outlet) {
        return heightM[outlet];
    }

    /** Where a stream lands, m right of the centre line; not a number where nothing flows. */
    public double landsM(int stream, int outlet) {
        return landsM[stream][outlet];
    }
}
