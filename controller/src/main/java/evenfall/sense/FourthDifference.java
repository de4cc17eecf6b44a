package evenfall.sense;

/**
 * Fourth differences of readings that come evenly: {@code h0 − 4 h1 + 6 h2 − 4 h3 + h4}. For readings that err independently with variance
 * σ² theirs is 70 σ² (1 + 16 + 36 + 16 + 1); of smooth motion at ω they leave (ωΔt)⁴, a twentieth at 1.5 Hz and 20 readings a second. So they
 * tell scatter from a tip that whips.
 */
final class FourthDifference {
    /** Their variance over that of a reading. */
    static final double GAIN = 70;

    private double h1;
    private double h2;
    private double h3;
    private double h4;
    private int held;

    /** Begins anew: what comes next does not follow what was. */
    void cut() {
        held = 0;
    }

    /** Takes a reading; its square, or NaN before the fifth in a row. */
    double squareWith(double reading) {
        double difference = reading - 4 * h1 + 6 * h2 - 4 * h3 + h4;
        h4 = h3;
        h3 = h2;
        h2 = h1;
        h1 = reading;
        held++;
        return held > 4 ? difference * difference : Double.NaN;
    }
}
