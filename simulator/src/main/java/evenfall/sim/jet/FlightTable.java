package evenfall.sim.jet;

import evenfall.liquid.Liquid;
import evenfall.outlet.OutletType;
import evenfall.outlet.Stream;
import java.util.Arrays;

/**
 * {@link StreamFlight} of all streams of one outlet type with one product, as a table over height, exit speed and travel speed.
 *
 * <p>What is tabulated is not where a stream lands but what the air changes: with t₀ the time of flight without drag,
 * {@code right = right₀ + a_r t₀²} and {@code back = back₀ + a_b t₀²}, a slowly varying acceleration each. So the closed form bears
 * what is large and steep, and a coarse table is enough. Beside them stand the stream's spread and four first-order sensitivities
 * of these accelerations: to a turned launch, to an outlet that is carried sideways (its column meets the wind across), and to one
 * that is carried up. Back is counted over the ground: from the place over which the liquid left, negative where the machine's
 * speed carries it ahead.
 *
 * <p>Streams that leave alike share one set of numbers, and so do, where no wind blows across, a stream and its mirror image.
 *
 * <p>Built by four integrations for each set, exit speed and travel speed. Immutable; may be shared by threads.
 */
public final class FlightTable {
    static final double GRAVITY_MPS2 = 9.80665;

    static final double PER_GRAVITY = 1 / GRAVITY_MPS2;

    /** Highest height of an outlet in the table, m; above it the accelerations of this height hold. */
    public static final double HIGHEST_M = 2.0;

    /** Fastest travel speed in the table, m/s (36 km/h); above it the accelerations of this speed hold. */
    public static final double FASTEST_MPS = 10;

    /** Numbers for a set at a node of the table. */
    private static final int STORED = 7;

    /** Numbers for a set at a node at one travel speed: those stored, and how the first two change with that speed. */
    static final int NUMBERS = 9;

    static final int RIGHT = 0;
    static final int BACK = 1;
    static final int SIGMA = 2;
    static final int TURNED = 3;
    static final int SIDEWAYS = 4;
    static final int RIGHT_BY_UP = 5;
    static final int BACK_BY_UP = 6;
    static final int RIGHT_BY_SPEED = 7;
    static final int BACK_BY_SPEED = 8;

    private static final int HEIGHTS = 41;
    private static final int FACTORS = 31;
    private static final int SPEEDS = 21;

    /** The lowest level is not quite 0: a stream that has not flown has no acceleration. */
    private static final double LOWEST_M = 0.001;

    /** The table goes a little beyond the pressure window, for pumps and faults do. */
    private static final double BELOW_WINDOW = 0.85;

    private static final double ABOVE_WINDOW = 1.1;

    /** Extra velocity by which the sensitivities are found, m/s: about that of a boom that sways. */
    private static final double NUDGE_MPS = 0.3;

    /** Streams whose numbers differ by less than this leave alike. */
    private static final double ALIKE = 1e-9;

    private final OutletType type;
    private final double specificGravity;
    private final int[] set;
    private final double[] sign;
    private final int sets;
    /** Along the root of the height, m^½: streams that rise first need close steps near the ground. */
    private final Axis heights = new Axis(Math.sqrt(LOWEST_M), Math.sqrt(HIGHEST_M), HEIGHTS);

    private final Axis factors;
    private final Axis speeds = new Axis(0, FASTEST_MPS, SPEEDS);

    /** [height][exit speed][travel speed][set][number]. */
    private final float[] values;

    /**
     * Builds the table for still air.
     *
     * @param type outlet as fitted
     * @param liquid the product
     * @param air what the streams fly through
     */
    public FlightTable(OutletType type, JetLiquid liquid, Air air) {
        this(type, liquid, air, 0, 0);
    }

