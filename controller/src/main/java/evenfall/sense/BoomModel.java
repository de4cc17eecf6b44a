package evenfall.sense;

import evenfall.rig.Rig;
import java.util.Arrays;
import java.util.List;

/**
 * How a boom moves over its ground, as one linear model that is struck at random: what becomes of a state, of a covariance, and what a state says
 * of the height at each sensor.
 *
 * <p><b>The boom.</b> It heaves and rolls with the machine: two damped oscillators struck at random. Each wing bends as a beam held at its
 * root does under its own inertia, by the square of the distance s from its hinge in wing lengths L; with a wing half as heavy at its tip as at its root Lagrange's
 * equation for the deflection b of its tip, on a hinge that moves at z̈ and turns at θ̈, is
 *
 * <pre>  b̈ + 2ζω ḃ + ω² b = −(1.79 z̈ + 1.29 L θ̈),   1.79 = ∫mψ / ∫mψ²,  1.29 = ∫msψ / ∫mψ²,  ψ = s²,  m = 1 − s/2</pre>
 *
 * <p>(Rayleigh's method; S. Timoshenko, Vibration Problems in Engineering, from memory). So what the middle of the boom does foretells its
 * tips.
 *
 * <p><b>The ground</b> under each sensor walks at random as in {@link HeightSense}: its roughness. Beside that it has slopes that last, of
 * terraces and knolls: there it rises or falls for seconds on end, under each sensor on its own, as a speed that is forgotten slowly
 * (G. E. Uhlenbeck and L. S. Ornstein, Physical Review 36, 1930). The wheels go over such slopes too, and take the whole boom along: the
 * machine <i>climbs</i>. A sensor between the hinges is carried over the very ground that it sees, so its height knows nothing of
 * that; those farther out see it all together. Without this every terrace would be taken for a swing of the boom.
 *
 * <p>Frequencies and dampings are those of wide booms, each damped so much
 * that it forgets its phase as soon as not knowing it better would mislead.
 */
final class BoomModel {
    /** On tyres a machine heaves at 1.5 to 2 Hz. Our choice, as all of these. */
    private static final double HEAVE_RADPS = 2 * Math.PI * 1.7;

    private static final double HEAVE_DAMPING = 0.4;

    /** What ground of class D does to it at 18 km/h, about. */
    private static final double HEAVE_SD_MPS = 0.2;

    /** A boom hung in its middle rolls at 0.3 to 0.6 Hz. */
    private static final double ROLL_RADPS = 2 * Math.PI * 0.5;

    private static final double ROLL_DAMPING = 0.6;

    /** A tip of 18 m by 0.1 m/s: a boom that hangs rolls less than its wings bend. */
    private static final double ROLL_SD_RADPS = 0.0055;

    /** The first bending of a wide boom's wing, 1 to 1.5 Hz, lightly damped. */
    private static final double BEND_RADPS = 2 * Math.PI * 1.2;

    /** Booms differ by a quarter of that, and a filter that swings on at its own pace would soon be out of step with one: so it forgets. */
    private static final double BEND_DAMPING = 0.12;

    /** What a tip does that heave and roll do not explain, m/s. */
    private static final double BEND_SD_MPS = 0.15;

    /** The height control tilts a wing slowly: a tip by 0.1 m/s, back and forth in some seconds. */
    private static final double TILT_RADPS = 2 * Math.PI * 0.3;

    private static final double TILT_DAMPING = 0.7;
    private static final double TILT_SD_MPS = 0.1;

    /**
     * How fast ground that slopes for long rises or falls under a machine, standard deviation: a terrace of 0.25 m on slopes of 7 m, at
     * 5 m/s, does so by 0.18 m/s on average, a knoll of 0.7 m and 25 m at 7 m/s by 0.2 m/s; half of that, for most of the time there is neither. They
     * may come on any ground, so this does not go with how rough it is; it is taken so many times as it is heard. Our choice.
     */
    static final double SLOPE_SD_MPS = 0.1;

    /** It lasts as long as it takes to pass one slope of a terrace, 5 to 7 m: a second and some. Our choice. */
    private static final double SLOPE_FORGET_PS = 1;

    /** Up a terrace or a knoll and down again, 15 to 50 m, in 3 to 10 s. Our choice. */
    private static final double CLIMB_RADPS = 2 * Math.PI * 0.2;

    private static final double CLIMB_DAMPING = 0.7;

