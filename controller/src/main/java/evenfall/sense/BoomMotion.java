package evenfall.sense;

import evenfall.rig.Rig;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How the boom moves over its ground, by all height sensors together: the height at each now, and how fast the boom itself rises and sinks
 * there. A sensor alone cannot tell the two apart that make its height change, boom and ground; a boom cannot move as it likes, and the
 * ground under one sensor knows nothing of that under another.
 *
 * <p><b>The boom.</b> It heaves and rolls with the machine: two damped oscillators struck at random. Each wing bends as a beam held at its
 * root does under its own inertia, by the square of the distance s from its hinge in wing lengths L; with the mass spread evenly Lagrange's
 * equation for the deflection b of its tip, on a hinge that moves at z̈ and turns at θ̈, is
 *
 * <pre>  b̈ + 2ζω ḃ + ω² b = −(5/3 z̈ + 5/4 L θ̈),   5/3 = ∫ψ / ∫ψ²,  5/4 = ∫sψ / ∫ψ²,  ψ = s²</pre>
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
 * <p>What a boom's own speed gives to its streams is wanted, so only that is told: a climb is part of it, the ground's slopes are not.
 *
 * <p>Both make one linear model, and a Kalman filter (R. E. Kalman, 1960) follows it, echo by echo. Its weights depend on when echoes come
 * and how they scatter, and on what they say only by how hard the boom is struck and how much the ground slopes. While all that stays as it
 * is for {@value #SETTLED}
 * readings the weights stand still and are not worked out again. Frequencies and dampings are those of wide booms, each damped so much
 * that it forgets its phase as soon as not knowing it better would mislead.
 */
public final class BoomMotion {
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
    private static final double SLOPE_SD_MPS = 0.1;

    /** It lasts as long as it takes to pass one slope of a terrace, 5 to 7 m: a second and some. Our choice. */
    private static final double SLOPE_FORGET_PS = 1;

    /** Up a terrace or a knoll and down again, 15 to 50 m, in 3 to 10 s. Our choice. */
    private static final double CLIMB_RADPS = 2 * Math.PI * 0.2;

    private static final double CLIMB_DAMPING = 0.7;

    /** Of that variance, before any is heard: as much as is begun with of how hard the boom is struck. Our choice. */
    private static final double FIRST_SLOPING = 0.25;

    /** Bounds of it: no more than ground that is rough without slopes shows, and twice as fast as terraces. Our choice. */
    private static final double LEAST_SLOPING = 1.0 / 64;

    private static final double MOST_SLOPING = 4;

    /** Weight of the newest reading in it: one second of 20 a second, as long as a slope lasts. Our choice. */
    private static final double SLOPING_WEIGHT = 0.05;

    /** One reading speaks for no more than so many times what was taken. Our choice. */
    private static final double MOST_TIMES = 5;

    /** {@link HeightSense#GROUND_M2PS} is of class C, these motions are of D: four times as rough (ISO 8608). */
    private static final double GROUND_M2PS = 4 * HeightSense.GROUND_M2PS;

    /** Weight of the newest reading in how hard the boom is struck: the last minute of 20 a second, some dozens of swings. Our choice. */
    private static final double STRUCK_WEIGHT = 1.0 / 1200;

    /** Before any is heard: class C, between a smooth field and a rough one; worth as much as 5 s that were heard. Our choice. */
    private static final double FIRST_STRUCK = 0.25;

    private static final int FIRST_HEARD = 100;

    /** Bounds of how hard it is struck: from a carpet to class E at twice the speed. */
    private static final double LEAST_STRUCK = 1.0 / 64;

    private static final double MOST_STRUCK = 8;

    /** How much less a metre of wing weighs at its tip than at its root: half. */
    private static final double TAPER = 0.5;

    private static final double BY_HINGE = (1.0 / 3 - TAPER / 4) / (1.0 / 5 - TAPER / 6);
    private static final double BY_SLOPE = (1.0 / 4 - TAPER / 5) / (1.0 / 5 - TAPER / 6);

    /** Nothing is known of the ground under a sensor that begins, but that it is where the echo says to so much, m. Our choice. */
    private static final double BEGIN_SD_M = 0.1;

    /** A reading farther off than five standard deviations is no motion of this boom: the ground under it begins anew. Our choice. */
    private static final double SURPRISE = 25;

    /** Time goes by whole steps, µs: a boom moves by less than a thousandth of its swing off a straight line meanwhile. */
    static final long STEP_US = 10_000;

    /** After so long without a sentence it begins anew: half a swing. */
    static final int MOST_STEPS = 40;

    /** Three seconds of 20 readings: six times as long as its slowest part, the roll, remembers. */
    private static final int SETTLED = 60;

    /**
     * After they have settled the weights stand for so many readings, 20 s, whatever is heard of scatter, roughness and slopes meanwhile; an echo that
     * is missing does not wait. To work them out takes twenty times as long as to use them. Our choice.
     */
    private static final int STAND = 400;

    /** 2¹² steps are 41 s: long beside all that a boom remembers. */
    private static final int DOUBLINGS = 12;

    /**
     * A variance is taken to be another when its root is one and a half times what was taken, or as much less: scatter and slopes are
     * heard for some seconds only, and so wander. Our choice.
     */
    private static final double OTHER_TIMES = 2.25;

    /** The same for how hard the boom is struck, which is heard for a minute. */
    private static final double OTHER_STRUCK = 1.15;

    /**
     * Evidence that a height falls as no motion explains. What a reading is off by, in standard deviations, is white and normal while
     * the model is right (T. Kailath, IEEE Transactions on Automatic Control 13, 1968, from memory); against that stand readings that are
     * all too low by {@link #FALLS_BY}. Wald's sequential test in Page's form, as in {@link HeightDoubts}, with its threshold: by chance no
     * more than once in 100 hours of each sensor.
     */
    private static final double FALLS = HeightDoubts.THRESHOLD;

    /** What is far from white, standard deviations. A tip that falls by 0.7 m/s on a calm field is 2 to 4 too low each time. Our choice. */
    private static final double FALLS_BY = 2;

    /** An edge that is passed makes one reading low, a fall all of them: it takes two at least. */
    private static final double MOST_OF_FALL = 0.5 * FALLS;

    private static final int TERMS = 10;

    private static final int HEAVE = 0;
    private static final int ROLL = 2;
    private static final int LEFT = 4;
    private static final int RIGHT = 6;
    private static final int LEFT_TILT = 8;
    private static final int RIGHT_TILT = 10;
    private static final int CLIMB = 12;
    private static final int GROUND = 14;

    private final List<HeightSense> senses;
    private final int sensors;
    private final int states;
    private final double[] rollsM;

    /** 1 where a sensor's height knows of the machine's climbing, 0 where it rides along with the ground it sees. */
    private final double[] seesClimb;

    private final double[] leftShape;
    private final double[] rightShape;
    private final double[] leftBeyondM;
    private final double[] rightBeyondM;
    private final double[] longRun;
    private final double[] longRunSloped;

    /** Sum over the sensors of the variance of how fast the boom swings there, by roughness and by slopes. */
    private final double swingM2ps2;

    private final double swingSlopedM2ps2;
    private final Free[] free;
    private final double[] state;
    private final double[] next;
    private double[] covariance;
    private double[] spare;
    private final double[] column;

    /** Which of the boom's states each of them goes by: from the first of them up to, not with, the end. */
    private final int[] fromOf = new int[GROUND];

    private final int[] endOf = new int[GROUND];
    private final double[][] weight;

    /** For each sensor how its readings scatter, m², as the weights take it. */
    private final double[] scatterM2;

    /** By how much a reading is expected to be off, variance, m². */
    private final double[] offM2;

    private final boolean[] taken;

    /** Evidence that the height at each sensor falls as no motion explains. */
    private final double[] falls;

    private long steps = Long.MIN_VALUE;
    private int apart;
    private int alike;
    private int stood;

    private double struck = FIRST_STRUCK;
    private double seenStruck = FIRST_STRUCK;
    private double sloping = FIRST_SLOPING;
    private double seenSloping = FIRST_SLOPING;
    private int heard = FIRST_HEARD;

    /** What the sensors leave unknown of the boom's swing, summed as {@link #swingM2ps2}; worked out with the weights. */
    private double hiddenM2ps2;

    /** The same of the ground's slopes and the climb. */
    private double hiddenSlopesM2ps2;

    private final double[] half;
    private final double[] aheadCovariance;

    /** For each number of steps ahead the variances there, or null while they are not worked out. */
    private final @Nullable Ahead[] ahead = new Ahead[MOST_STEPS + 1];

    /**
     * The model over some steps.
     *
     * @param becomes what becomes of a state; boom and ground do not mix
     * @param struck covariance of what strikes it meanwhile on ground of class D, and goes with the ground's roughness
     * @param sloped covariance of what goes with how much the ground slopes
     */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Free(double[] becomes, double[] struck, double[] sloped) {}

    /** Variance at each sensor of the height, of the boom's own speed, and of the height that streams meet the ground from. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Ahead(double[] heightM2, double[] speedM2ps2, double[] meetsM2) {}

    /**
     * @param sensors where they are, from left to right
     * @param senses what each makes of its echoes, in the same order
     * @param hingeM the wings begin here, m from the centre line
     * @param endM and end here, m
     */
    public BoomMotion(List<Rig.Height> sensors, List<HeightSense> senses, double hingeM, double endM) {
        this.senses = List.copyOf(senses);
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
        state = new double[states];
        next = new double[states];
        covariance = new double[states * states];
        spare = new double[states * states];
        aheadCovariance = new double[states * states];
        column = new double[states];
        weight = new double[n][states];
        scatterM2 = new double[n];
        offM2 = new double[n];
        half = new double[states * states];
        taken = new boolean[n];
        falls = new double[n];
        free = freeUpTo(MOST_STEPS, hingeM, wingM);
        longRun = longRun(free[1].struck);
        longRunSloped = longRun(free[1].sloped);
        swingM2ps2 = swingVariance(longRun);
        swingSlopedM2ps2 = swingVariance(longRunSloped);
    }

    private double swingVariance(double[] of) {
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
            carry(new Free(becomes, gathered, nothing), 1, gathered, more);
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
        carry(new Free(becomes, once, new double[states * states]), 1, before, into);
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
    private void carry(Free over, double times, double[] before, double[] into) {
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
                double sum = times * over.struck[i * states + j]
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

    private void carry(Free over, double[] from) {
        for (int i = 0; i < states; i++) {
            next[i] = becomes(over.becomes, i, from, 0);
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

    /**
     * All sensors have taken in a sentence's echoes.
     *
     * @param timeUs event time of the readings, µs
     */
    public void onEchoes(long timeUs) {
        if (senses.isEmpty()) {
            return;
        }
        long nowSteps = Math.floorDiv(timeUs + STEP_US / 2, STEP_US);
        if (nowSteps < steps || nowSteps - steps > MOST_STEPS || steps == Long.MIN_VALUE) {
            begin();
        } else {
            goOn((int) (nowSteps - steps));
        }
        steps = nowSteps;
        for (int i = 0; i < senses.size(); i++) {
            if (taken[i]) {
                weigh(i);
            }
        }
        if (alike < SETTLED) {
            Arrays.fill(ahead, null);
            hiddenM2ps2 = swingVariance(covariance);
            hiddenSlopesM2ps2 = covariance[(CLIMB + 1) * (states + 1)];
            for (int i = GROUND + sensors; i < states; i++) {
                hiddenSlopesM2ps2 += covariance[i * (states + 1)];
            }
        }
        listen();
        listenToSlopes();
    }

    /**
     * How hard the boom is struck: how fast it is seen to swing, against how fast it would be seen to if what is taken were so. Climbs
     * are no roughness and are left out.
     */
    private void listen() {
        double seen = 0;
        for (int i = 0; i < sensors; i++) {
            double mps = swingOf(state, i, 1);
            seen += mps * mps;
        }
        double expected = struck * swingM2ps2 + sloping * swingSlopedM2ps2 - hiddenM2ps2;
        if (!(expected > 0)) {
            return;
        }
        heard++;
        seenStruck += Math.max(STRUCK_WEIGHT, 1.0 / heard) * (struck * seen / expected - seenStruck);
        if (mayChange() && isOther(seenStruck, struck, OTHER_STRUCK)) {
            double was = struck;
            struck = Math.max(LEAST_STRUCK, Math.min(MOST_STRUCK, seenStruck));
            // At a bound it stays, and so do the weights.
            alike = struck == was ? alike : 0;
        }
    }

    /** Whether the weights are being worked out anyway, or have stood for long enough. */
    private boolean mayChange() {
        return alike < SETTLED || stood >= STAND;
    }

    private static boolean isOther(double seen, double taken, double times) {
        return seen > times * taken || times * seen < taken;
    }

    /** How much the ground slopes for seconds on end, heard in the same way from its slopes and the climb. */
    private void listenToSlopes() {
        double seen = state[CLIMB + 1] * state[CLIMB + 1];
        for (int i = GROUND + sensors; i < states; i++) {
            seen += state[i] * state[i];
        }
        double expected = sloping * (sensors + 1) * SLOPE_SD_MPS * SLOPE_SD_MPS - hiddenSlopesM2ps2;
        if (!(expected > 0)) {
            return;
        }
        seenSloping += SLOPING_WEIGHT * (sloping * Math.min(MOST_TIMES, seen / expected) - seenSloping);
        if (mayChange() && isOther(seenSloping, sloping, OTHER_TIMES)) {
            double was = sloping;
            sloping = Math.max(LEAST_SLOPING, Math.min(MOST_SLOPING, seenSloping));
            alike = sloping == was ? alike : 0;
        }
    }

    /** How rough the ground is, as the boom shows it: variance of what it is on class D of ISO 8608 at 18 km/h. */
    public double roughness() {
        return struck;
    }

    private void begin() {
        Arrays.fill(falls, 0);
        Arrays.fill(state, 0);
        Arrays.fill(covariance, 0);
        for (int i = 0; i < longRun.length; i++) {
            covariance[i] = struck * longRun[i] + sloping * longRunSloped[i];
        }
        for (int i = 0; i < sensors; i++) {
            beginGroundCovariance(i);
        }
        alike = 0;
        apart = 0;
        look();
        for (int i = 0; i < senses.size(); i++) {
            state[GROUND + i] = taken[i] ? senses.get(i).tookM() : 0;
        }
    }

    private void goOn(int over) {
        Free step = free[over];
        carry(step, state);
        System.arraycopy(next, 0, state, 0, states);
        boolean same = look() && over == apart;
        apart = over;
        alike = same ? Math.min(SETTLED, alike + 1) : 0;
        stood = alike < SETTLED ? 0 : stood + 1;
        if (alike < SETTLED) {
            carry(step, struck, covariance, spare);
            double[] was = covariance;
            covariance = spare;
            spare = was;
        }
        for (int i = 0; i < senses.size(); i++) {
            if (taken[i] && senses.get(i).tookAnew()) {
                beginGround(i);
            }
        }
    }

    /** Which sensors have an echo, and how it scatters; whether both are as they were. */
    private boolean look() {
        boolean same = true;
        for (int i = 0; i < senses.size(); i++) {
            HeightSense sense = senses.get(i);
            boolean now = !Double.isNaN(sense.tookM());
            same &= now == taken[i] && !sense.tookAnew();
            taken[i] = now;
            double nowM2 = sense.scatterM2();
            if (mayChange() && isOther(nowM2, scatterM2[i], OTHER_TIMES)) {
                scatterM2[i] = nowM2;
                same = false;
            }
        }
        return same;
    }

    /** The ground under one sensor begins anew where its echo is. */
    private void beginGround(int sensor) {
        moveGround(sensor);
        int at = GROUND + sensor;
        for (int j = 0; j < states; j++) {
            covariance[at * states + j] = 0;
            covariance[j * states + at] = 0;
            covariance[(at + sensors) * states + j] = 0;
            covariance[j * states + at + sensors] = 0;
        }
        beginGroundCovariance(sensor);
    }

    private void moveGround(int sensor) {
        state[GROUND + sensor] += senses.get(sensor).tookM() - heightOf(state, sensor);
        state[GROUND + sensors + sensor] = 0;
    }

    private void beginGroundCovariance(int sensor) {
        covariance[(GROUND + sensor) * (states + 1)] = BEGIN_SD_M * BEGIN_SD_M;
        covariance[(GROUND + sensors + sensor) * (states + 1)] = sloping * SLOPE_SD_MPS * SLOPE_SD_MPS;
    }

    private double heightOf(double[] of, int sensor) {
        return swingOf(of, sensor, 0) + seesClimb[sensor] * of[CLIMB] + of[GROUND + sensor];
    }

    /** How fast the boom itself rises there, its swing and the machine's climb. */
    private double upOf(double[] of, int sensor) {
        return swingOf(of, sensor, 1) + of[CLIMB + 1];
    }

    /** How fast the height over the ground grows there. */
    private double rateOf(double[] of, int sensor) {
        return swingOf(of, sensor, 1) + seesClimb[sensor] * of[CLIMB + 1] + of[GROUND + sensors + sensor];
    }

    /** What the boom's swing makes of a height, or with an offset of 1 its speed. */
    private double swingOf(double[] of, int sensor, int offset) {
        return of[HEAVE + offset]
                + rollsM[sensor] * of[ROLL + offset]
                + leftShape[sensor] * of[LEFT + offset]
                + rightShape[sensor] * of[RIGHT + offset]
                + leftBeyondM[sensor] * of[LEFT_TILT + offset]
                + rightBeyondM[sensor] * of[RIGHT_TILT + offset];
    }

    private void weigh(int sensor) {
        double off = senses.get(sensor).tookM() - heightOf(state, sensor);
        double[] by = weight[sensor];
        if (alike < SETTLED) {
            offM2[sensor] = variance(covariance, sensor, 1, 0, 0) + scatterM2[sensor];
        }
        hearFall(sensor, off / Math.sqrt(offM2[sensor]));
        if (off * off > SURPRISE * offM2[sensor]) {
            if (alike < SETTLED) {
                beginGround(sensor);
            } else {
                // The weights stand: what this one reading may add to what is not known does not pay for all of them.
                moveGround(sensor);
            }
            return;
        }
        if (alike < SETTLED) {
            double perSum = 1 / offM2[sensor];
            for (int i = 0; i < states; i++) {
                by[i] = column[i] * perSum;
            }
            for (int i = 0; i < states; i++) {
                for (int j = 0; j < states; j++) {
                    covariance[i * states + j] -= by[i] * column[j];
                }
            }
        }
        for (int i = 0; i < states; i++) {
            state[i] += by[i] * off;
        }
    }

    /**
     * Height and own speed at each sensor now; a height that its sensor does not know is not known here.
     *
     * @param nowUs event time, µs
     * @param sensorM height at each sensor as it knows it by itself
     * @param flightS time for which a stream is in the air, about, s
     * @param into takes heights, how fast the boom rises there, and the variance of the heights that streams meet the ground from: that of the
     *     outlet and what its speed adds during flight
     */
    public void now(long nowUs, List<Quantity> sensorM, double flightS, HeightReadings into) {
        if (senses.isEmpty()) {
            return;
        }
        long overUs = nowUs + HeightSense.LAG_US - STEP_US * steps;
        int over = (int) Math.max(0, Math.min(MOST_STEPS, overUs / STEP_US));
        double restS = Math.max(0, Math.min(STEP_US, overUs - over * STEP_US)) * 1e-6;
        carry(free[over], state);
        Ahead variances = ahead[over];
        if (variances == null) {
            variances = ahead(over, flightS);
            ahead[over] = variances;
        }
        for (int i = 0; i < senses.size(); i++) {
            into.known[i] = sensorM.get(i).isKnown() && steps != Long.MIN_VALUE;
            into.heightM[i] = heightOf(next, i) + restS * rateOf(next, i);
            into.heightVariance[i] = variances.heightM2[i];
            into.rateMps[i] = upOf(next, i);
            into.rateVariance[i] = variances.speedM2ps2[i];
            into.meetsVariance[i] = variances.meetsM2[i];
        }
    }

    private Ahead ahead(int over, double flightS) {
        carry(free[over], struck, covariance, aheadCovariance);
        Ahead made = new Ahead(new double[sensors], new double[sensors], new double[sensors]);
        for (int i = 0; i < sensors; i++) {
            made.heightM2[i] = variance(aheadCovariance, i, 1, 0, 0);
            made.speedM2ps2[i] = variance(aheadCovariance, i, 0, 1, 1);
            made.meetsM2[i] = variance(aheadCovariance, i, 1, flightS, flightS);
        }
        return made;
    }

    /**
     * Variance of so many times the height there, so many seconds of its swing's speed and so many of the climb's; leaves the covariances
     * with it in the column.
     */
    private double variance(double[] of, int sensor, double heights, double swingS, double climbS) {
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

    // What follows looks ahead for BoomOutlook: heights and what becomes of them are rows of numbers, to be multiplied
    // by the state.

    /** Length of such a row. */
    int states() {
        return states;
    }

    /** Whether there is a state to begin from. */
    boolean isFollowing() {
        return steps != Long.MIN_VALUE;
    }

    /** Moment of the state, µs of event time: that of the last reading, which its sensors say late. */
    long stateUs() {
        return STEP_US * steps - HeightSense.LAG_US;
    }

    private void hearFall(int sensor, double deviations) {
        double worth = FALLS_BY * (-deviations - 0.5 * FALLS_BY);
        falls[sensor] = Math.max(0, Math.min(FALLS + MOST_OF_FALL, falls[sensor] + Math.min(MOST_OF_FALL, worth)));
    }

    /** Whether the height at a sensor falls as no motion of this boom explains: what is foretold from there on is not worth much. */
    public boolean isFalling(int sensor) {
        return falls[sensor] >= FALLS;
    }

    /** Whether the weights stand, and with them how well the state is known. */
    boolean stands() {
        return alike >= SETTLED;
    }

    /** How hard the boom is taken to be struck, times class D. */
    double struck() {
        return struck;
    }

    /** How much the ground is taken to slope, times what is usual. */
    double sloping() {
        return sloping;
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

    /** What a row gives with the state. */
    double dot(double[] row) {
        // Two sums side by side: none waits for the other. There are always as many odd states as even ones.
        double even = 0;
        double odd = 0;
        for (int i = 0; i < states; i += 2) {
            even += row[i] * state[i];
            odd += row[i + 1] * state[i + 1];
        }
        return even + odd;
    }

    /** Variance of that, by what is not known of the state. */
    double varianceOf(double[] row) {
        return square(row, covariance);
    }

    /** Variance that so many steps add to a row, by what strikes the boom on class D meanwhile. */
    double struckVarianceOf(double[] row, int over) {
        return square(row, free[over].struck);
    }

    /** The same by slopes of the ground as usual. */
    double slopedVarianceOf(double[] row, int over) {
        return square(row, free[over].sloped);
    }

    private double square(double[] row, double[] of) {
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
