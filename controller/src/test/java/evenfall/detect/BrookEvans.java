package evenfall.detect;

/**
 * Run length of a one-sided cumulative sum by the Markov chain of Brook and Evans, "An approach to the probability distribution of cusum run
 * length", Biometrika 59 (1972), from memory: the sum's range is cut into states, and the mean run length from each solves {@code (I − R) m
 * = 1}. Nothing in common with Siegmund's approximation.
 */
final class BrookEvans {
    /** States for a unit of the sum: fine enough for what is checked here. */
    private static final double STATES_A_UNIT = 10;

    private BrookEvans() {}

    static double mean(double k, double h, double shift) {
        int states = (int) Math.max(100, STATES_A_UNIT * h);
        double width = 2 * h / (2 * states - 1);
        double[][] a = new double[states][states + 1];
        for (int i = 0; i < states; i++) {
            for (int j = 0; j < states; j++) {
                double to = (j - i) * width + k - shift;
                double stay = normal(to + width / 2) - (j == 0 ? 0 : normal(to - width / 2));
                a[i][j] = (i == j ? 1 : 0) - stay;
            }
            a[i][states] = 1;
        }
        for (int p = 0; p < states; p++) {
            for (int i = p + 1; i < states; i++) {
                double f = a[i][p] / a[p][p];
                for (int j = p; j <= states; j++) {
                    a[i][j] -= f * a[p][j];
                }
            }
        }
        double[] m = new double[states];
        for (int i = states - 1; i >= 0; i--) {
            double sum = a[i][states];
            for (int j = i + 1; j < states; j++) {
                sum -= a[i][j] * m[j];
            }
            m[i] = sum / a[i][i];
        }
        return m[0];
    }

    /** Of two one-sided ones that never alarm together. */
    static double meanTwoSided(double k, double h, double shift) {
        return 1 / (1 / mean(k, h, shift) + 1 / mean(k, h, -shift));
    }

    /** Normal distribution function: Taylor's series of its integral about 0, and its continued fraction far out. */
    static double normal(double x) {
        if (x < 0) {
            return 1 - normal(-x);
        }
        double density = Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI);
        if (x > 6) {
            return 1 - density / (x + 1 / (x + 2 / (x + 3 / x)));
        }
        double term = x;
        double sum = x;
        for (int n = 1; n < 200; n++) {
            term *= x * x / (2 * n + 1);
            sum += term;
        }
        return 0.5 + density * sum;
    }
}