    /** {@link HeightSense#GROUND_M2PS} is of class C, these motions are of D: four times as rough (ISO 8608). */
    private static final double GROUND_M2PS = 4 * HeightSense.GROUND_M2PS;

    /** How much less a metre of wing weighs at its tip than at its root: half. */
    private static final double TAPER = 0.5;

    private static final double BY_HINGE = (1.0 / 3 - TAPER / 4) / (1.0 / 5 - TAPER / 6);
    private static final double BY_SLOPE = (1.0 / 4 - TAPER / 5) / (1.0 / 5 - TAPER / 6);

    /** Time goes by whole steps, µs: a boom moves by less than a thousandth of its swing off a straight line meanwhile. */
    static final long STEP_US = 10_000;

    /** After so long without a sentence it begins anew: half a swing. */
    static final int MOST_STEPS = 40;

    /** 2¹² steps are 41 s: long beside all that a boom remembers. */
    private static final int DOUBLINGS = 12;

    private static final int TERMS = 10;

    private static final int HEAVE = 0;
    private static final int ROLL = 2;
    private static final int LEFT = 4;
    private static final int RIGHT = 6;
    private static final int LEFT_TILT = 8;
    private static final int RIGHT_TILT = 10;
    static final int CLIMB = 12;
    static final int GROUND = 14;

    private final int sensors;
    private final int states;
    private final double[] rollsM;

    /** 1 where a sensor's height knows of the machine's climbing, 0 where it rides along with the ground it sees. */
    private final double[] seesClimb;

    private final double[] leftShape;
    private final double[] rightShape;
    private final double[] leftBeyondM;
    private final double[] rightBeyondM;
    final double[] longRun;
    final double[] longRunSloped;

    /** Sum over the sensors of the variance of how fast the boom swings there, by roughness and by slopes. */
    final double swingM2ps2;

    final double swingSlopedM2ps2;
    final Free[] free;
    final double[] column;

    /** Which of the boom's states each of them goes by: from the first of them up to, not with, the end. */
    private final int[] fromOf = new int[GROUND];

    private final int[] endOf = new int[GROUND];

    private final double[] half;

    /**
     * The model over some steps.
     *
     * @param becomes what becomes of a state; boom and ground do not mix
     * @param struck covariance of what strikes it meanwhile on ground of class D, and goes with the ground's roughness
     * @param sloped covariance of what goes with how much the ground slopes
     */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    record Free(double[] becomes, double[] struck, double[] sloped) {}

    /**
     * @param sensors where they are, from left to right
     * @param hingeM the wings begin here, m from the centre line
     * @param endM and end here, m
     */
    BoomModel(List<Rig.Height> sensors, double hingeM, double endM) {
        int n = sensors.size();
        this.sensors = n;
        states = GROUND + 2 * n;
        rollsM = new double[n];
        seesClimb = new double[n];
        leftShape = new double[n];
        rightShape = new double[n];
        leftBeyondM = new double[n];
        rightBeyondM = new double[n];
        double wingM = Math.max(1e-3, endM - hingeM);
        for (int i = 0; i < n; i++) {
            double atM = sensors.get(i).rightM();
            double share = Math.max(0, Math.abs(atM) - hingeM) / wingM;
            rollsM[i] = atM;
            seesClimb[i] = Math.abs(atM) > hingeM ? 1 : 0;
            (atM < 0 ? leftShape : rightShape)[i] = share * share;
            (atM < 0 ? leftBeyondM : rightBeyondM)[i] = share * wingM;
        }
        column = new double[states];
        half = new double[states * states];
        free = freeUpTo(MOST_STEPS, hingeM, wingM);
        longRun = longRun(free[1].struck);
        longRunSloped = longRun(free[1].sloped);
        swingM2ps2 = swingVariance(longRun);
        swingSlopedM2ps2 = swingVariance(longRunSloped);
    }

    /** How many states there are: the boom's, then the ground's height and its slope under each sensor. */
    int states() {
        return states;
    }

    double swingVariance(double[] of) {
        double sum = 0;
        for (int i = 0; i < sensors; i++) {
            sum += variance(of, i, 0, 1, 0);
        }
        return sum;
    }

