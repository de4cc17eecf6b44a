package evenfall.judge;

import static evenfall.quantity.FixedDecimals.text;

import evenfall.quantity.Units;
import evenfall.rig.Rig;
import evenfall.sense.Quantity;
import evenfall.sense.Unknown;

/** The flow meter held against the tank: litres that it counts and litres that go. */
final class TankWatch implements Watch {
    /** How well a meter's factor is known after all calibration, a standard deviation. Common practice, no source. */
    private static final double METER_KNOWN = 0.01;

    /** What meter and table explain together: three standard deviations. */
    private static final double TOLERANCES = 3;

    /** Beyond that by so many standard deviations of the slope is no chance (2.9e-7 one way), looked at every 10 s or more. */
    private static final double SURE = 5;

    /** Within it by so many it is well again. */
    private static final double WELL = 2;

    private final int meter;
    private final int gauge;
    private final int port;
    private final double limit;
    private final TankLine line;
    private final Units units;
    private long restartUs = Long.MIN_VALUE;

    /**
     * @param meter index of the flow meter among the situation's sensors
     * @param gauge index of the tank's gauge
     * @param port index of the meter's port
     */
    TankWatch(int meter, int gauge, int port, Rig.Tank tank, Units units) {
        this.meter = meter;
        this.gauge = gauge;
        this.port = port;
        this.units = units;
        limit = TOLERANCES * Math.sqrt(METER_KNOWN * METER_KNOWN + tank.known() * tank.known());
        line = new TankLine(tank.noiseM3());
    }

    @Override
    public Verdict verdict(Situation now) {
        // What passed while the hub had no power was never counted.
        long sinceUs = now.ports().get(port).sinceRestartUs();
        if (sinceUs >= 0 && now.nowUs() - sinceUs > restartUs) {
            restartUs = now.nowUs() - sinceUs;
            line.clear();
        }
        if (isGone(now, meter) || isGone(now, gauge)) {
            return Verdict.UNKNOWN;
        }
        Quantity metered = now.plumbing().meteredM3();
        Quantity tank = now.plumbing().tankM3();
        if (metered.isKnown() && tank.isKnown()) {
            line.take(metered.get(), tank.get(), now.stepS());
        }
        if (!line.isKnown()) {
            return Verdict.BETWEEN;
        }
        double apart = Math.abs(1 - line.beta());
        return apart - SURE * line.betaSd() > limit
                ? Verdict.OVER
                : apart + WELL * line.betaSd() < limit ? Verdict.WELL : Verdict.BETWEEN;
    }

    private static boolean isGone(Situation now, int sensor) {
        Unknown why = now.sensors().get(sensor).reading().unknown();
        return why == Unknown.SILENT || why == Unknown.NOT_YET || why == Unknown.OUT_OF_RANGE;
    }

    @Override
    public Finding finding(Situation now) {
        double meteredM3 = line.meteredM3();
        double tankM3 = line.beta() * meteredM3;
        double apart = 1 - line.beta();
        String why = "The tank says " + units.volume(tankM3) + " gone, the meter " + units.volume(meteredM3) + ": "
                + text(100 * Math.abs(apart), 0) + " % apart.";
        String act = "Catch what the outlets give and put the meter's factor right (prove flow)"
                + (apart < 0
                        ? "; if the meter is right, look for a leak before it and check the tank's table."
                        : "; if the meter is right, check the tank's table.");
        return new Finding(100 * apart, apart < 0 ? -100 * limit : 100 * limit, "%", why, act);
    }
}
