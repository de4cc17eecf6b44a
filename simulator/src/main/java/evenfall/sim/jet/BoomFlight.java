package evenfall.sim.jet;

import evenfall.outlet.Stream;
import java.util.Arrays;

/**
 * Lets all streams of a boom fall at one moment, by a {@link FlightTable}.
 *
 * <p>Exact: the outlet's roll and its own velocity go into the closed form without drag, and its forward velocity counts as travel
 * speed. By the table: what the air changes. It is looked up at the height from which an outlet at rest has the time of flight
 * that roll and motion leave to this stream, at the outlet's exit speed, with the table's first-order sensitivities. What is left
 * out is second order in roll and motion times the effect of the air; the tests say how much that is.
 *
 * <p>For speed the table is read twice. A working grid, finer along height and exit speed and at whole steps of an eighth of a metre a
 * second of travel, is filled by cubics where and when an outlet first needs it; from there each moment reads linearly. Two such grids
 * take turns, so that a speed that hovers between two steps fills nothing twice. Nothing is allocated after the constructor. The
 * answer never depends on earlier calls. One owner, one thread.
 */
public final class BoomFlight {
    /** Up to this roll the sine's series to the 9th power is right to 2e-11; beyond it (a boom on its side) the library's. */
    private static final double SERIES_RAD = 0.5;

    private static final double SPEED_STEP_MPS = 0.125;

    /** Steps of height and of exit speed in the working grid for one of the table. */
    private static final int FINER = 2;

    /** Numbers of a set once the outlet's motion is worked in. */
    private static final int READY = 5;

    private static final int ADDED = 4;

    private final FlightTable table;
    private final Axis heights;
    private final Axis factors;
    private final int streams;
    private final int sets;
    private final int block;
    private final int[] set;
    private final double[] sign;
    private final double[] share;
    private final double[] offsetM;
    private final double[] ratedRightMps;
    private final double[] ratedBackMps;
    private final double[] ratedDownMps;
    private final double meanDownMps;
    private final double widestM;

    private final Grid even;
    private final Grid odd;

    // What is the same for all streams of an outlet; and the numbers of each set at the upper node of the outlet's
    // cell of heights, and how they rise to the lower: [(set · READY + number) · outlets + outlet].
    private final int outlets;
    private final double[] sin;
    private final double[] cos;
    private final double[] overGroundMps;
    private final double[] cell;
    private final int[] node;
    private final double[] toNext;
    private final double[] upper;
    private final double[] rise;

    // One stream of all outlets on its way.
    private final double[] right;
    private final double[] down;
    private final double[] hole;
    private final double[] time;
    private final double[] level;
    private final double[] x;
    private final double[] bent;

    /** The working grid at one step of travel speed. */
    private static final class Grid {
        private final double[] values;
        private final int[] stamps;
        private final int[] cells;
        private int stamp;
        private double speedMps = Double.NaN;

        Grid(int nodes, int block) {
            values = new double[nodes * block];
            stamps = new int[nodes];
            cells = new int[nodes];
        }

        void at(double mps) {
            if (mps == speedMps) {
                return;
            }
            speedMps = mps;
            if (++stamp == Integer.MAX_VALUE) {
                Arrays.fill(stamps, 0);
                Arrays.fill(cells, 0);
                stamp = 1;
            }
        }
    }

