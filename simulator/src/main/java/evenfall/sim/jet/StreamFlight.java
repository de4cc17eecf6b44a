package evenfall.sim.jet;

import evenfall.outlet.OutletType;
import evenfall.outlet.Stream;
import java.util.Arrays;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketedUnivariateSolver;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.events.Action;
import org.hipparchus.ode.events.AdaptableInterval;
import org.hipparchus.ode.events.ODEEventDetector;
import org.hipparchus.ode.events.ODEEventHandler;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.hipparchus.ode.sampling.ODEStateInterpolator;
import org.jspecify.annotations.Nullable;

/**
 * The flight of one stream from its hole to the ground, integrated: a coherent jet up to its break-up length ({@link BreakUp}),
 * then drops, each with its drag ({@link Drag}).
 *
 * <p>The frame moves with the machine: right, back, down from the hole. In it the still air over the field blows to the rear at
 * the speed of travel. The column of a jet lies along the liquid's velocity against its outlet, as it does where the outlet moves
 * steadily; its length counts against the outlet too. Integrated with Dormand and Prince's method of order 8 with adaptive steps
 * (Hipparchus) to 10 nm a step.
 *
 * <p>Diameter of the jet from its share of the flow and its exit speed, {@code d = √(4 Q share / (π u))}; flow and speed go with
 * the root of the pressure alike, so it is the same at any pressure.
 *
 * <p>Spread: the liquid of a round jet lies within a standard deviation of d/4 of its axis; after break-up drops stray by 2 % of
 * the way flown since (about 1°; a choice of ours), the two added as squares. Where the stream meets the ground at a slant its
 * print is longer.
 */
public final class StreamFlight {
    private static final double STRAY_PER_M = 0.02;
    private static final double TOLERANCE_M = 1e-8;
    private static final double EVENT_TOLERANCE = 1e-13;

    /** Longer than any stream stays up from 3 m; a stream that has not come down by then has been blown away. */
    private static final double LONGEST_S = 30;

    private static final int PATH = 6;

    private final Stream stream;
    private final JetLiquid liquid;
    private final Air air;
    private final double diameterM;

    /**
     * @param type outlet as fitted
     * @param index which of its streams, from 0
     * @param liquid the product
     * @param air what it flies through
     */
    public StreamFlight(OutletType type, int index, JetLiquid liquid, Air air) {
        this.stream = type.streams().get(index);
        this.liquid = liquid;
        this.air = air;
        diameterM = Math.sqrt(4 * stream.share() * type.ratedFlowM3ps() / (StrictMath.PI * stream.exitMps()));
    }

    /** Diameter of the jet, m. */
    public double diameterM() {
        return diameterM;
    }

    /** Diameter of the drops it falls into, m. */
    public double dropDiameterM() {
        return BreakUp.DROP_RATIO * diameterM;
    }

    /** How far from its hole the jet stays whole, m, when it leaves at so many times its rated speed. */
    public double breakUpM(double speedFactor) {
        return BreakUp.lengthM(liquid, diameterM, stream.exitMps() * speedFactor);
    }

    /**
     * Flies from an outlet that stands as it should and does not move against the machine.
     *
     * @param heightM of the hole over the ground, m, above 0
     * @param speedFactor exit speed over the rated one with water, see {@link OutletType#speedFactor}
     * @param airBackMps air against the machine, m/s to the rear: the speed of travel plus any head wind
     * @param airRightMps air against the machine, m/s to the right
     */
    public Touchdown land(double heightM, double speedFactor, double airBackMps, double airRightMps) {
        return land(heightM, leaving(speedFactor, 0, 0, 0, 0), airBackMps, airRightMps);
    }

    /**
     * Flies from an outlet that is tilted and moves.
     *
     * @param heightM of the hole over the ground, m, above 0
     * @param launch how the liquid leaves, see {@link #leaving}
     * @param airBackMps air against the machine, m/s to the rear
     * @param airRightMps air against the machine, m/s to the right
     * @throws IllegalStateException when it has not come down after 30 s
     */
    public Touchdown land(double heightM, Launch launch, double airBackMps, double airRightMps) {
        Fall fall = new Fall(launch, airBackMps, airRightMps);
        fall.fly(new Crossing(heightM, false), null);
        return touchdown(fall.last, launch.wholeM());
    }