    /**
     * Covariance of the boom's part in the long run: each doubling of the time adds to what is left of it.
     *
     * @param once what is gathered in a step
     */
    private double[] longRun(double[] once) {
        double[] nothing = new double[states * states];
        double[] gathered = once.clone();
        double[] becomes = free[1].becomes.clone();
        for (int doubling = 0; doubling < DOUBLINGS; doubling++) {
            double[] more = new double[states * states];
            carry(new Free(becomes, gathered, nothing), 1, 0, gathered, more);
            gathered = more;
            double[] twice = new double[states * states];
            times(becomes, becomes, twice);
            becomes = twice;
        }
        for (int i = 0; i < states; i++) {
            for (int j = 0; j < states; j++) {
                if (i >= GROUND || j >= GROUND) {
                    gathered[i * states + j] = 0;
                }
            }
        }
        return gathered;
    }

    private Free[] freeUpTo(int most, double hingeM, double wingM) {
        double[] f = new double[states * states];
        double[] g = new double[states * states];
        double[] sloped = new double[states * states];
        double[][] struck = new double[7][states];
        oscillator(f, struck[0], HEAVE, HEAVE_RADPS, HEAVE_DAMPING, HEAVE_SD_MPS);
        oscillator(f, struck[1], ROLL, ROLL_RADPS, ROLL_DAMPING, ROLL_SD_RADPS);
        oscillator(f, struck[2], LEFT, BEND_RADPS, BEND_DAMPING, BEND_SD_MPS);
        oscillator(f, struck[3], RIGHT, BEND_RADPS, BEND_DAMPING, BEND_SD_MPS);
        oscillator(f, struck[4], LEFT_TILT, TILT_RADPS, TILT_DAMPING, TILT_SD_MPS / wingM);
        oscillator(f, struck[5], RIGHT_TILT, TILT_RADPS, TILT_DAMPING, TILT_SD_MPS / wingM);
        oscillator(f, struck[6], CLIMB, CLIMB_RADPS, CLIMB_DAMPING, SLOPE_SD_MPS);
        double turns = BY_HINGE * hingeM + BY_SLOPE * wingM;
        for (int[] wing : new int[][] {{LEFT, LEFT_TILT, -1}, {RIGHT, RIGHT_TILT, 1}}) {
            shaken(f, struck, wing[0] + 1, HEAVE + 1, BY_HINGE);
            shaken(f, struck, wing[0] + 1, CLIMB + 1, BY_HINGE);
            shaken(f, struck, wing[0] + 1, ROLL + 1, wing[2] * turns);
            shaken(f, struck, wing[0] + 1, wing[1] + 1, BY_SLOPE * wingM);
        }
        for (int k = 0; k < struck.length; k++) {
            double[] into = k < 6 ? g : sloped;
            for (int i = 0; i < states; i++) {
                for (int j = 0; j < states; j++) {
                    into[i * states + j] += struck[k][i] * struck[k][j];
                }
            }
        }
        for (int i = GROUND; i < GROUND + sensors; i++) {
            int slope = i + sensors;
            g[i * states + i] = GROUND_M2PS;
            f[i * states + slope] = 1;
            f[slope * states + slope] = -SLOPE_FORGET_PS;
            sloped[slope * states + slope] = 2 * SLOPE_FORGET_PS * SLOPE_SD_MPS * SLOPE_SD_MPS;
        }
        double stepS = STEP_US * 1e-6;
        double[] becomesInAStep = becomes(f, stepS);
        findWhatGoesBy(becomesInAStep);
        Free[] all = new Free[most + 1];
        all[0] = new Free(identity(), new double[states * states], new double[states * states]);
        all[1] = new Free(becomesInAStep, gathered(f, g, stepS), gathered(f, sloped, stepS));
        for (int k = 2; k <= most; k++) {
            double[] into = new double[states * states];
            times(all[1].becomes, all[k - 1].becomes, into);
            all[k] = new Free(
                    into,
                    andOnce(all[1].becomes, all[k - 1].struck, all[1].struck),
                    andOnce(all[1].becomes, all[k - 1].sloped, all[1].sloped));
        }
        return all;
    }

    /** In the series of all powers, what a state goes by at last shows in a step already. */
    private void findWhatGoesBy(double[] becomesInAStep) {
        for (int i = 0; i < GROUND; i++) {
            int from = 0;
            while (becomesInAStep[i * states + from] == 0) {
                from++;
            }
            int end = GROUND;
            while (becomesInAStep[i * states + end - 1] == 0) {
                end--;
            }
            fromOf[i] = from;
            endOf[i] = end;
        }
    }

    /** What is gathered in a step more. */
    private double[] andOnce(double[] becomes, double[] before, double[] once) {
        double[] into = new double[states * states];
        carry(new Free(becomes, once, new double[states * states]), 1, 0, before, into);
        return into;
    }