    /**
     * Builds the table for a steady wind along and across the machine's way; the wind turns with the machine, so each heading
     * needs a table of its own.
     *
     * @param windBackMps wind over the ground against the way of travel, m/s (a head wind is positive)
     * @param windRightMps wind over the ground to the machine's right, m/s
     */
    public FlightTable(OutletType type, JetLiquid liquid, Air air, double windBackMps, double windRightMps) {
        this.type = type;
        specificGravity = liquid.densityKgpM3() / Liquid.WATER_KGPM3;
        int streams = type.streams().size();
        set = new int[streams];
        sign = new double[streams];
        int[] leader = new int[streams];
        sets = findSets(leader, Math.abs(windRightMps) < ALIKE);
        factors = new Axis(
                BELOW_WINDOW * type.speedFactor(type.lowPa(), specificGravity),
                ABOVE_WINDOW * type.speedFactor(type.highPa(), specificGravity),
                FACTORS);
        values = new float[HEIGHTS * FACTORS * SPEEDS * STORED * sets];
        for (int s = 0; s < sets; s++) {
            fill(s, new StreamFlight(type, leader[s], liquid, air), windBackMps, windRightMps);
        }
    }

    private int findSets(int[] leader, boolean mirrored) {
        int found = 0;
        for (int k = 0; k < set.length; k++) {
            set[k] = -1;
            for (int s = 0; s < found && set[k] < 0; s++) {
                Stream first = stream(leader[s]);
                if (alike(first, stream(k), 1)) {
                    set[k] = s;
                    sign[k] = 1;
                } else if (mirrored && alike(first, stream(k), -1)) {
                    set[k] = s;
                    sign[k] = -1;
                }
            }
            if (set[k] < 0) {
                set[k] = found;
                sign[k] = 1;
                leader[found++] = k;
            }
        }
        return found;
    }

    private static boolean alike(Stream a, Stream b, int side) {
        return Math.abs(a.share() - b.share()) < ALIKE
                && Math.abs(a.exitMps() - b.exitMps()) < ALIKE
                && Math.abs(a.tiltRad() - b.tiltRad()) < ALIKE
                && Math.abs(a.splayRad() - side * b.splayRad()) < ALIKE;
    }

    private void fill(int s, StreamFlight flight, double windBackMps, double windRightMps) {
        double[] levelsM = new double[HEIGHTS];
        for (int h = 0; h < HEIGHTS; h++) {
            levelsM[h] = heights.node(h) * heights.node(h);
        }
        double[] deeperM = new double[HEIGHTS];
        Touchdown[] plain = new Touchdown[HEIGHTS];
        Touchdown[] turned = new Touchdown[HEIGHTS];
        Touchdown[] sideways = new Touchdown[HEIGHTS];
        Touchdown[] sinking = new Touchdown[HEIGHTS];
        for (int f = 0; f < FACTORS; f++) {
            Launch launch = flight.leaving(factors.node(f), 0, 0, 0, 0);
            Launch aside = flight.leaving(factors.node(f), 0, NUDGE_MPS, 0, 0);
            Launch turn = new Launch(aside.rightMps(), aside.backMps(), aside.downMps(), 0, 0, 0, launch.wholeM());
            Launch sink = flight.leaving(factors.node(f), 0, 0, 0, -NUDGE_MPS);
            for (int h = 0; h < HEIGHTS; h++) {
                // From here an outlet that sinks has the time of flight that one at rest has from the level.
                deeperM[h] = levelsM[h] + NUDGE_MPS * flightS(launch.downMps(), levelsM[h]);
            }
            for (int v = 0; v < SPEEDS; v++) {
                double speedMps = speeds.node(v);
                double airBackMps = speedMps + windBackMps;
                flight.descend(levelsM, launch, airBackMps, windRightMps, plain);
                flight.descend(levelsM, turn, airBackMps, windRightMps, turned);
                flight.descend(levelsM, aside, airBackMps, windRightMps, sideways);
                flight.descend(deeperM, sink, airBackMps, windRightMps, sinking);
                for (int h = 0; h < HEIGHTS; h++) {
                    double t0 = flightS(launch.downMps(), levelsM[h]);
                    double perSquare = 1 / (t0 * t0);
                    Touchdown down = plain[h];
                    double right = (down.rightM() - launch.rightMps() * t0) * perSquare;
                    double back = back(down, launch, speedMps, t0);
                    int at = offset(h, f, v) + s * STORED;
                    values[at + RIGHT] = (float) right;
                    values[at + BACK] = (float) back;
                    values[at + SIGMA] = (float) down.sigmaM();
                    values[at + TURNED] = (float) (((turned[h].rightM() - down.rightM()) / NUDGE_MPS - t0) * perSquare);
                    values[at + SIDEWAYS] =
                            (float) (((sideways[h].rightM() - down.rightM()) / NUDGE_MPS - t0) * perSquare);
                    values[at + RIGHT_BY_UP] =
                            (float) ((right - (sinking[h].rightM() - launch.rightMps() * t0) * perSquare) / NUDGE_MPS);
                    values[at + BACK_BY_UP] = (float) ((back - back(sinking[h], launch, speedMps, t0)) / NUDGE_MPS);
                }
            }
        }
    }