    /**
     * @param table flight of the outlets that are fitted; may serve many booms
     * @param outlets how many there are on the boom
     */
    public BoomFlight(FlightTable table, int outlets) {
        this.outlets = outlets;
        this.table = table;
        heights = table.heights().finer(FINER);
        factors = table.factors().finer(FINER);
        streams = table.streams();
        sets = table.sets();
        block = FlightTable.NUMBERS * sets;
        set = new int[streams];
        sign = new double[streams];
        share = new double[streams];
        offsetM = new double[streams];
        ratedRightMps = new double[streams];
        ratedBackMps = new double[streams];
        ratedDownMps = new double[streams];
        double mean = 0;
        double widest = 0;
        for (int k = 0; k < streams; k++) {
            Stream stream = table.stream(k);
            set[k] = table.set(k) * READY;
            sign[k] = table.sign(k);
            share[k] = stream.share();
            offsetM[k] = stream.offsetM();
            ratedRightMps[k] = stream.exitMps() * stream.rightPart();
            ratedBackMps[k] = stream.exitMps() * stream.backPart();
            ratedDownMps[k] = stream.exitMps() * stream.downPart();
            mean += ratedDownMps[k] / streams;
            widest = Math.max(widest, Math.abs(stream.offsetM()));
        }
        meanDownMps = mean;
        widestM = widest;
        int nodes = heights.count() * factors.count();
        even = new Grid(nodes, block);
        odd = new Grid(nodes, block);
        sin = new double[outlets];
        cos = new double[outlets];
        overGroundMps = new double[outlets];
        cell = new double[outlets];
        node = new int[outlets];
        toNext = new double[outlets];
        upper = new double[READY * sets * outlets];
        rise = new double[READY * sets * outlets];
        right = new double[outlets];
        down = new double[outlets];
        hole = new double[outlets];
        time = new double[outlets];
        level = new double[outlets];
        x = new double[outlets];
        bent = new double[outlets];
    }

    /** How many streams an outlet has. */
    public int streams() {
        return streams;
    }

    /**
     * Lets every outlet fall.
     *
     * @param states how the outlets are
     * @param travelMps travel speed of the machine, m/s, 0 or more
     * @param into takes the lines; of as many outlets and streams
     */
    public void land(OutletStates states, double travelMps, Landings into) {
        if (states.outlets() != outlets || into.outlets != outlets || into.streams != streams) {
            throw new IllegalArgumentException("the states or the landings are not made for this boom");
        }
        long step = (long) Math.floor(travelMps / SPEED_STEP_MPS + 0.5);
        Grid grid = (step & 1) == 0 ? even : odd;
        grid.at(step * SPEED_STEP_MPS);
        turn(states, travelMps);
        find(states);
        for (int i = 0; i < outlets; i++) {
            work(grid, states, i);
        }
        for (int k = 0; k < streams; k++) {
            fall(k, states, into);
        }
        for (int i = 0; i < outlets; i++) {
            if (states.heightM[i] <= widestM * Math.abs(sin[i])) {
                bury(i, states, into);
            }
        }
    }

    // Three short loops and not one: the processor works on several outlets at once where each step is short.

    private void turn(OutletStates states, double travelMps) {
        for (int i = 0; i < outlets; i++) {
            double rollRad = states.rollRad[i];
            sin[i] = sine(rollRad);
            cos[i] = cosine(rollRad, sin[i]);
            overGroundMps[i] = travelMps + states.forwardMps[i];
        }
    }

    /** Finds each outlet's cell of the grid: by the mean stream's time of flight, so that it suits them all. */
    private void find(OutletStates states) {
        for (int i = 0; i < outlets; i++) {
            double moveUp = states.upMps[i];
            double heightM = positive(states.heightM[i]);
            double meanS = FlightTable.flightS(states.speedFactor[i] * meanDownMps - moveUp, heightM);
            double place = heights.place(Math.sqrt(positive(heightM + moveUp * meanS)));
            int h = Math.min(heights.count() - 2, (int) place);
            double factorPlace = factors.place(states.speedFactor[i]);
            int f = Math.min(factors.count() - 2, (int) factorPlace);
            cell[i] = h;
            node[i] = h * factors.count() + f;
            toNext[i] = factorPlace - f;
        }
    }

    private void work(Grid grid, OutletStates states, int i) {
        int n = node[i];
        int below = n + factors.count();
        if (grid.cells[n] != grid.stamp) {
            grid.cells[n] = grid.stamp;
            fill(grid, n);
            fill(grid, n + 1);
            fill(grid, below);
            fill(grid, below + 1);
        }
        double faster = overGroundMps[i] - grid.speedMps;
        for (int s = 0; s < sets; s++) {
            int p = n * block + s * FlightTable.NUMBERS;
            int q = below * block + s * FlightTable.NUMBERS;
            int to = s * READY * outlets + i;
            mix(grid.values, p, q, toNext[i], faster, states.toRightMps[i], states.upMps[i], to);
        }
    }

