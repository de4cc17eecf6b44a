package evenfall.judge;

/**
 * Litres in the tank over litres by the meter: a straight line through the means of blocks of time, whose slope says what the meter's
 * litre is worth. Its memory is bounded: when it is full, two blocks become one, and from a length of {@value #LONGEST_S} s on the
 * oldest goes.
 *
 * <p><b>Variance.</b> Ordinary least squares, {@code var β = s² / Sxx}. The residual variance is that of the blocks, and no less than what
 * the rig states of sloshing. Slopes of the field push the liquid to one side for longer than a block, so neighbouring blocks err
 * together; with the correlation ρ of one residual with the next the variance is {@code (1 + ρ) / (1 − ρ)} times that. Of n residuals about a line ρ comes out too low by about {@code (2 + 4ρ) / n}
 * (Kendall 1954, about a line; from memory), which is put right.
 */
final class TankLine {
    /** Many times the period of sloshing. Our choice. */
    static final double SHORTEST_S = 10;

    static final double LONGEST_S = 40;

    /** Readings so far apart, s, err independently: half a swing of a tank that sloshes at half a hertz. Our choice. */
    private static final double INDEPENDENT_S = 1;

    /** With fewer a residual variance is hardly known. */
    private static final int LEAST = 12;

    private static final int MOST = 64;
    private static final double MOST_RHO = 0.9;

    /** A tank that has risen by so many standard deviations of two blocks has been filled: a chance of 3e-7. */
    private static final double SURE = 5;

    private final double noiseM3;
    private final double[] meterM3 = new double[MOST];
    private final double[] tankM3 = new double[MOST];
    private int blocks;
    private double blockS;
    private double filledS;
    private int looks;
    private double meterSum;
    private double tankSum;
    private double beta;
    private double betaSd;
    private double seenSd;

    /** @param noiseM3 standard deviation of one reading, m³ */
    TankLine(double noiseM3) {
        this.noiseM3 = noiseM3;
        clear();
    }

    /** Starts anew: what was in the tank, or what has passed the meter, is no longer known. */
    void clear() {
        blocks = 0;
        blockS = SHORTEST_S;
        beta = Double.NaN;
        betaSd = Double.NaN;
        seenSd = 0;
        empty();
    }

    private void empty() {
        filledS = 0;
        looks = 0;
        meterSum = 0;
        tankSum = 0;
    }

    /** Takes one look; {@code stepS} since the one before. */
    void take(double meterM3, double tankM3, double stepS) {
        meterSum += meterM3;
        tankSum += tankM3;
        looks++;
        filledS += stepS;
        if (filledS + 1e-9 >= blockS) {
            double meter = meterSum / looks;
            double tank = tankSum / looks;
            empty();
            block(meter, tank);
        }
    }

    private void block(double meter, double tank) {
        if (isFilled(tank)) {
            clear();
        }
        if (blocks == MOST) {
            System.arraycopy(meterM3, 1, meterM3, 0, MOST - 1);
            System.arraycopy(tankM3, 1, tankM3, 0, MOST - 1);
            blocks--;
        }
        meterM3[blocks] = meter;
        tankM3[blocks] = tank;
        blocks++;
        if (blocks == MOST && blockS < LONGEST_S) {
            for (int i = 0; i < MOST / 2; i++) {
                meterM3[i] = 0.5 * (meterM3[2 * i] + meterM3[2 * i + 1]);
                tankM3[i] = 0.5 * (tankM3[2 * i] + tankM3[2 * i + 1]);
            }
            blocks = MOST / 2;
            blockS *= 2;
        }
        fit();
    }

    private boolean isFilled(double tank) {
        double lowest = Double.MAX_VALUE;
        for (int i = 0; i < blocks; i++) {
            lowest = Math.min(lowest, tankM3[i]);
        }
        return blocks > 0 && tank - lowest > SURE * Math.sqrt(2) * Math.max(blockSd(), seenSd);
    }

    /** Standard deviation of a block's mean by what the rig states. */
    private double blockSd() {
        return noiseM3 * Math.sqrt(INDEPENDENT_S / blockS);
    }

    private void fit() {
        beta = Double.NaN;
        if (blocks < LEAST) {
            return;
        }
        double meanX = mean(meterM3);
        double meanY = mean(tankM3);
        double sxx = 0;
        double sxy = 0;
        for (int i = 0; i < blocks; i++) {
            double x = meterM3[i] - meanX;
            sxx += x * x;
            sxy += x * (tankM3[i] - meanY);
        }
        if (!(sxx > 0)) {
            return;
        }
        beta = -sxy / sxx;
        double squares = 0;
        double products = 0;
        double before = 0;
        for (int i = 0; i < blocks; i++) {
            double off = tankM3[i] - meanY + beta * (meterM3[i] - meanX);
            squares += off * off;
            products += i > 0 ? before * off : 0;
            before = off;
        }
        double seen = squares > 0 ? products / squares : 0;
        double rho = Math.max(0, Math.min(MOST_RHO, seen + (2 + 4 * seen) / blocks));
        seenSd = Math.sqrt(squares / (blocks - 2));
        double sd = Math.max(blockSd(), seenSd);
        double variance = sd * sd * (1 + rho) / (1 - rho);
        betaSd = Math.sqrt(variance / sxx);
    }

    private double mean(double[] of) {
        double sum = 0;
        for (int i = 0; i < blocks; i++) {
            sum += of[i];
        }
        return sum / blocks;
    }

    boolean isKnown() {
        return !Double.isNaN(beta);
    }

    /** Litres gone from the tank for each litre by the meter. */
    double beta() {
        return beta;
    }

    double betaSd() {
        return betaSd;
    }

    /** What has passed the meter from the first block to the last, m³. */
    double meteredM3() {
        return blocks == 0 ? 0 : meterM3[blocks - 1] - meterM3[0];
    }
}