    /**
     * Flies once and tells where the stream comes through each of many levels.
     *
     * @param levelsM heights of the hole over each level, m, above 0, rising
     * @param into one for each level
     */
    void descend(double[] levelsM, Launch launch, double airBackMps, double airRightMps, Touchdown[] into) {
        Levels levels = new Levels(levelsM, launch.wholeM(), into);
        Fall fall = new Fall(launch, airBackMps, airRightMps);
        // A little deeper than the last level, so that its crossing lies inside a step.
        fall.fly(new Crossing(levelsM[levelsM.length - 1] + 0.01, false), levels);
        if (levels.next < levelsM.length) {
            throw new IllegalStateException("a stream came down without passing level " + levels.next);
        }
    }

    /**
     * How the liquid leaves.
     *
     * @param speedFactor exit speed over the rated one with water
     * @param rollRad turn of the outlet about the fore-and-aft axis, rad, positive when its right side is up
     * @param outletRightMps the outlet's own velocity to the right, m/s
     * @param outletForwardMps the outlet's own velocity forwards against the machine, m/s
     * @param outletUpMps the outlet's own velocity upwards, m/s
     */
    public Launch leaving(
            double speedFactor, double rollRad, double outletRightMps, double outletForwardMps, double outletUpMps) {
        double exitMps = stream.exitMps() * speedFactor;
        double sin = StrictMath.sin(rollRad);
        double cos = StrictMath.cos(rollRad);
        return new Launch(
                exitMps * (stream.rightPart() * cos + stream.downPart() * sin) + outletRightMps,
                exitMps * stream.backPart() - outletForwardMps,
                exitMps * (stream.downPart() * cos - stream.rightPart() * sin) - outletUpMps,
                outletRightMps,
                -outletForwardMps,
                -outletUpMps,
                breakUpM(speedFactor));
    }

    private Touchdown touchdown(ODEState state, double wholeM) {
        double[] y = state.getPrimaryState();
        double jetM = Math.min(wholeM, y[PATH]);
        double strayM = STRAY_PER_M * (y[PATH] - jetM);
        double acrossM = Math.sqrt(diameterM * diameterM / 16 + strayM * strayM);
        // A point of the stream's cross-section runs on along the velocity until it meets the ground.
        double slant = y[5] > 0 ? y[3] / y[5] : 0;
        return new Touchdown(
                y[0], y[1], state.getTime(), y[PATH], jetM, y[3], y[4], y[5], acrossM * Math.sqrt(1 + slant * slant));
    }

    /** One flight: the jet's part and, where it gets so far, the drops' part. */
    private final class Fall implements OrdinaryDifferentialEquation {
        private final Launch launch;
        private final double airBackMps;
        private final double airRightMps;
        private ODEState last;
        private boolean jet;

        Fall(Launch launch, double airBackMps, double airRightMps) {
            this.launch = launch;
            this.airBackMps = airBackMps;
            this.airRightMps = airRightMps;
            last = new ODEState(0, new double[] {0, 0, 0, launch.rightMps(), launch.backMps(), launch.downMps(), 0});
        }

        void fly(Crossing ground, @Nullable Levels levels) {
            jet = true;
            if (launch.wholeM() > 0) {
                Crossing breakUp = new Crossing(launch.wholeM(), true);
                run(levels, ground, breakUp);
            }
            if (!ground.reached) {
                jet = false;
                run(levels, ground);
            }
            if (!ground.reached) {
                throw new IllegalStateException("a stream has not come down within 30 s");
            }
        }

        private void run(@Nullable Levels levels, Crossing... events) {
            DormandPrince853Integrator integrator =
                    new DormandPrince853Integrator(1e-12, 0.1, TOLERANCE_M, TOLERANCE_M);
            integrator.setInitialStepSize(1e-3);
            for (Crossing event : events) {
                integrator.addEventDetector(event);
            }
            if (levels != null) {
                integrator.addStepHandler(levels::handle);
            }
            last = integrator.integrate(this, last, LONGEST_S);
        }

        @Override
        public int getDimension() {
            return PATH + 1;
        }