    /** Sees to it that a node is filled. */
    private void fill(Grid grid, int n) {
        if (grid.stamps[n] != grid.stamp) {
            grid.stamps[n] = grid.stamp;
            int h = n / factors.count();
            int f = n % factors.count();
            table.read(heights.node(h), factors.node(f), grid.speedMps, grid.values, n * block);
        }
    }

    /**
     * The numbers of one set at the outlet's exit speed and at both nodes of its cell, with the outlet's motion worked in. What is
     * small or multiplies what is small is read at the nearest exit speed.
     */
    private void mix(double[] v, int p, int q, double w1, double faster, double right, double up, int to) {
        int near = w1 > 0.5 ? block : 0;
        int m = p + near;
        int n = q + near;
        double a = between(v, p + FlightTable.RIGHT, w1)
                + faster * v[m + FlightTable.RIGHT_BY_SPEED]
                + up * v[m + FlightTable.RIGHT_BY_UP];
        double b = between(v, q + FlightTable.RIGHT, w1)
                + faster * v[n + FlightTable.RIGHT_BY_SPEED]
                + up * v[n + FlightTable.RIGHT_BY_UP];
        put(to + FlightTable.RIGHT * outlets, a, b);
        a = between(v, p + FlightTable.BACK, w1)
                + faster * v[m + FlightTable.BACK_BY_SPEED]
                + up * v[m + FlightTable.BACK_BY_UP];
        b = between(v, q + FlightTable.BACK, w1)
                + faster * v[n + FlightTable.BACK_BY_SPEED]
                + up * v[n + FlightTable.BACK_BY_UP];
        put(to + FlightTable.BACK * outlets, a, b);
        put(to + FlightTable.SIGMA * outlets, v[m + FlightTable.SIGMA], v[n + FlightTable.SIGMA]);
        put(to + FlightTable.TURNED * outlets, v[m + FlightTable.TURNED], v[n + FlightTable.TURNED]);
        put(to + ADDED * outlets, right * v[m + FlightTable.SIDEWAYS], right * v[n + FlightTable.SIDEWAYS]);
    }

    private double between(double[] v, int at, double w1) {
        double a = v[at];
        return a + w1 * (v[at + block] - a);
    }

    private void put(int at, double a, double b) {
        upper[at] = a;
        rise[at] = b - a;
    }

    // One stream of all outlets, in loops so short that the compiler (JDK 17) turns them into vector instructions; it
    // leaves one
    // long loop as it is, at more than twice the time. For the same reason nothing here branches.

    private void fall(int k, OutletStates states, Landings into) {
        double rightMps = ratedRightMps[k];
        double downMps = ratedDownMps[k];
        leave(states, offsetM[k], rightMps, downMps);
        time();
        level(states.speedFactor, downMps);
        place();
        double[] rightM = into.rightM[k];
        bend(set[k] + FlightTable.RIGHT, set[k] + ADDED, sign[k]);
        turned(set[k] + FlightTable.TURNED, states.speedFactor, rightMps);
        aside(states, offsetM[k], rightM);
        back(set[k] + FlightTable.BACK, states.speedFactor, ratedBackMps[k], into.backM[k]);
        blend(set[k] + FlightTable.SIGMA, into.sigmaM[k]);
        quantity(states.quantity, share[k], into.quantity[k]);
    }

    /** How the stream leaves its hole. */
    private void leave(OutletStates states, double holeM, double rightMps, double downMps) {
        double[] factor = states.speedFactor;
        double[] up = states.upMps;
        for (int i = 0; i < right.length; i++) {
            right[i] = factor[i] * (rightMps * cos[i] + downMps * sin[i]);
            down[i] = factor[i] * (downMps * cos[i] - rightMps * sin[i]) - up[i];
        }
        double[] heightM = states.heightM;
        for (int i = 0; i < hole.length; i++) {
            double over = heightM[i] + holeM * sin[i];
            hole[i] = 0.5 * (over + Math.abs(over));
        }
    }

