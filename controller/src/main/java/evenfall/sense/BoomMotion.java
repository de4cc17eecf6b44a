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
 * <p>What a boom's own speed gives to its streams is wanted, so only that is told: a climb is part of it, the ground's slopes are not.
 *
 * <p>Boom and ground make one linear model, {@link BoomModel}, and a Kalman filter (R. E. Kalman, 1960) follows it, echo by echo. Its weights
 * depend on when echoes come and how they scatter, and on what they say only by how hard the boom is struck and how much the ground slopes. While
 * all that stays as it is for {@value #SETTLED} readings the weights stand still and are not worked out again.
 */
public final class BoomMotion {
    /** How much the ground slopes, over what the model takes, before any is heard: as much as is begun with of how hard the boom is struck. Our choice. */
    private static final double FIRST_SLOPING = 0.25;

    /** Bounds of that: no more than ground that is rough without slopes shows, and twice as fast as terraces. Our choice. */
    private static final double LEAST_SLOPING = 1.0 / 64;

    private static final double MOST_SLOPING = 4;

    /** Weight of the newest reading in it: one second of 20 a second, as long as a slope lasts. Our choice. */
    private static final double SLOPING_WEIGHT = 0.05;

    /** One reading speaks for no more than so many times what was taken. Our choice. */
    private static final double MOST_TIMES = 5;

    /** Weight of the newest reading in how hard the boom is struck: the last minute of 20 a second, some dozens of swings. Our choice. */
    private static final double STRUCK_WEIGHT = 1.0 / 1200;

    /** Before any is heard: class C, between a smooth field and a rough one; worth as much as 5 s that were heard. Our choice. */
    private static final double FIRST_STRUCK = 0.25;

    private static final int FIRST_HEARD = 100;

    /** Bounds of how hard it is struck: from a carpet to class E at twice the speed. */
    private static final double LEAST_STRUCK = 1.0 / 64;

    private static final double MOST_STRUCK = 8;

    /** Nothing is known of the ground under a sensor that begins, but that it is where the echo says to so much, m. Our choice. */
    private static final double BEGIN_SD_M = 0.1;

    /** A reading farther off than five standard deviations is no motion of this boom: the ground under it begins anew. Our choice. */
    private static final double SURPRISE = 25;

    /** Three seconds of 20 readings: about three times as long as its slowest parts, climbs and slopes, remember. */
    private static final int SETTLED = 60;

    /**
     * After they have settled the weights stand for so many readings, 20 s, whatever is heard of scatter, roughness and slopes meanwhile; an echo that
     * is missing does not wait. To work them out takes twenty times as long as to use them. Our choice.
     */
    private static final int STAND = 400;

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

    private final List<HeightSense> senses;
    private final BoomModel model;
    private final int sensors;
    private final int states;
    private final double[] state;
    private final double[] next;
    private double[] covariance;
    private double[] spare;
    private final double[][] weight;

    /** For each sensor how its readings scatter, m², as the weights take it. */
    private final double[] scatterM2;

    /** By how much a reading is expected to be off, variance, m². */
    private final double[] offM2;

    private final boolean[] taken;

    /** Evidence that the height at each sensor falls as no motion explains. */
    private final double[] falls;

    /** Whether the ground under a sensor has not been followed: its next echo begins it anew. */
    private final boolean[] unplaced;

    private long steps = Long.MIN_VALUE;
    private int apart;
    private int alike;
    private int stood;

    private double struck = FIRST_STRUCK;
    private double seenStruck = FIRST_STRUCK;
    private double sloping = FIRST_SLOPING;
    private double seenSloping = FIRST_SLOPING;
    private int heard = FIRST_HEARD;

    /** What the sensors leave unknown of the boom's swing, summed as {@link BoomModel#swingM2ps2}; worked out with the weights. */
    private double hiddenM2ps2;

    /** The same of the ground's slopes and the climb. */
    private double hiddenSlopesM2ps2;

    private final double[] aheadCovariance;

    /** For each number of steps ahead the variances there, or null while they are not worked out. */
    private final @Nullable Ahead[] ahead = new Ahead[BoomModel.MOST_STEPS + 1];

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
        model = new BoomModel(sensors, hingeM, endM);
        states = model.states();
        state = new double[states];
        next = new double[states];
        covariance = new double[states * states];
        spare = new double[states * states];
        aheadCovariance = new double[states * states];
        weight = new double[n][states];
        scatterM2 = new double[n];
        offM2 = new double[n];
        taken = new boolean[n];
        falls = new double[n];
        unplaced = new boolean[n];
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
        long nowSteps = Math.floorDiv(timeUs + BoomModel.STEP_US / 2, BoomModel.STEP_US);
        if (nowSteps < steps || nowSteps - steps > BoomModel.MOST_STEPS || steps == Long.MIN_VALUE) {
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
            hiddenM2ps2 = model.swingVariance(covariance);
            hiddenSlopesM2ps2 = covariance[(BoomModel.CLIMB + 1) * (states + 1)];
            for (int i = BoomModel.GROUND + sensors; i < states; i++) {
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
            double mps = model.swingOf(state, i, 1);
            seen += mps * mps;
        }
        double expected = struck * model.swingM2ps2 + sloping * model.swingSlopedM2ps2 - hiddenM2ps2;
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
        double seen = state[BoomModel.CLIMB + 1] * state[BoomModel.CLIMB + 1];
        for (int i = BoomModel.GROUND + sensors; i < states; i++) {
            seen += state[i] * state[i];
        }
        double expected = sloping * (sensors + 1) * BoomModel.SLOPE_SD_MPS * BoomModel.SLOPE_SD_MPS - hiddenSlopesM2ps2;
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
        for (int i = 0; i < model.longRun.length; i++) {
            covariance[i] = struck * model.longRun[i] + sloping * model.longRunSloped[i];
        }
        for (int i = 0; i < sensors; i++) {
            beginGroundCovariance(i);
        }
        alike = 0;
        apart = 0;
        look();
        for (int i = 0; i < senses.size(); i++) {
            double knownM = taken[i] ? senses.get(i).tookM() : senses.get(i).followsM();
            state[BoomModel.GROUND + i] = Double.isNaN(knownM) ? 0 : knownM;
            unplaced[i] = !taken[i];
        }
    }

    private void goOn(int over) {
        BoomModel.Free step = model.free[over];
        model.carry(step, state, next);
        System.arraycopy(next, 0, state, 0, states);
        boolean same = look() && over == apart;
        apart = over;
        alike = same ? Math.min(SETTLED, alike + 1) : 0;
        stood = alike < SETTLED ? 0 : stood + 1;
        if (alike < SETTLED) {
            model.carry(step, struck, sloping, covariance, spare);
            double[] was = covariance;
            covariance = spare;
            spare = was;
        }
        for (int i = 0; i < senses.size(); i++) {
            if (taken[i] && (unplaced[i] || senses.get(i).tookAnew())) {
                beginGround(i);
                unplaced[i] = false;
                falls[i] = 0;
            }
        }
    }

    /** Which sensors have an echo, and how it scatters; whether both are as they were. */
    private boolean look() {
        boolean same = true;
        for (int i = 0; i < senses.size(); i++) {
            HeightSense sense = senses.get(i);
            // One that is not believed must not move the boom; where it is believed again, nobody has followed the
            // ground under it.
            unplaced[i] |= sense.isDoubted();
            boolean now = !Double.isNaN(sense.tookM()) && !sense.isDoubted();
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
        int at = BoomModel.GROUND + sensor;
        for (int j = 0; j < states; j++) {
            covariance[at * states + j] = 0;
            covariance[j * states + at] = 0;
            covariance[(at + sensors) * states + j] = 0;
            covariance[j * states + at + sensors] = 0;
        }
        beginGroundCovariance(sensor);
    }

    private void moveGround(int sensor) {
        state[BoomModel.GROUND + sensor] += senses.get(sensor).tookM() - model.heightOf(state, sensor);
        state[BoomModel.GROUND + sensors + sensor] = 0;
    }

    private void beginGroundCovariance(int sensor) {
        covariance[(BoomModel.GROUND + sensor) * (states + 1)] = BEGIN_SD_M * BEGIN_SD_M;
        covariance[(BoomModel.GROUND + sensors + sensor) * (states + 1)] =
                sloping * BoomModel.SLOPE_SD_MPS * BoomModel.SLOPE_SD_MPS;
    }

    private void weigh(int sensor) {
        double off = senses.get(sensor).tookM() - model.heightOf(state, sensor);
        double[] by = weight[sensor];
        if (alike < SETTLED) {
            offM2[sensor] = model.variance(covariance, sensor, 1, 0, 0) + scatterM2[sensor];
        }
        hearFall(sensor, off / Math.sqrt(offM2[sensor]));
        if (off * off > SURPRISE * offM2[sensor]) {
            if (alike < SETTLED) {
                beginGround(sensor);
                // The weights must not come to stand on what is not known of a ground that has just begun.
                alike = 0;
            } else {
                // The weights stand: what this one reading may add to what is not known does not pay for all of them.
                moveGround(sensor);
            }
            return;
        }
        if (alike < SETTLED) {
            double perSum = 1 / offM2[sensor];
            for (int i = 0; i < states; i++) {
                by[i] = model.column[i] * perSum;
            }
            for (int i = 0; i < states; i++) {
                for (int j = 0; j < states; j++) {
                    covariance[i * states + j] -= by[i] * model.column[j];
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
        long overUs = nowUs + HeightSense.LAG_US - BoomModel.STEP_US * steps;
        int over = (int) Math.max(0, Math.min(BoomModel.MOST_STEPS, overUs / BoomModel.STEP_US));
        double restS = Math.max(0, Math.min(BoomModel.STEP_US, overUs - over * BoomModel.STEP_US)) * 1e-6;
        model.carry(model.free[over], state, next);
        Ahead variances = ahead[over];
        if (variances == null) {
            variances = ahead(over, flightS);
            ahead[over] = variances;
        }
        for (int i = 0; i < senses.size(); i++) {
            into.known[i] = sensorM.get(i).isKnown() && steps != Long.MIN_VALUE;
            into.heightM[i] = model.heightOf(next, i) + restS * model.rateOf(next, i);
            into.heightVariance[i] = variances.heightM2[i];
            into.rateMps[i] = model.upOf(next, i);
            into.rateVariance[i] = variances.speedM2ps2[i];
            into.meetsVariance[i] = variances.meetsM2[i];
        }
    }

    private Ahead ahead(int over, double flightS) {
        model.carry(model.free[over], struck, sloping, covariance, aheadCovariance);
        Ahead made = new Ahead(new double[sensors], new double[sensors], new double[sensors]);
        for (int i = 0; i < sensors; i++) {
            made.heightM2[i] = model.variance(aheadCovariance, i, 1, 0, 0);
            made.speedM2ps2[i] = model.variance(aheadCovariance, i, 0, 1, 1);
            made.meetsM2[i] = model.variance(aheadCovariance, i, 1, flightS, flightS);
        }
        return made;
    }

    // What follows looks ahead for BoomOutlook: heights and what becomes of them are rows of numbers, to be multiplied
    // by the state.

    /** What it follows. */
    BoomModel model() {
        return model;
    }

    /** Whether there is a state to begin from. */
    boolean isFollowing() {
        return steps != Long.MIN_VALUE;
    }

    /** Moment of the state, µs of event time: that of the last reading, which its sensors say late. */
    long stateUs() {
        return BoomModel.STEP_US * steps - HeightSense.LAG_US;
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

    /** How much the ground is taken to slope, times what is usual. */
    double sloping() {
        return sloping;
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
        return model.square(row, covariance);
    }
}
