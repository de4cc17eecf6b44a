package evenfall.sim.jet;

import evenfall.outlet.Stream;
import java.util.Arrays;

/**
 * Lets all streams of a boom fall, at one moment or at several at once, by a {@link FlightTable}.
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

    // What a cell of the grid keeps for each set of numbers: at its upper, slower corner, and how that grows over the
    // cell to the
    // faster exit speed, to the greater height, and to both. What is small or multiplies what is small is kept as at
    // the middle.
    private static final int RIGHT = 0;
    private static final int RIGHT_FASTER = 1;
    private static final int RIGHT_LOWER = 2;
    private static final int RIGHT_BOTH = 3;
    private static final int RIGHT_BY_SPEED = 4;
    private static final int RIGHT_BY_UP = 5;
    private static final int BACK = 6;
    private static final int BACK_FASTER = 7;
    private static final int BACK_LOWER = 8;
    private static final int BACK_BOTH = 9;
    private static final int BACK_BY_SPEED = 10;
    private static final int BACK_BY_UP = 11;
    private static final int SIGMA = 12;
    private static final int SIGMA_LOWER = 13;
    private static final int TURNED = 14;
    private static final int SIDEWAYS = 15;
    private static final int KEPT = 16;

    private final FlightTable table;
    private final Axis heights;
    private final Axis factors;
    private final int streams;
    private final int sets;
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
    private final double[][] corner;
    private final double[] oneMps = new double[1];

    // By place (moment · outlets + outlet), what is the same for all streams.
    private final int outlets;
    private final int places;
    private final double[] sin;
    private final double[] cos;
    private final double[] overGroundMps;
    private final double[] fasterMps;
    private final double[] heightPlace;
    private final double[] factorPlace;
    private final int[] cell;

    // By set and place: the numbers at the upper end of the outlet's cell, the outlet's motion worked in, and how they
    // grow
    // towards the lower end.
    private final double[][] airRight;
    private final double[][] airRightLower;
    private final double[][] airBack;
    private final double[][] airBackLower;
    private final double[][] sigmaM;
    private final double[][] sigmaLowerM;
    private final double[][] turned;
    private final double[][] carried;

    // One stream of all places on its way.
    private final double[] right;
    private final double[] down;
    private final double[] hole;
    private final double[] time;
    private final double[] x;
    private final double[] bent;

    /** The working grid at one step of travel speed. */
    private static final class Grid {
        private final double[] values;
        private final int[] stamps;
        private int stamp;
        private double speedMps = Double.NaN;

        Grid(int cells, int sets) {
            values = new double[cells * sets * KEPT];
            stamps = new int[cells];
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
        this(table, outlets, 1);
    }

    /**
     * @param table flight of the outlets that are fitted; may serve many booms
     * @param outlets how many there are on the boom
     * @param moments how many moments may be worked out at once
     */
    public BoomFlight(FlightTable table, int outlets, int moments) {
        this.outlets = outlets;
        places = outlets * moments;
        this.table = table;
        heights = table.heights().finer(FINER);
        factors = table.factors().finer(FINER);
        streams = table.streams();
        sets = table.sets();
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
            set[k] = table.set(k);
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
        int cells = (heights.count() - 1) * (factors.count() - 1);
        even = new Grid(cells, sets);
        odd = new Grid(cells, sets);
        corner = new double[4][FlightTable.NUMBERS * sets];
        sin = new double[places];
        cos = new double[places];
        overGroundMps = new double[places];
        fasterMps = new double[places];
        heightPlace = new double[places];
        factorPlace = new double[places];
        cell = new int[places];
        airRight = new double[sets][places];
        airRightLower = new double[sets][places];
        airBack = new double[sets][places];
        airBackLower = new double[sets][places];
        sigmaM = new double[sets][places];
        sigmaLowerM = new double[sets][places];
        turned = new double[sets][places];
        carried = new double[sets][places];
        right = new double[places];
        down = new double[places];
        hole = new double[places];
        time = new double[places];
        x = new double[places];
        bent = new double[places];
    }

    /** How many streams an outlet has. */
    public int streams() {
        return streams;
    }

    /**
     * Lets every outlet fall at one moment.
     *
     * @param states how the outlets are
     * @param travelMps travel speed of the machine, m/s, 0 or more
     * @param into takes the lines; of as many outlets and streams
     */
    public void land(OutletStates states, double travelMps, Landings into) {
        oneMps[0] = travelMps;
        land(states, oneMps, 1, into);
    }

    /**
     * Lets every outlet fall at several moments: the same as one moment after the other, in less time.
     *
     * @param states how the outlets are
     * @param travelMps travel speed of the machine at each moment, m/s, 0 or more
     * @param moments how many, of those that there is room for
     * @param into takes the lines; of as many outlets and streams
     */
    public void land(OutletStates states, double[] travelMps, int moments, Landings into) {
        int n = moments * outlets;
        if (states.outlets != outlets || into.outlets != outlets || into.streams != streams) {
            throw new IllegalArgumentException("the states or the landings are not made for this boom");
        }
        if (n > places || moments > states.moments || moments > into.moments) {
            throw new IllegalArgumentException("there is no room for " + moments + " moments");
        }
        turn(states.rollRad, n);
        find(states, n);
        for (int m = 0; m < moments; ) {
            m = read(states, travelMps, m, moments);
        }
        for (int k = 0; k < streams; k++) {
            fall(k, states, into, n);
        }
        for (int i = 0; i < n; i++) {
            if (states.heightM[i] <= widestM * Math.abs(sin[i])) {
                bury(i, states, into);
            }
        }
    }

    // Short loops over long rows, and no branches in them: the compiler (JDK 17) turns those into vector instructions.
    // It
    // leaves one
    // long loop as it is, at more than twice the time, and rows of one moment end before the vectors pay.

    /** Sine and cosine of the roll. */
    private void turn(double[] rollRad, int n) {
        for (int i = 0; i < n; i++) {
            double square = rollRad[i] * rollRad[i];
            sin[i] = rollRad[i]
                    * (1
                            - square
                                    * (1.0 / 6)
                                    * (1
                                            - square
                                                    * (1.0 / 20)
                                                    * (1 - square * (1.0 / 42) * (1 - square * (1.0 / 72)))));
        }
        for (int i = 0; i < n; i++) {
            cos[i] = Math.sqrt(1 - sin[i] * sin[i]);
        }
        for (int i = 0; i < n; i++) {
            if (Math.abs(rollRad[i]) > SERIES_RAD) {
                sin[i] = StrictMath.sin(rollRad[i]);
                cos[i] = StrictMath.cos(rollRad[i]);
            }
        }
    }

    /** Finds each outlet's place in the grid: by the mean stream's time of flight, so that it suits them all. */
    private void find(OutletStates states, int n) {
        double[] heightM = states.heightM;
        double[] factor = states.speedFactor;
        double[] up = states.upMps;
        for (int i = 0; i < n; i++) {
            hole[i] = positive(heightM[i]);
            down[i] = factor[i] * meanDownMps - up[i];
        }
        time(n);
        for (int i = 0; i < n; i++) {
            heightPlace[i] = Math.sqrt(positive(hole[i] + up[i] * time[i]));
        }
        held(heights, heightPlace, heightPlace, n);
        held(factors, factor, factorPlace, n);
    }

    /** {@link Axis#place}, written out for a row. */
    private static void held(Axis axis, double[] at, double[] place, int n) {
        double from = axis.node(0);
        double perStep = 1 / axis.step();
        double last = axis.count() - 1.0;
        for (int i = 0; i < n; i++) {
            double above = positive((at[i] - from) * perStep);
            place[i] = 0.5 * (above + last - Math.abs(above - last));
        }
    }

    /**
     * Reads the table for all outlets, from one moment on for as long as the same grid serves.
     *
     * @return the first moment that needs another
     */
    private int read(OutletStates states, double[] travelMps, int first, int moments) {
        long step = speedStep(travelMps[first]);
        Grid grid = (step & 1) == 0 ? even : odd;
        grid.at(step * SPEED_STEP_MPS);
        int m = first;
        while (m < moments && speedStep(travelMps[m]) == step) {
            travel(states.forwardMps, travelMps[m], grid.speedMps, m * outlets);
            m++;
        }
        int from = first * outlets;
        int end = m * outlets;
        for (int i = from; i < end; i++) {
            cell[i] = filled(grid, cellOf(i));
        }
        for (int s = 0; s < sets; s++) {
            mix(grid, s, states, from, end);
        }
        return m;
    }

    private static long speedStep(double travelMps) {
        return (long) Math.floor(travelMps / SPEED_STEP_MPS + 0.5);
    }

    private void travel(double[] forwardMps, double travelMps, double gridMps, int from) {
        for (int i = from; i < from + outlets; i++) {
            overGroundMps[i] = travelMps + forwardMps[i];
            fasterMps[i] = overGroundMps[i] - gridMps;
        }
    }

    /** The cell that an outlet is in. From here on its places are counted from the cell's corner. */
    private int cellOf(int i) {
        int h = Math.min(heights.count() - 2, (int) heightPlace[i]);
        int f = Math.min(factors.count() - 2, (int) factorPlace[i]);
        heightPlace[i] = h;
        factorPlace[i] -= f;
        return h * (factors.count() - 1) + f;
    }

    /** Sees to it that a cell is filled; says where its numbers begin. */
    private int filled(Grid grid, int c) {
        int at = c * sets * KEPT;
        if (grid.stamps[c] != grid.stamp) {
            grid.stamps[c] = grid.stamp;
            int h = c / (factors.count() - 1);
            int f = c % (factors.count() - 1);
            for (int n = 0; n < corner.length; n++) {
                table.read(heights.node(h + n / 2), factors.node(f + n % 2), grid.speedMps, corner[n], 0);
            }
            for (int s = 0; s < sets; s++) {
                fill(grid.values, at + s * KEPT, s * FlightTable.NUMBERS);
            }
        }
        return at;
    }

    private void fill(double[] v, int at, int from) {
        corners(v, at + RIGHT, from + FlightTable.RIGHT);
        v[at + RIGHT_BY_SPEED] = middle(from + FlightTable.RIGHT_BY_SPEED);
        v[at + RIGHT_BY_UP] = middle(from + FlightTable.RIGHT_BY_UP);
        corners(v, at + BACK, from + FlightTable.BACK);
        v[at + BACK_BY_SPEED] = middle(from + FlightTable.BACK_BY_SPEED);
        v[at + BACK_BY_UP] = middle(from + FlightTable.BACK_BY_UP);
        int sigma = from + FlightTable.SIGMA;
        v[at + SIGMA] = 0.5 * (corner[0][sigma] + corner[1][sigma]);
        v[at + SIGMA_LOWER] = 0.5 * (corner[2][sigma] + corner[3][sigma]) - v[at + SIGMA];
        v[at + TURNED] = middle(from + FlightTable.TURNED);
        v[at + SIDEWAYS] = middle(from + FlightTable.SIDEWAYS);
    }

    private void corners(double[] v, int at, int number) {
        double here = corner[0][number];
        double faster = corner[1][number];
        double lower = corner[2][number];
        v[at] = here;
        v[at + 1] = faster - here;
        v[at + 2] = lower - here;
        v[at + 3] = corner[3][number] - faster - lower + here;
    }

    private double middle(int number) {
        return 0.25 * (corner[0][number] + corner[1][number] + corner[2][number] + corner[3][number]);
    }

    /**
     * Works each outlet's motion into the numbers of its cell. Nothing can be done for several outlets at once here, each having its
     * own cell; what helps is that a cell's numbers lie together, so that one check of the array's bounds serves them all.
     */
    private void mix(Grid grid, int s, OutletStates states, int from, int end) {
        double[] v = grid.values;
        double[] up = states.upMps;
        double[] aside = states.toRightMps;
        double[] right = airRight[s];
        double[] rightLower = airRightLower[s];
        double[] back = airBack[s];
        double[] backLower = airBackLower[s];
        double[] sigma = sigmaM[s];
        double[] sigmaLower = sigmaLowerM[s];
        double[] turns = turned[s];
        double[] carries = carried[s];
        for (int i = from; i < end; i++) {
            int c = cell[i] + s * KEPT;
            double w = factorPlace[i];
            right[i] = v[c + RIGHT]
                    + w * v[c + RIGHT_FASTER]
                    + fasterMps[i] * v[c + RIGHT_BY_SPEED]
                    + up[i] * v[c + RIGHT_BY_UP];
            rightLower[i] = v[c + RIGHT_LOWER] + w * v[c + RIGHT_BOTH];
            back[i] = v[c + BACK]
                    + w * v[c + BACK_FASTER]
                    + fasterMps[i] * v[c + BACK_BY_SPEED]
                    + up[i] * v[c + BACK_BY_UP];
            backLower[i] = v[c + BACK_LOWER] + w * v[c + BACK_BOTH];
            sigma[i] = v[c + SIGMA];
            sigmaLower[i] = v[c + SIGMA_LOWER];
            turns[i] = v[c + TURNED];
            carries[i] = aside[i] * v[c + SIDEWAYS];
        }
    }

    private void fall(int k, OutletStates states, Landings into, int n) {
        double rightMps = ratedRightMps[k];
        double downMps = ratedDownMps[k];
        leave(states, rightMps, downMps, n);
        over(states.heightM, offsetM[k], n);
        time(n);
        level(states.speedFactor, downMps, n);
        place(n);
        int s = set[k];
        bend(airRight[s], airRightLower[s], sign[k], n);
        turn(turned[s], carried[s], states.speedFactor, rightMps, n);
        aside(states, offsetM[k], into.rightM[k], n);
        blend(airBack[s], airBackLower[s], bent, n);
        back(states.speedFactor, ratedBackMps[k], into.backM[k], n);
        blend(sigmaM[s], sigmaLowerM[s], into.sigmaM[k], n);
        quantity(states.quantity, share[k], into.quantity[k], n);
    }

    /** How the stream leaves its hole. */
    private void leave(OutletStates states, double rightMps, double downMps, int n) {
        double[] factor = states.speedFactor;
        double[] up = states.upMps;
        for (int i = 0; i < n; i++) {
            right[i] = factor[i] * (rightMps * cos[i] + downMps * sin[i]);
            down[i] = factor[i] * (downMps * cos[i] - rightMps * sin[i]) - up[i];
        }
    }

    /** How high its hole is. */
    private void over(double[] heightM, double holeM, int n) {
        for (int i = 0; i < n; i++) {
            hole[i] = positive(heightM[i] + holeM * sin[i]);
        }
    }

    /** Time of flight without drag, s: {@link FlightTable#flightS}, written out. */
    private void time(int n) {
        for (int i = 0; i < n; i++) {
            time[i] = (Math.sqrt(down[i] * down[i] + 2 * FlightTable.GRAVITY_MPS2 * hole[i]) - down[i])
                    * FlightTable.PER_GRAVITY;
        }
    }

    /** Root of the height from which an outlet at rest has that time of flight. */
    private void level(double[] factor, double downMps, int n) {
        for (int i = 0; i < n; i++) {
            x[i] = Math.sqrt(positive(hole[i] + (factor[i] * downMps - down[i]) * time[i]));
        }
    }

    /** Where that lies in the outlet's cell of the grid, in steps; held within the grid. */
    private void place(int n) {
        double from = heights.node(0);
        double perStep = 1 / heights.step();
        double last = heights.count() - 1.0;
        for (int i = 0; i < n; i++) {
            double above = positive((x[i] - from) * perStep);
            x[i] = 0.5 * (above + last - Math.abs(above - last)) - heightPlace[i];
        }
    }

    /** What the air adds to the right, over the square of the time. */
    private void bend(double[] at, double[] lower, double side, int n) {
        for (int i = 0; i < n; i++) {
            bent[i] = side * (at[i] + x[i] * lower[i]);
        }
    }

    /** What it adds because the stream is turned, or carried sideways. */
    private void turn(double[] turns, double[] carries, double[] factor, double rightMps, int n) {
        for (int i = 0; i < n; i++) {
            bent[i] += turns[i] * (right[i] - factor[i] * rightMps) + carries[i];
        }
    }

    private void aside(OutletStates states, double holeM, double[] rightM, int n) {
        double[] at = states.rightM;
        double[] moved = states.toRightMps;
        for (int i = 0; i < n; i++) {
            rightM[i] = at[i] + holeM * cos[i] + time[i] * (right[i] + moved[i] + time[i] * bent[i]);
        }
    }

    private void back(double[] factor, double backMps, double[] backM, int n) {
        for (int i = 0; i < n; i++) {
            backM[i] = time[i] * (factor[i] * backMps - overGroundMps[i] + time[i] * bent[i]);
        }
    }

    private void blend(double[] at, double[] lower, double[] to, int n) {
        for (int i = 0; i < n; i++) {
            to[i] = at[i] + x[i] * lower[i];
        }
    }

    private static void quantity(double[] whole, double part, double[] to, int n) {
        for (int i = 0; i < n; i++) {
            to[i] = positive(whole[i]) * part;
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

    /** {@code max(0, x)} without a branch, to a last digit. */
    private static double positive(double x) {
        return 0.5 * (x + Math.abs(x));
    }
}