    /** Time of flight without drag, s: {@link FlightTable#flightS}, written out. */
    private void time() {
        for (int i = 0; i < time.length; i++) {
            time[i] = (Math.sqrt(down[i] * down[i] + 2 * FlightTable.GRAVITY_MPS2 * hole[i]) - down[i])
                    * FlightTable.PER_GRAVITY;
        }
    }

    /** Root of the height from which an outlet at rest has that time of flight. */
    private void level(double[] factor, double downMps) {
        for (int i = 0; i < level.length; i++) {
            double height = hole[i] + (factor[i] * downMps - down[i]) * time[i];
            level[i] = Math.sqrt(0.5 * (height + Math.abs(height)));
        }
    }

    /** Where that lies in the outlet's cell of the grid, in steps; held within the grid. */
    private void place() {
        double from = heights.node(0);
        double perStep = 1 / heights.step();
        double last = heights.count() - 1.0;
        for (int i = 0; i < x.length; i++) {
            double place = (level[i] - from) * perStep;
            double above = 0.5 * (place + Math.abs(place));
            x[i] = 0.5 * (above + last - Math.abs(above - last)) - cell[i];
        }
    }

    /** What the air adds to the right, over the square of the time. */
    private void bend(int air, int added, double side) {
        int a = air * outlets;
        int b = added * outlets;
        for (int i = 0; i < bent.length; i++) {
            bent[i] = side * (upper[a + i] + x[i] * rise[a + i]) + (upper[b + i] + x[i] * rise[b + i]);
        }
    }

    private void turned(int number, double[] factor, double rightMps) {
        int a = number * outlets;
        for (int i = 0; i < bent.length; i++) {
            bent[i] += (upper[a + i] + x[i] * rise[a + i]) * (right[i] - factor[i] * rightMps);
        }
    }

    private void aside(OutletStates states, double holeM, double[] rightM) {
        double[] at = states.rightM;
        double[] moved = states.toRightMps;
        for (int i = 0; i < rightM.length; i++) {
            rightM[i] = at[i] + holeM * cos[i] + time[i] * (right[i] + moved[i] + time[i] * bent[i]);
        }
    }

    private void back(int number, double[] factor, double backMps, double[] backM) {
        int a = number * outlets;
        for (int i = 0; i < backM.length; i++) {
            double air = upper[a + i] + x[i] * rise[a + i];
            backM[i] = time[i] * (factor[i] * backMps - overGroundMps[i] + time[i] * air);
        }
    }

    private void blend(int number, double[] to) {
        int a = number * outlets;
        for (int i = 0; i < to.length; i++) {
            to[i] = upper[a + i] + x[i] * rise[a + i];
        }
    }

    private static void quantity(double[] whole, double part, double[] to) {
        for (int i = 0; i < to.length; i++) {
            to[i] = 0.5 * (whole[i] + Math.abs(whole[i])) * part;
        }
    }

    /** A hole in the crop or soil lets its liquid go where it is, though the stream would rise. */
    private void bury(int i, OutletStates states, Landings into) {
        for (int k = 0; k < streams; k++) {
            if (states.heightM[i] + offsetM[k] * sin[i] <= 0) {
                into.rightM[k][i] = states.rightM[i] + offsetM[k] * cos[i];
                into.backM[k][i] = 0;
            }
        }
    }

    /** A branch that is nearly always the same costs less than the library's exact maximum. */
    private static double positive(double x) {
        return x > 0 ? x : 0;
    }

    private static double sine(double x) {
        if (Math.abs(x) > SERIES_RAD) {
            return StrictMath.sin(x);
        }
        double s = x * x;
        return x * (1 - s * (1.0 / 6) * (1 - s * (1.0 / 20) * (1 - s * (1.0 / 42) * (1 - s * (1.0 / 72)))));
    }

    private static double cosine(double x, double sine) {
        return Math.abs(x) > SERIES_RAD ? StrictMath.cos(x) : Math.sqrt(1 - sine * sine);
    }
}