    private void oscillator(double[] f, double[] struck, int at, double radps, double damping, double speedSd) {
        f[at * states + at + 1] = 1;
        f[(at + 1) * states + at] = -radps * radps;
        f[(at + 1) * states + at + 1] = -2 * damping * radps;
        // So strong that its speed has that standard deviation in the long run.
        struck[at + 1] = Math.sqrt(4 * damping * radps) * speedSd;
    }

    /** One part is shaken by another's acceleration, against it and so many times as much. */
    private void shaken(double[] f, double[][] struck, int row, int by, double times) {
        for (int j = 0; j < GROUND; j++) {
            f[row * states + j] -= times * f[by * states + j];
        }
        for (double[] one : struck) {
            one[row] -= times * one[by];
        }
    }

    /**
     * Series of the matrix exponential, {@code Σ tⁿ/n! Fⁿ}. The fastest part turns by 0.1 in a step, so the tenth power is far below what a
     * double resolves of the first.
     */
    private double[] becomes(double[] f, double timeS) {
        double[] becomes = identity();
        double[] power = identity();
        for (int n = 1; n <= TERMS; n++) {
            double[] product = new double[states * states];
            times(f, power, product);
            for (int at = 0; at < power.length; at++) {
                power[at] = product[at] * timeS / n;
                becomes[at] += power[at];
            }
        }
        return becomes;
    }

    /** Series of what is gathered on the way, {@code Σ tⁿ⁺¹/(n+1)! Lⁿ(G)} with L(X) = FX + XFᵀ. */
    private double[] gathered(double[] f, double[] g, double timeS) {
        double[] sum = new double[states * states];
        double[] term = new double[states * states];
        for (int at = 0; at < sum.length; at++) {
            term[at] = timeS * g[at];
            sum[at] = term[at];
        }
        for (int n = 1; n <= TERMS; n++) {
            double[] left = new double[states * states];
            times(f, term, left);
            for (int i = 0; i < states; i++) {
                for (int j = 0; j < states; j++) {
                    int at = i * states + j;
                    term[at] = (left[at] + left[j * states + i]) * timeS / (n + 1);
                    sum[at] += term[at];
                }
            }
        }
        return sum;
    }

    private double[] identity() {
        double[] one = new double[states * states];
        for (int i = 0; i < states; i++) {
            one[i * states + i] = 1;
        }
        return one;
    }

    private void times(double[] a, double[] b, double[] into) {
        for (int i = 0; i < states; i++) {
            for (int j = 0; j < states; j++) {
                double sum = 0;
                for (int k = 0; k < states; k++) {
                    sum += a[i * states + k] * b[k * states + j];
                }
                into[i * states + j] = sum;
            }
        }
    }