    private static double back(Touchdown down, Launch launch, double speedMps, double t0) {
        return (down.backM() - speedMps * down.flightS() - (launch.backMps() - speedMps) * t0) / (t0 * t0);
    }

    /** Time of flight without drag, s: the positive root of {@code h = u_d t + g t²/2}. */
    static double flightS(double downMps, double heightM) {
        return (-downMps + Math.sqrt(downMps * downMps + 2 * GRAVITY_MPS2 * heightM)) * PER_GRAVITY;
    }

    /** The outlet that flies here. */
    public OutletType type() {
        return type;
    }

    /** How many streams an outlet has. */
    public int streams() {
        return set.length;
    }

    /** Density of the product over that of water. */
    public double specificGravity() {
        return specificGravity;
    }

    /** Memory of the numbers, bytes. */
    public long bytes() {
        return 4L * values.length;
    }

    Stream stream(int k) {
        return type.streams().get(k);
    }

    /** How many sets of numbers there are. */
    int sets() {
        return sets;
    }

    /** Which set a stream flies by. */
    int set(int k) {
        return set[k];
    }

    /** −1 where a stream is the mirror image of its set. */
    double sign(int k) {
        return sign[k];
    }

    Axis heights() {
        return heights;
    }

    Axis factors() {
        return factors;
    }

    private int offset(int h, int f, int v) {
        return ((h * FACTORS + f) * SPEEDS + v) * STORED * sets;
    }

    /**
     * The numbers at any height, exit speed and travel speed.
     *
     * @param rootHeight root of the height, m^½
     * @param factor exit speed over the rated one
     * @param travelMps travel speed, m/s
     * @param into takes {@code NUMBERS × sets}, set by set
     * @param at from here on
     */
    void read(double rootHeight, double factor, double travelMps, double[] into, int at) {
        double heightPlace = heights.place(rootHeight);
        double factorPlace = factors.place(factor);
        double speedPlace = speeds.place(travelMps);
        int h = heights.first(heightPlace);
        int f = factors.first(factorPlace);
        int v = speeds.first(speedPlace);
        Arrays.fill(into, at, at + NUMBERS * sets, 0);
        for (int n = 0; n < Axis.NODES * Axis.NODES; n++) {
            int dh = n / Axis.NODES;
            int df = n % Axis.NODES;
            double weight = Axis.weight(dh, heightPlace - h) * Axis.weight(df, factorPlace - f);
            for (int dv = 0; dv < Axis.NODES; dv++) {
                double here = weight * Axis.weight(dv, speedPlace - v);
                double slope = weight * Axis.slope(dv, speedPlace - v) / speeds.step();
                add(offset(h + dh, f + df, v + dv), here, slope, into, at);
            }
        }
    }

    private void add(int from, double weight, double slope, double[] into, int at) {
        for (int s = 0; s < sets; s++) {
            int i = from + s * STORED;
            int to = at + s * NUMBERS;
            for (int n = 0; n < STORED; n++) {
                into[to + n] += weight * values[i + n];
            }
            into[to + RIGHT_BY_SPEED] += slope * values[i + RIGHT];
            into[to + BACK_BY_SPEED] += slope * values[i + BACK];
        }
    }
}
