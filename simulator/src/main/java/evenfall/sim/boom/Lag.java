package evenfall.sim.boom;

/**
 * A first-order lag: {@code τ q̇ = g − q}. Each step is exact for an input that moves evenly from its last
 * value to its next.
 */
final class Lag {

    private final double tauS;
    private double stepS = -1;
    private double keep;
    private double input;
    private double value;

    /** @param tauS time constant, s; 0 follows at once */
    Lag(double tauS) {
        this.tauS = tauS;
    }

    /** As if the input had always been this. */
    void place(double input) {
        this.input = input;
        this.value = input;
    }

    void step(double dtS, double nextInput) {
        if (tauS > 0) {
            if (dtS != stepS) {
                stepS = dtS;
                keep = StrictMath.exp(-dtS / tauS);
            }
            double behind = (nextInput - input) / dtS * tauS;
            value = nextInput - behind + (value - input + behind) * keep;
        } else {
            value = nextInput;
        }
        input = nextInput;
    }

    double value() {
        return value;
    }
}