    /** What becomes of a covariance over some steps, struck so many times as hard. Whole lines at once: such loops run on vectors. */
    void carry(Free over, double struck, double sloping, double[] before, double[] into) {
        Arrays.fill(half, 0);
        for (int i = 0; i < states; i++) {
            if (i < GROUND) {
                for (int k = fromOf[i]; k < endOf[i]; k++) {
                    addLine(half, i, over.becomes[i * states + k], before, k);
                }
                continue;
            }
            addLine(half, i, over.becomes[i * states + i], before, i);
            int slope = i + sensors;
            if (slope < states) {
                addLine(half, i, over.becomes[i * states + slope], before, slope);
            }
        }
        for (int i = 0; i < states; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = struck * over.struck[i * states + j]
                        + sloping * over.sloped[i * states + j]
                        + becomes(over.becomes, j, half, i * states);
                into[i * states + j] = sum;
                into[j * states + i] = sum;
            }
        }
    }

    private void addLine(double[] into, int line, double times, double[] of, int ofLine) {
        int at = line * states;
        int from = ofLine * states;
        for (int j = 0; j < states; j++) {
            into[at + j] += times * of[from + j];
        }
    }

    void carry(Free over, double[] from, double[] into) {
        for (int i = 0; i < states; i++) {
            into[i] = becomes(over.becomes, i, from, 0);
        }
    }

    /** One row times a vector that begins somewhere: the boom goes by the boom alone, the ground by its own slope. */
    private double becomes(double[] becomes, int row, double[] of, int from) {
        int at = row * states;
        if (row >= GROUND) {
            double sum = becomes[at + row] * of[from + row];
            int slope = row + sensors;
            return slope < states ? sum + becomes[at + slope] * of[from + slope] : sum;
        }
        double sum = 0;
        int end = endOf[row];
        for (int k = fromOf[row]; k < end; k++) {
            sum += becomes[at + k] * of[from + k];
        }
        return sum;
    }

    double heightOf(double[] of, int sensor) {
        return swingOf(of, sensor, 0) + seesClimb[sensor] * of[CLIMB] + of[GROUND + sensor];
    }

    /** How fast the boom itself rises there, its swing and the machine's climb. */
    double upOf(double[] of, int sensor) {
        return swingOf(of, sensor, 1) + of[CLIMB + 1];
    }

    /** How fast the height over the ground grows there. */
    double rateOf(double[] of, int sensor) {
        return swingOf(of, sensor, 1) + seesClimb[sensor] * of[CLIMB + 1] + of[GROUND + sensors + sensor];
    }

    /** What the boom's swing makes of a height, or with an offset of 1 its speed. */
    double swingOf(double[] of, int sensor, int offset) {
        return of[HEAVE + offset]
                + rollsM[sensor] * of[ROLL + offset]
                + leftShape[sensor] * of[LEFT + offset]
                + rightShape[sensor] * of[RIGHT + offset]
                + leftBeyondM[sensor] * of[LEFT_TILT + offset]
                + rightBeyondM[sensor] * of[RIGHT_TILT + offset];
    }

    /**
     * Variance of so many times the height there, so many seconds of its swing's speed and so many of the climb's; leaves the covariances
     * with it in the column.
     */
    double variance(double[] of, int sensor, double heights, double swingS, double climbS) {
        Arrays.fill(column, 0);
        addSwing(of, heights, sensor, 0);
        addColumn(heights * seesClimb[sensor], of, CLIMB);
        addColumn(heights, of, GROUND + sensor);
        addSwing(of, swingS, sensor, 1);
        addColumn(climbS, of, CLIMB + 1);
        double own =
                heights * heightOf(column, sensor) + swingS * swingOf(column, sensor, 1) + climbS * column[CLIMB + 1];
        return Math.max(0, own);
    }

    /** As {@link #swingOf}. */
    private void addSwing(double[] of, double times, int sensor, int offset) {
        addColumn(times, of, HEAVE + offset);
        addColumn(times * rollsM[sensor], of, ROLL + offset);
        addColumn(times * leftShape[sensor], of, LEFT + offset);
        addColumn(times * rightShape[sensor], of, RIGHT + offset);
        addColumn(times * leftBeyondM[sensor], of, LEFT_TILT + offset);
        addColumn(times * rightBeyondM[sensor], of, RIGHT_TILT + offset);
    }

    /** A covariance's columns are its lines. */
    private void addColumn(double times, double[] of, int state) {
        if (times == 0) {
            return;
        }
        int at = state * states;
        for (int i = 0; i < states; i++) {
            column[i] += times * of[at + i];
        }
    }

    /**
     * The height that the sensors' heights give together, so much of each.
     *
     * @param ofSensor how much of each
     * @param into takes the row
     */
    void heightRow(double[] ofSensor, double[] into) {
        Arrays.fill(into, 0);
        for (int i = 0; i < sensors; i++) {
            double times = ofSensor[i];
            into[HEAVE] += times;
            into[ROLL] += times * rollsM[i];
            into[LEFT] += times * leftShape[i];
            into[RIGHT] += times * rightShape[i];
            into[LEFT_TILT] += times * leftBeyondM[i];
            into[RIGHT_TILT] += times * rightBeyondM[i];
            into[CLIMB] += times * seesClimb[i];
            into[GROUND + i] += times;
        }
    }

    /** The row for the same so many steps later. */
    void carryRow(double[] row, int over, double[] into) {
        double[] becomes = free[over].becomes;
        for (int j = 0; j < states; j++) {
            double sum = 0;
            for (int i = 0; i < states; i++) {
                sum += row[i] * becomes[i * states + j];
            }
            into[j] = sum;
        }
    }

    /** Variance that so many steps add to a row, by what strikes the boom on class D meanwhile. */
    double struckVarianceOf(double[] row, int over) {
        return square(row, free[over].struck);
    }

    /** The same by slopes of the ground as usual. */
    double slopedVarianceOf(double[] row, int over) {
        return square(row, free[over].sloped);
    }

    double square(double[] row, double[] of) {
        double sum = 0;
        for (int i = 0; i < states; i++) {
            double part = 0;
            for (int j = 0; j < states; j++) {
                part += of[i * states + j] * row[j];
            }
            sum += row[i] * part;
        }
        return Math.max(0, sum);
    }
}
