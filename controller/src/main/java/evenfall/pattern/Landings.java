package evenfall.pattern;

import evenfall.outlet.OutletType;
import evenfall.outlet.Stream;
import evenfall.rig.BoomLayout;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Where each stream of each outlet of a boom lands. */
final class Landings {
    private final List<Flights> flights = new ArrayList<>();

    /** For each stream its part of {@link #flights}. */
    private final Flights[] flightsOf;

    private final double[] outletM;
    private final double[] offsetM;
    private final double[] rightPart;
    private final double[] exitMps;
    private final double[] share;
    private final double[] shareOfLine;
    private final double[] spreadOfLineM;
    private final double reachM;
    private double speedFactor;

    /**
     * @param boom boom and rows
     * @param type outlet as fitted
     * @param targetHeightM height that the boom is set to, m
     * @param specificGravity of the product
     */
    Landings(BoomLayout boom, OutletType type, double targetHeightM, double specificGravity) {
        int streams = type.streams().size();
        outletM = new double[boom.outlets()];
        for (int outlet = 0; outlet < outletM.length; outlet++) {
            outletM[outlet] = boom.outletRightM(outlet);
        }
        flightsOf = new Flights[streams];
        offsetM = new double[streams];
        rightPart = new double[streams];
        exitMps = new double[streams];
        share = new double[streams];
        shareOfLine = new double[streams * boom.outlets()];
        spreadOfLineM = new double[streams * boom.outlets()];
        double ratedFactor = type.speedFactor(type.ratedPressurePa(), specificGravity);
        double farM = 0;
        for (int i = 0; i < streams; i++) {
            Stream stream = type.streams().get(i);
            offsetM[i] = stream.offsetM();
            rightPart[i] = stream.rightPart();
            exitMps[i] = stream.exitMps();
            share[i] = stream.share();
            flightsOf[i] = flightsOf(stream, type.ratedFlowM3ps(), specificGravity);
            int from = i * boom.outlets();
            Arrays.fill(shareOfLine, from, from + boom.outlets(), share[i]);
            Arrays.fill(spreadOfLineM, from, from + boom.outlets(), flightsOf[i].spreadM(targetHeightM, ratedFactor));
            farM = Math.max(farM, farM(stream, targetHeightM, ratedFactor));
        }
        reachM = Math.max(farM + boom.rowM(), 0.5 * boom.spacingM());
    }

    private Flights flightsOf(Stream stream, double ratedM3ps, double specificGravity) {
        for (Flights alike : flights) {
            if (alike.fliesAlike(stream)) {
                return alike;
            }
        }
        Flights own = new Flights(stream, ratedM3ps, specificGravity, outletM.length);
        flights.add(own);
        return own;
    }

    /** How far from its outlet a line lands without air and on a boom at rest, m. */
    private static double farM(Stream stream, double heightM, double speedFactor) {
        double speedMps = stream.exitMps() * speedFactor;
        double flightS = Flight.timeS(speedMps * stream.downPart(), heightM);
        return Math.abs(stream.offsetM() + speedMps * stream.rightPart() * flightS);
    }

    /**
     * Lets all fly.
     *
     * @param heightM height of each outlet over the ground, m
     * @param rateMps how fast the outlet itself rises, m/s
     * @param speedFactor exit speed over the rated one
     * @param travelMps ground speed, m/s; NaN for a flight without air
     */
    void fly(double[] heightM, double[] rateMps, double speedFactor, double travelMps) {
        this.speedFactor = speedFactor;
        for (Flights alike : flights) {
            alike.fly(heightM, rateMps, speedFactor, travelMps);
        }
    }

    /**
     * Where all streams land: those of the first stream of each outlet from left to right, then those of the second, and so on.
     *
     * @param atM filled, m right of the centre line; of an outlet whose height is not known it means nothing
     */
    void land(double[] atM) {
        for (int i = 0; i < share.length; i++) {
            flightsOf[i].land(atM, i * outletM.length, outletM, offsetM[i], rightMps(i));
        }
    }

    /** How much farther right from greater heights, in the same order; as {@link Flights#fartherM}. */
    void fartherM(double[] fartherM, double[] higherM) {
        for (int i = 0; i < share.length; i++) {
            flightsOf[i].fartherM(fartherM, i * outletM.length, rightMps(i), higherM);
        }
    }

    /**
     * Where the lines of some outlets stand in that order.
     *
     * @param outlets which outlets, from left to right, the first {@code n} of them
     * @param into filled, in the same order
     * @return how many lines they are
     */
    int linesOf(int[] outlets, int n, int[] into) {
        int count = 0;
        for (int stream = 0; stream < share.length; stream++) {
            for (int k = 0; k < n; k++) {
                into[count++] = stream * outletM.length + outlets[k];
            }
        }
        return count;
    }

    /** For each line in that order its stream's part of what the outlet gives. */
    double[] shareOfLine() {
        return shareOfLine;
    }

    /** For each line in that order how wide its liquid lies across the rows at target height, standard deviation, m. */
    double[] spreadOfLineM() {
        return spreadOfLineM;
    }

    /** How many lines there are if every outlet falls. */
    int lines() {
        return shareOfLine.length;
    }

    /** Exit speed over the rated one. */
    double speedFactor() {
        return speedFactor;
    }

    private double rightMps(int stream) {
        return exitMps[stream] * speedFactor * rightPart[stream];
    }

    /** How many streams an outlet has. */
    int streams() {
        return share.length;
    }

    /** A stream's part of what its outlet gives. */
    double share(int stream) {
        return share[stream];
    }

    /** Where the outlets are, m right of the centre line. */
    double[] outletM() {
        return outletM;
    }

    /** How far from its outlet a line may land, and one row more, m; half an outlet spacing at least. */
    double reachM() {
        return reachM;
    }
}
