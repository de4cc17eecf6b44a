package evenfall.pattern;

import evenfall.outlet.Stream;

/**
 * How far one stream of every outlet flies sideways, and so every stream that leaves alike, perhaps to the other side. All outlets at
 * once, in arrays that are filled again at the next moment.
 */
final class Flights {
    private final double exitMps;
    private final double downPart;
    private final double rightPart;
    private final double backPart;
    private final double share;
    private final AirDrag drag;
    private final double[] downMps;
    private final double[] againstMps;
    private final double[] carriedS;

    /** For how much longer a stream is in the air from a greater height, s/m; 0 for one at the ground. */
    private final double[] longerSpm;

    /**
     * @param ratedM3ps flow of a whole outlet with water at the rated point, m³/s
     * @param specificGravity of the product
     */
    Flights(Stream stream, double ratedM3ps, double specificGravity, int outlets) {
        exitMps = stream.exitMps();
        downPart = stream.downPart();
        rightPart = stream.rightPart();
        backPart = stream.backPart();
        share = stream.share();
        drag = new AirDrag(share * ratedM3ps, exitMps, specificGravity, outlets);
        downMps = new double[outlets];
        againstMps = new double[outlets];
        carriedS = new double[outlets];
        longerSpm = new double[outlets];
    }

    /** Whether a stream is in the air for as long, and as much against it. */
    boolean fliesAlike(Stream other) {
        return other.exitMps() == exitMps
                && other.downPart() == downPart
                && other.backPart() == backPart
                && Math.abs(other.rightPart()) == Math.abs(rightPart)
                && other.share() == share;
    }

    /**
     * Works out all flights.
     *
     * @param heightM height of each outlet over the ground, m
     * @param rateMps how fast each height grows, m/s
     * @param speedFactor exit speed over the rated one
     * @param travelMps ground speed, m/s; NaN for flights without air
     */
    void fly(double[] heightM, double[] rateMps, double speedFactor, double travelMps) {
        double speedMps = exitMps * speedFactor;
        double backMps = speedMps * backPart - travelMps;
        double rightMps = speedMps * rightPart;
        double acrossSquare = backMps * backMps + rightMps * rightMps;
        for (int i = 0; i < carriedS.length; i++) {
            downMps[i] = speedMps * downPart - rateMps[i];
            // As Flight.timeS for heights of 0 and more, without its question, which would keep this loop from vectors.
            double down = downMps[i];
            double landsMps = Math.sqrt(down * down + 2 * Flight.GRAVITY_MPS2 * heightM[i]);
            double flightS = (-down + landsMps) / Flight.GRAVITY_MPS2;
            carriedS[i] = flightS;
            longerSpm[i] = 1 / landsMps;
            double fallMps = down + 0.5 * Flight.GRAVITY_MPS2 * flightS;
            againstMps[i] = Math.sqrt(acrossSquare + fallMps * fallMps);
        }
        for (int i = 0; i < carriedS.length; i++) {
            if (!(heightM[i] > 0)) {
                carriedS[i] = 0;
                longerSpm[i] = 0;
            }
        }
        if (!Double.isNaN(travelMps)) {
            drag.carry(carriedS, downMps, againstMps, drag.takenFromWhole(speedMps * backPart, speedMps, travelMps));
        }
    }

    /**
     * Where the flights end.
     *
     * @param atM filled from there on, m right of the centre line
     * @param from where to begin
     * @param outletM place of each outlet, m right of the centre line
     * @param offsetM where the stream's hole is, m right of the outlet's middle
     * @param rightMps its speed to the right, m/s
     */
    void land(double[] atM, int from, double[] outletM, double offsetM, double rightMps) {
        for (int i = 0; i < carriedS.length; i++) {
            atM[from + i] = outletM[i] + (offsetM + rightMps * carriedS[i]);
        }
    }

    /**
     * How wide the liquid lies across the rows: standard deviation at one height, good for those about it.
     *
     * @param heightM of the outlet, m
     * @param speedFactor exit speed over the rated one
     * @return m
     */
    double spreadM(double heightM, double speedFactor) {
        double speedMps = exitMps * speedFactor;
        double flightS = Flight.timeS(speedMps * downPart, heightM);
        double fallMps = speedMps * downPart + 0.5 * Flight.GRAVITY_MPS2 * flightS;
        double besideMps = speedMps * rightPart;
        double backMps = speedMps * backPart;
        double acrossM =
                drag.spreadM(flightS, Math.sqrt(fallMps * fallMps + besideMps * besideMps + backMps * backMps));
        // A round stream that meets the ground at a slant prints an oval.
        double slant = besideMps / (speedMps * downPart + Flight.GRAVITY_MPS2 * flightS);
        return acrossM * Math.sqrt(1 + slant * slant);
    }

    /**
     * How much farther the flights go from greater heights, to first order.
     *
     * @param fartherM filled from there on, m to the right
     * @param from where to begin
     * @param rightMps the stream's speed to the right, m/s
     * @param higherM by how much each height is greater, m
     */
    void fartherM(double[] fartherM, int from, double rightMps, double[] higherM) {
        for (int i = 0; i < longerSpm.length; i++) {
            fartherM[from + i] = rightMps * longerSpm[i] * higherM[i];
        }
    }
}
