package evenfall.bench.score;

import evenfall.rig.Rig;
import evenfall.sim.scenario.Scenario;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * When a meter that counts wrongly can be told by the tank; {@code bench/docs/scoring.md} derives it. Of the constants that the rig file
 * believes and the world has; a fault that is scripted is due by its own rules.
 */
final class MeterAgainstTank {
    /** How well a meter is known after all calibration, a standard deviation; common practice, no source. */
    private static final double METER_KNOWN = 0.01;

    /** What meter and table explain. */
    private static final double TOLERANCES = 3;

    /** Five standard deviations to be sure, and two that chance may take. */
    private static final double MARGIN = 7;

    /** Means over so long, s; readings a second apart err independently, a tank sloshes at half a hertz. */
    private static final double MEAN_S = 10;

    private static final int LEAST = 12;

    /** Two means more. */
    private static final double HOLD_S = 20;

    /** Enough to be told, as a part past the limit; the size plays no part any more. */
    private static final double PAST = 1;

    /** Too few litres yet. */
    private static final double NEAR = -0.5 * ScoringRules.NEAR_PART;

    private MeterAgainstTank() {}

    /** Nothing where no tank is looked at. */
    static Optional<Watched> of(Scenario scenario, List<TruthMoment> moments) {
        Optional<Rig.Tank> tank = scenario.belief().sensors().tank();
        Optional<Rig.Flow> flow = scenario.belief().sensors().flow();
        OptionalDouble pulses = scenario.world().fitted().pulsesPerM3();
        if (tank.isEmpty() || flow.isEmpty() || pulses.isEmpty()) {
            return Optional.empty();
        }
        double counts = pulses.getAsDouble() / flow.get().pulsesPerM3();
        double shows = scenario.world().sensors().tank().orElseThrow().factor();
        double apart = Math.abs(1 - shows / counts);
        double known = tank.get().known();
        double limit = TOLERANCES * Math.sqrt(METER_KNOWN * METER_KNOWN + known * known);
        double atS = apart > limit ? enoughS(apart - limit, counts, tank.get().noiseM3(), moments) : 0;
        return Optional.of(new Watched(
                List.of("sensor-implausible"),
                "flow",
                HOLD_S,
                0,
                moment -> apart <= limit ? apart / limit - 1 : moment.atS() >= atS ? PAST : NEAR));
    }

    /** From when on the slope of tank over meter is known so much better than the difference. */
    private static double enoughS(double beyond, double counts, double noiseM3, List<TruthMoment> moments) {
        double sd = noiseM3 / Math.sqrt(MEAN_S);
        double meteredM3 = 0;
        double beforeS = 0;
        int n = 0;
        double mean = 0;
        double sxx = 0;
        for (TruthMoment moment : moments) {
            meteredM3 += counts * moment.flows().meterM3ps() * (moment.atS() - beforeS);
            beforeS = moment.atS();
            if (moment.atS() + 1e-9 < (n + 1) * MEAN_S) {
                continue;
            }
            n++;
            double off = meteredM3 - mean;
            mean += off / n;
            sxx += off * (meteredM3 - mean);
            if (n >= LEAST && beyond * Math.sqrt(sxx) >= MARGIN * sd) {
                return moment.atS();
            }
        }
        return Double.POSITIVE_INFINITY;
    }
}
