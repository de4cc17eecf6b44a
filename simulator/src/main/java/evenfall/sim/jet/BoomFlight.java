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

    // What is the same for all streams of an outlet, by outlet; and the numbers of each set, [set · READY +
    // number][outlet], at
    // the upper node of the outlet's cell of heights and how they rise to the lower.
    private final int outlets;
    private final double[] sin;
    private final double[] cos;
    private final double[] overGroundMps;
    private final double[] cell;
    private final double[][] upper;
    private final double[][] rise;

    /** The working grid at one step of travel speed. */
    private static final class Grid {
        private final double[] values;
        private final int[] stamps;
        private int stamp;
        private double speedMps = Double.NaN;

        Grid(int nodes, int block) {
            values = new double[nodes * block];
            stamps = new int[nodes];
        }

        void at(double mps) {
            if (mps == speedMps) {
                return;
            }
            speedMps = mps;
            if (++stamp == Integer.MAX_VALUE) {
                Arrays.fill(stamps, 0);
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
        double down = 0;
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
            down += ratedDownMps[k] / streams;
            widest = Math.max(widest, Math.abs(stream.offsetM()));
        }
        meanDownMps = down;
        widestM = widest;
        int nodes = heights.count() * factors.count();
        even = new Grid(nodes, block);
        odd = new Grid(nodes, block);
        sin = new double[outlets];
        cos = new double[outlets];
        overGroundMps = new double[outlets];
        cell = new double[outlets];
        upper = new double[READY * sets][outlets];
        rise = new double[READY * sets][outlets];
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
        for (int i = 0; i < outlets; i++) {
            prepare(grid, states, i, travelMps);
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

    private void prepare(Grid grid, OutletStates states, int i, double travelMps) {
        double factor = states.speedFactor[i];
        double moveUp = states.upMps[i];
        sin[i] = sine(states.rollRad[i]);
        cos[i] = cosine(states.rollRad[i], sin[i]);
        overGroundMps[i] = travelMps + states.forwardMps[i];

        double heightM = Math.max(states.heightM[i], 0);
        double meanS = FlightTable.flightS(factor * meanDownMps - moveUp, heightM);
        int h = heights.cell(Math.sqrt(Math.max(0, heightM + moveUp * meanS)));
        cell[i] = h;
        int f = factors.cell(factor);
        double w1 = factors.place(factor) - f;
        int at = ready(grid, h, f);
        int below = ready(grid, h + 1, f);
        double faster = overGroundMps[i] - grid.speedMps;
        double moveRight = states.toRightMps[i];
        double[] v = grid.values;
        for (int s = 0; s < sets; s++) {
            int n = s * FlightTable.NUMBERS;
            mix(v, at + n, w1, faster, moveRight, moveUp, upper, s * READY, i);
            mix(v, below + n, w1, faster, moveRight, moveUp, rise, s * READY, i);
        }
        for (int r = 0; r < rise.length; r++) {
            rise[r][i] -= upper[r][i];
        }
    }

    /** The numbers of one set at one node of height and the outlet's exit speed, with the outlet's motion worked in. */
    private void mix(
            double[] v, int a, double w1, double faster, double right, double up, double[][] into, int r, int i) {
        int b = a + block;
        double w0 = 1 - w1;
        into[r][i] = w0 * (v[a] + faster * v[a + FlightTable.RIGHT_BY_SPEED] + up * v[a + FlightTable.RIGHT_BY_UP])
                + w1 * (v[b] + faster * v[b + FlightTable.RIGHT_BY_SPEED] + up * v[b + FlightTable.RIGHT_BY_UP]);
        into[r + FlightTable.BACK][i] = w0
                        * (v[a + FlightTable.BACK]
                                + faster * v[a + FlightTable.BACK_BY_SPEED]
                                + up * v[a + FlightTable.BACK_BY_UP])
                + w1
                        * (v[b + FlightTable.BACK]
                                + faster * v[b + FlightTable.BACK_BY_SPEED]
                                + up * v[b + FlightTable.BACK_BY_UP]);
        into[r + FlightTable.SIGMA][i] = w0 * v[a + FlightTable.SIGMA] + w1 * v[b + FlightTable.SIGMA];
        into[r + FlightTable.TURNED][i] = w0 * v[a + FlightTable.TURNED] + w1 * v[b + FlightTable.TURNED];
        into[r + ADDED][i] = right * (w0 * v[a + FlightTable.SIDEWAYS] + w1 * v[b + FlightTable.SIDEWAYS]);
    }

    /** One stream of all outlets: a plain loop over arrays, which the compiler turns into vector instructions. */
    private void fall(int k, OutletStates states, Landings into) {
        double[] airRight = upper[set[k]];
        double[] airRightRise = rise[set[k]];
        double[] airBack = upper[set[k] + FlightTable.BACK];
        double[] airBackRise = rise[set[k] + FlightTable.BACK];
        double[] turned = upper[set[k] + FlightTable.TURNED];
        double[] turnedRise = rise[set[k] + FlightTable.TURNED];
        double[] added = upper[set[k] + ADDED];
        double[] addedRise = rise[set[k] + ADDED];
        double[] sigma = upper[set[k] + FlightTable.SIGMA];
        double[] sigmaRise = rise[set[k] + FlightTable.SIGMA];
        double[] rightM = into.rightM[k];
        double[] backM = into.backM[k];
        double[] sigmaM = into.sigmaM[k];
        double[] quantity = into.quantity[k];
        double side = sign[k];
        double holeM = offsetM[k];
        double rightMps = ratedRightMps[k];
        double backMps = ratedBackMps[k];
        double downMps = ratedDownMps[k];
        double part = share[k];
        for (int i = 0; i < outlets; i++) {
            double factor = states.speedFactor[i];
            double holeHeightM = Math.max(0, states.heightM[i] + holeM * sin[i]);
            double plainRight = factor * rightMps;
            double plainDown = factor * downMps;
            double right = plainRight * cos[i] + plainDown * sin[i];
            double down = plainDown * cos[i] - plainRight * sin[i] - states.upMps[i];
            double t = FlightTable.flightS(down, holeHeightM);
            double asFromM = Math.max(0, holeHeightM + (plainDown - down) * t);
            double x = heights.place(Math.sqrt(asFromM)) - cell[i];
            double a = side * (airRight[i] + x * airRightRise[i])
                    + (turned[i] + x * turnedRise[i]) * (right - plainRight)
                    + (added[i] + x * addedRise[i]);
            rightM[i] = states.rightM[i] + holeM * cos[i] + t * (right + states.toRightMps[i] + t * a);
            backM[i] = t * (factor * backMps - overGroundMps[i] + t * (airBack[i] + x * airBackRise[i]));
            sigmaM[i] = sigma[i] + x * sigmaRise[i];
            quantity[i] = Math.max(0, states.quantity[i]) * part;
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

    /** Sees to it that two neighbouring nodes are filled, and tells where the first lies. */
    private int ready(Grid grid, int h, int f) {
        int node = h * factors.count() + f;
        for (int n = 0; n < 2; n++) {
            if (grid.stamps[node + n] != grid.stamp) {
                grid.stamps[node + n] = grid.stamp;
                table.read(heights.node(h), factors.node(f + n), grid.speedMps, grid.values, (node + n) * block);
            }
        }
        return node * block;
    }

    private static double sine(double x) {
        if (Math.abs(x) > SERIES_RAD) {
            return StrictMath.sin(x);
        }
        double s = x * x;
        return x * (1 - s / 6 * (1 - s / 20 * (1 - s / 42 * (1 - s / 72))));
    }

    private static double cosine(double x, double sine) {
        return Math.abs(x) > SERIES_RAD ? StrictMath.cos(x) : Math.sqrt(1 - sine * sine);
    }
}
