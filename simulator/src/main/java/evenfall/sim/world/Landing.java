package evenfall.sim.world;

import evenfall.outlet.OutletType;
import evenfall.sim.boom.Boom;
import evenfall.sim.drive.Drive;
import evenfall.sim.fault.OutletMounts;
import evenfall.sim.ground.Ground;
import evenfall.sim.jet.BoomFlight;
import evenfall.sim.jet.OutletStates;
import evenfall.sim.plumbing.Plumbing;
import evenfall.sim.scenario.FittedSpec;
import evenfall.sim.scenario.WorldSpec;
import java.util.Arrays;

/**
 * Lets the streams fall. How the outlets are is taken at each moment; where their streams land, and what that puts on the rows, is
 * worked out for several moments together, since nothing in the world waits for it: in long rows the same sums cost a fraction.
 *
 * <p>Outlets are straight above their places along the way but for their sway.
 */
final class Landing {
    private final Ground ground;
    private final OutletMounts mounts;
    private final RowLedger ledger;
    private final TruthSink truth;
    private final OutletType type;
    private final boolean ideal;
    private final double factorPerPa;
    private final BoomFlight flight;

    private final int outlets;
    private final int most;
    private final OutletStates states;
    private final Falls falls;
    private final double[] rightM;
    private final double[] landedM;
    private final double[] travelMps;
    private final double[] x;
    private final double[] y;
    private final double[] groundM;
    private final double[] pressurePa;
    private final long[] timeUs;
    private final double[] momentM;

    private int waiting;
    private double reachedM;

    /**
     * @param ground under the outlets
     * @param mounts how the outlets sit
     * @param ledger takes what falls
     * @param truth is told the outlets' heights
     * @param rightM where the outlets are, m right of the centre line
     * @param most how many moments may be worked out together
     */
    Landing(
            WorldSpec spec,
            Ground ground,
            OutletMounts mounts,
            RowLedger ledger,
            TruthSink truth,
            double[] rightM,
            int most) {
        this.ground = ground;
        this.mounts = mounts;
        this.ledger = ledger;
        this.truth = truth;
        this.rightM = rightM;
        this.most = most;
        FittedSpec fitted = spec.fitted();
        type = fitted.outlet();
        ideal = spec.idealStreams();
        factorPerPa = 1 / (type.ratedPressurePa() * fitted.specificGravity());
        outlets = rightM.length;
        flight = new BoomFlight(FlightTables.of(type, fitted.liquid(), !ideal), outlets, most);
        states = new OutletStates(outlets, most);
        falls = new Falls(states, flight.streams(), most);
        landedM = new double[outlets];
        travelMps = new double[most];
        timeUs = new long[most];
        momentM = new double[outlets];
        int places = outlets * most;
        x = new double[places];
        y = new double[places];
        groundM = new double[places];
        pressurePa = new double[places];
        for (int m = 0; m < most; m++) {
            System.arraycopy(rightM, 0, states.rightM(), m * outlets, outlets);
        }
        // What waits fell from outlets that sat as they do until now.
        mounts.beforeEachChange(this::workOut);
    }

    /** The outlets begin here. */
    void start(Drive drive, Boom boom) {
        places(drive, boom, 0);
        System.arraycopy(falls.outletM, 0, landedM, 0, outlets);
    }

    /** Takes in how the outlets are now and what has left them since the last time. */
    void take(long nowUs, Drive drive, Boom boom, Plumbing plumbing) {
        if (waiting == most) {
            workOut();
        }
        int at = waiting * outlets;
        if (waiting == 0) {
            falls.leaks = false;
        }
        timeUs[waiting] = nowUs;
        travelMps[waiting] = drive.speedMps();
        reachedM = drive.distanceM();
        waiting++;
        System.arraycopy(plumbing.drain(), 0, states.quantity(), at, outlets);
        leaks(plumbing, at);
        plumbing.outletPressuresPa(pressurePa, at);
        places(drive, boom, at);
        for (int i = 0; i < outlets; i++) {
            falls.goneM[at + i] = falls.outletM[at + i] - landedM[i];
        }
        System.arraycopy(falls.outletM, at, landedM, 0, outlets);
        boom.outletsOverDatumM(states.heightM(), at);
        boom.outletPlacesM(x, y, at);
        boom.outletRollsRad(states.rollRad(), at);
        boom.outletVerticalSpeedsMps(states.upMps(), at);
    }

    private void leaks(Plumbing plumbing, int at) {
        if (plumbing.leaked() && !falls.leaks) {
            falls.leaks = true;
            Arrays.fill(falls.leakedM3, 0, at, 0);
        }
        if (falls.leaks) {
            for (int i = 0; i < outlets; i++) {
                falls.leakedM3[at + i] = plumbing.leakedM3(i);
            }
        }
    }

    /** Where each outlet is along the way, m, and how fast it goes ahead of the machine: by its sway, and swung about by a bend. */
    private void places(Drive drive, Boom boom, int at) {
        boom.outletsForward(falls.outletM, states.forwardMps(), at);
        double xM = drive.distanceM();
        double yawRate = drive.yawRateRadps();
        double[] forwardMps = states.forwardMps();
        for (int i = 0; i < outlets; i++) {
            falls.outletM[at + i] += xM;
            forwardMps[at + i] -= rightM[i] * yawRate;
        }
    }

    /** Works out where everything falls that waits. */
    void workOut() {
        if (waiting == 0) {
            return;
        }
        falls.steps = waiting;
        waiting = 0;
        int n = falls.places();
        ground.heightsM(x, y, groundM, n);
        double[] heightM = states.heightM();
        double[] factor = states.speedFactor();
        for (int i = 0; i < n; i++) {
            heightM[i] -= groundM[i];
        }
        for (int i = 0; i < n; i++) {
            factor[i] = Math.sqrt(pressurePa[i] * factorPerPa);
        }
        flight.land(states, travelMps, falls.steps, falls.lines);
        if (mounts.anyChanged()) {
            falls.turn(mounts, type, states, travelMps);
        }
        if (ideal) {
            for (double[] sigmaM : falls.lines.sigmaM()) {
                Arrays.fill(sigmaM, 0);
            }
        }
        ledger.fall(falls);
        ledger.reached(reachedM);
        for (int m = 0; m < falls.steps; m++) {
            System.arraycopy(heightM, m * outlets, momentM, 0, outlets);
            truth.heights(timeUs[m], momentM);
        }
    }

    /** What was worked out last. */
    Falls falls() {
        return falls;
    }

    /** Heights of the outlets over the ground at the last moment that was worked out, m. */
    double[] heightsM() {
        int end = falls.places();
        return Arrays.copyOfRange(states.heightM(), end - outlets, end);
    }
}
