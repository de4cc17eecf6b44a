package evenfall.bench.matrix;

import evenfall.config.ConfigException;
import evenfall.sim.scenario.Scenario;
import java.util.List;
import java.util.SplittableRandom;

/**
 * An hour of work with nothing wrong: passes to and fro on ground of class B or C, a driver who goes now a little faster and now a
 * little slower, headland turns with all sections off.
 */
final class CleanHour {
    static final double SECONDS = 3600;
    static final List<String> CLASSES = List.of("B", "C");
    private static final int PASSES = 25;
    private static final double PASS_M = 700;
    private static final String PATH = "passes: {count: " + PASSES + ", length_m: " + MadeField.number(PASS_M)
            + ", first_turn: right, radius_m: 12, run_in_m: 12}";
    private static final double TURN_MPS = 4;
    private static final double ACCELERATION_MPS2 = 0.3;

    /** From one change of the pace to the next on a pass, m. */
    private static final double CHANGE_EVERY_M = 130;

    /** Standard deviation of a driver's pace about his own, m/s; a choice of ours. */
    private static final double WANDER_MPS = 0.15;

    private CleanHour() {}

    static Scenario scenario(String roughness, String outlet, long seed) throws ConfigException {
        Scenario path = field(roughness, PATH + ", start_mps: 5.0").scenario(seed);
        List<Double> edgesM = path.world().drive().path().passEdgesM();
        SplittableRandom random = new SplittableRandom(seed);
        double paceMps = random.nextDouble(4.6, 5.4);
        StringBuilder speeds = new StringBuilder();
        double beginsM = 0;
        for (int edge = 0; edge < edgesM.size(); edge += 2) {
            double endsM = edgesM.get(edge);
            double brakeM = endsM - (paceMps * paceMps - TURN_MPS * TURN_MPS) / (2 * ACCELERATION_MPS2) - 5;
            for (double atM = beginsM; atM < brakeM - 30; atM += CHANGE_EVERY_M) {
                speed(speeds, atM, paceMps + WANDER_MPS * random.nextGaussian());
            }
            speed(speeds, brakeM, TURN_MPS);
            beginsM = edge + 1 < edgesM.size() ? edgesM.get(edge + 1) : endsM;
        }
        return field(
                        roughness,
                        PATH + ", start_mps: " + MadeField.number(paceMps) + ", acceleration_mps2: "
                                + MadeField.number(ACCELERATION_MPS2) + ", speeds: [" + speeds + "]")
                .scenario(seed)
                .withOutlet(outlet);
    }

    private static void speed(StringBuilder speeds, double atM, double speedMps) {
        speeds.append(speeds.isEmpty() ? "" : ", ")
                .append("{at_m: ")
                .append(MadeField.number(atM))
                .append(", speed_mps: ")
                .append(MadeField.number(speedMps))
                .append('}');
    }

    private static MadeField field(String roughness, String drive) {
        return new MadeField("a clean hour on class " + roughness)
                .lasts(SECONDS)
                .ground("{roughness: " + roughness + "}")
                .drive("{" + drive + "}")
                .world("headland_off: {late_off_m: 0, late_on_m: 0}");
    }
}
