package evenfall.sense;

import java.util.Arrays;

/**
 * Where some places of the boom will be over their ground within the next moments, and how well that is known: the motion that {@link
 * BoomMotion} follows, carried ahead by its own model and spread over the boom as {@link BoomShape} spreads heights.
 *
 * <p>A boom that is seen to fall is mostly swinging and will turn; a straight line through what it does now foretells a strike at every
 * swing. The model knows a swing from a slope of the ground, so what it foretells is a Gaussian with a variance of its own: what is not
 * known now, carried ahead, and what strikes the boom meanwhile (prediction by a Kalman filter, R. E. Kalman, 1960).
 *
 * <p>A height is linear in the state, and what becomes of the state too. So each place and moment has one row of numbers, worked out when
 * another set of sensors is known, and a forecast is one product with the state. Variances are worked out only for heights below what is
 * asked about, and kept while the weights of the filter stand. Nothing is allocated but at such changes.
 */
public final class BoomOutlook {
    /** Moments ahead. With a strike's 0.9 s 0.2 s apart: four to five a swing of the bending, the fastest that a boom has. Our choice. */
    private static final int MOMENTS = 5;

    private static final double STEPS_PS = 1e6 / BoomModel.STEP_US;

    private final BoomMotion motion;
    private final BoomShape shape;
    private final int places;
    private final int first;
    private final int apart;

    /** For each place and moment how the height follows from the state of now. */
    private final double[][][] row;

    private final double[][] struckM2;
    private final double[][] slopedM2;

    /** What is not known now, carried there; NaN until it is asked for. */
    private final double[][] carriedM2;

    private int solved = -1;
    private boolean stood;
    private int begin;
    private double heightM;
    private double varianceM2;
    private double inS;
    private double overS;

    /**
     * @param motion followed with the same sensors
     * @param shape spreads heights over the places
     * @param places how many of the shape's outlets, from the first
     * @param aheadS the last moment looked at, s after the last reading; no more than {@value BoomModel#MOST_STEPS} steps of the
     *     motion between two moments
     */
    public BoomOutlook(BoomMotion motion, BoomShape shape, int places, double aheadS) {
        this.motion = motion;
        this.shape = shape;
        this.places = places;
        // At the middles of so many equal parts but the last half.
        long partSteps = Math.round(2 * aheadS * STEPS_PS / (2 * MOMENTS - 1));
        apart = (int) Math.max(2, Math.min(BoomModel.MOST_STEPS, partSteps));
        first = apart / 2;
        row = new double[places][MOMENTS][motion.model().states()];
        struckM2 = new double[places][MOMENTS];
        slopedM2 = new double[places][MOMENTS];
        carriedM2 = new double[places][MOMENTS];
    }

    /**
     * Looks ahead from the last reading; the shape has just spread the sensors' heights.
     *
     * @param nowUs event time, µs
     * @return whether there is a moment to come for which anything is foretold
     */
    public boolean look(long nowUs) {
        if (!motion.isFollowing()) {
            return false;
        }
        if (solved != shape.solved()) {
            solved = shape.solved();
            workOut();
        }
        // The reading before the weights came to stand changed what is not known once more.
        boolean stands = motion.stands();
        if (!stands || !stood) {
            forget();
        }
        stood = stands;
        long overUs = nowUs - motion.stateUs();
        overS = 1e-6 * overUs;
        begin = 0;
        while (begin < MOMENTS && BoomModel.STEP_US * steps(begin) <= overUs) {
            begin++;
        }
        return begin < MOMENTS;
    }

    /**
     * Of two places and all moments to come, the one that is the likeliest under a height; read it by the methods below.
     *
     * @param floorM that height, m
     * @param nearM what is expected above this is far from it, and how well it is known is not asked, m
     * @return whether any is expected below {@code nearM}
     */
    public boolean likeliestUnder(double floorM, double nearM, int onePlace, int otherPlace) {
        double worst = Double.POSITIVE_INFINITY;
        for (int p = 0; p < 2; p++) {
            int place = p == 0 ? onePlace : otherPlace;
            for (int m = begin; m < MOMENTS; m++) {
                double expectedM = motion.dot(row[place][m]);
                if (!(expectedM < nearM)) {
                    continue;
                }
                double variance = varianceM2(place, m);
                double deviations = (expectedM - floorM) / Math.sqrt(variance);
                if (deviations < worst) {
                    worst = deviations;
                    heightM = expectedM;
                    varianceM2 = variance;
                    inS = steps(m) / STEPS_PS - overS;
                }
            }
        }
        return worst < Double.POSITIVE_INFINITY;
    }

    /** The height that is expected there and then, m. */
    public double heightM() {
        return heightM;
    }

    /** And its variance, m². */
    public double varianceM2() {
        return varianceM2;
    }

    /** In how many seconds that is. */
    public double inS() {
        return inS;
    }

    private int steps(int moment) {
        return first + moment * apart;
    }

    private double varianceM2(int place, int moment) {
        if (Double.isNaN(carriedM2[place][moment])) {
            carriedM2[place][moment] = motion.varianceOf(row[place][moment]);
        }
        return carriedM2[place][moment]
                + motion.roughness() * struckM2[place][moment]
                + motion.sloping() * slopedM2[place][moment]
                + shape.shapeVariance(place);
    }

    private void forget() {
        for (double[] ofPlace : carriedM2) {
            Arrays.fill(ofPlace, Double.NaN);
        }
    }

    /** What strikes the boom on the way is gathered from moment to moment: {@code Q(s + t) = F(s) Q(t) F(s)ᵀ + Q(s)}. */
    private void workOut() {
        BoomModel model = motion.model();
        double[] now = new double[model.states()];
        for (int place = 0; place < places; place++) {
            model.heightRow(shape.weights(place), now);
            double[] from = now;
            double struck = 0;
            double sloped = 0;
            for (int m = 0; m < MOMENTS; m++) {
                int over = m == 0 ? first : apart;
                struck += model.struckVarianceOf(from, over);
                sloped += model.slopedVarianceOf(from, over);
                model.carryRow(from, over, row[place][m]);
                struckM2[place][m] = struck;
                slopedM2[place][m] = sloped;
                from = row[place][m];
            }
        }
        forget();
    }
}