        @Override
        public double[] computeDerivatives(double timeS, double[] y) {
            double right = y[3] - airRightMps;
            double back = y[4] - airBackMps;
            double down = y[5];
            double axisRight = y[3] - launch.carriedRightMps();
            double axisBack = y[4] - launch.carriedBackMps();
            double axisDown = y[5] - launch.carriedDownMps();
            double onMps = Math.sqrt(axisRight * axisRight + axisBack * axisBack + axisDown * axisDown);
            double[] d = {y[3], y[4], y[5], 0, 0, FlightTable.GRAVITY_MPS2, onMps};
            double density = liquid.densityKgpM3();
            if (jet && onMps > 0) {
                double along = (right * axisRight + back * axisBack + down * axisDown) / onMps;
                double acrossRight = right - along * axisRight / onMps;
                double acrossBack = back - along * axisBack / onMps;
                double acrossDown = down - along * axisDown / onMps;
                double across =
                        Math.sqrt(acrossRight * acrossRight + acrossBack * acrossBack + acrossDown * acrossDown);
                double kAcross = Drag.jetAcrossPerS(air, density, diameterM, across);
                double kAlong = Drag.jetAlongPerS(air, density, diameterM, Math.abs(along)) * along / onMps;
                d[3] -= kAcross * acrossRight + kAlong * axisRight;
                d[4] -= kAcross * acrossBack + kAlong * axisBack;
                d[5] -= kAcross * acrossDown + kAlong * axisDown;
            } else if (!jet) {
                double against = Math.sqrt(right * right + back * back + down * down);
                double k = Drag.dropPerS(air, density, dropDiameterM(), against);
                d[3] -= k * right;
                d[4] -= k * back;
                d[5] -= k * down;
            }
            return d;
        }
    }

    /** Stops a flight at the ground, or when the jet has flown its coherent length. */
    private static final class Crossing implements ODEEventDetector, ODEEventHandler {
        private final double atM;
        private final boolean path;
        private final BracketedUnivariateSolver<UnivariateFunction> solver =
                new BracketingNthOrderBrentSolver(0, EVENT_TOLERANCE, 0, 5);
        private boolean reached;

        Crossing(double atM, boolean path) {
            this.atM = atM;
            this.path = path;
        }

        @Override
        public double g(ODEStateAndDerivative state) {
            double[] y = state.getPrimaryState();
            return (path ? y[PATH] : y[2]) - atM;
        }

        @Override
        public Action eventOccurred(ODEStateAndDerivative state, ODEEventDetector detector, boolean increasing) {
            if (!increasing) {
                return Action.CONTINUE;
            }
            reached = true;
            return Action.STOP;
        }

        @Override
        public AdaptableInterval getMaxCheckInterval() {
            return AdaptableInterval.of(0.1);
        }

        @Override
        public int getMaxIterationCount() {
            return 100;
        }

        @Override
        public BracketedUnivariateSolver<UnivariateFunction> getSolver() {
            return solver;
        }

        @Override
        public ODEEventHandler getHandler() {
            return this;
        }
    }

    /** Finds the levels inside each step by Newton's method on the step's own polynomial. */
    private final class Levels {
        private static final int ROUNDS = 30;

        private final double[] levelsM;
        private final double wholeM;
        private final Touchdown[] into;
        private int next;

        Levels(double[] levelsM, double wholeM, Touchdown[] into) {
            this.levelsM = levelsM;
            this.wholeM = wholeM;
            this.into = into;
            Arrays.fill(into, null);
        }

        void handle(ODEStateInterpolator step) {
            ODEStateAndDerivative to = step.getCurrentState();
            while (next < levelsM.length && to.getPrimaryState()[2] >= levelsM[next]) {
                into[next] = touchdown(at(step, levelsM[next]), wholeM);
                next++;
            }
        }

        private ODEState at(ODEStateInterpolator step, double levelM) {
            double fromS = step.getPreviousState().getTime();
            double toS = step.getCurrentState().getTime();
            double timeS = toS;
            ODEStateAndDerivative state = step.getCurrentState();
            for (int round = 0; round < ROUNDS; round++) {
                double[] y = state.getPrimaryState();
                double off = levelM - y[2];
                if (Math.abs(off) < EVENT_TOLERANCE) {
                    break;
                }
                timeS = y[5] > 0 ? timeS + off / y[5] : 0.5 * (fromS + toS);
                timeS = Math.max(fromS, Math.min(toS, timeS));
                state = step.getInterpolatedState(timeS);
            }
            return state;
        }
    }
}
