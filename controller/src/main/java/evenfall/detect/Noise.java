package evenfall.detect;

/**
 * How much a signal scatters from look to look, estimated from the signal itself while it runs.
 *
 * <p>From second differences, {@code x(t) − 2 x(t−m) + x(t−2m)}, whose mean square is {@code 6 σ²} for independent looks: a level and a
 * straight ramp fall out, a step counts for a few looks only. Between looks next to each other it is {@code (6 − 8ρ + 2ρ²) σ²} when
 * correlation dies away geometrically. So from both, with {@code m} once beyond the correlation and once the next look, come σ and the
 * correlation ρ of one look with the next.
 *
 * <p>Correlated looks tell less than independent ones. A sum over many of them scatters as if each had the standard deviation {@code
 * σ √((1 + ρ) / (1 − ρ))} and were independent; that is what {@link #effective} gives and what the tests are scaled by. Where
 * correlation ends with the next look, as that of overlapping windows does, this is more than it need be.
 */
public final class Noise {
    /** The correlation of what is looked at here has died away after so many looks: 0.8 s at five a second, behind a window of 0.3 s. */
    private static final int APART = 4;

    private static final int KEPT = 2 * APART + 1;

    /** Weight of the newest look: a memory of a minute at five looks a second, so that a manoeuvre is not taken for noise. Our choice. */
    private static final double WEIGHT = 1.0 / 300;

    /** A square counts for no more than this times what was thought: beyond three standard deviations it is a step or a manoeuvre. */
    private static final double MOST = 9;

    /**
     * Correlation that sensors make between one look and the next at most: windows of 0.3 s on a grid of 0.2 s overlap by a third; half
     * leaves room for a receiver that repeats itself. What seems to be more is the machine that moves, which is no noise.
     */
    private static final double MOST_RHO = 0.5;

    private final double least;
    private final int guessLooks;
    private final double[] kept = new double[KEPT];
    private long looks;
    private long squares;
    private double far;
    private double near;

    /**
     * @param least standard deviation that the sensors have at best, above 0: a signal that stands still is not known without error
     * @param guessLooks what this is worth as a first guess, in looks, 1 or more
     */
    public Noise(double least, int guessLooks) {
        this.least = least;
        this.guessLooks = guessLooks;
        far = least * least;
        near = far;
    }

    public void take(double x) {
        kept[(int) (looks % KEPT)] = x;
        looks++;
        if (looks < KEPT) {
            return;
        }
        squares++;
        double weight = Math.max(WEIGHT, 1.0 / (squares + guessLooks));
        far += weight * (Math.min(square(APART), MOST * far) - far);
        near += weight * (Math.min(square(1), MOST * near) - near);
        far = Math.max(far, least * least);
        near = Math.max(near, least * least);
    }

    private double square(int apart) {
        double second = back(0) - 2 * back(apart) + back(2 * apart);
        return second * second / 6;
    }

    private double back(int by) {
        return kept[(int) ((looks - 1 - by) % KEPT)];
    }

    /** Forgets the looks, after a gap, and keeps what is known of their scatter. */
    public void gap() {
        looks = 0;
    }

    /** Standard deviation of one look, without what moves more slowly than sensors scatter. */
    public double sigma() {
        double rho = correlation();
        double sigma = Math.sqrt(near / (1 - rho * (4 - rho) / 3));
        return Math.max(least, sigma);
    }

    /** Correlation of one look with the next, 0 to a half. */
    public double correlation() {
        // 2ρ² − 8ρ + 6 (1 − near/far) = 0, the root from 0 to 1.
        double rho = 2 - Math.sqrt(4 - 3 * (1 - Math.min(1, near / far)));
        return Math.max(0, Math.min(MOST_RHO, rho));
    }

    /** Standard deviation of independent looks that would tell as much. */
    public double effective() {
        double rho = correlation();
        return sigma() * Math.sqrt((1 + rho) / (1 - rho));
    }
}
