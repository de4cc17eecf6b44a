package evenfall.sim.boom;

import java.util.Arrays;

/**
 * One loop of the height control, for one wing or for the centre lift: averages the height error it
 * sees, waits, and answers with a speed.
 */
final class HeightControl {

    private final double[] sensorRightM;
    private final HeightControlSpec spec;
    private final double slew;
    private final double armM;

    private final Lag average;
    private double[] waiting = {0};
    private int oldest;
    private double drive = 1;

    /**
     * @param sensorRightM where it looks, m right of the centre; none and it never moves
     * @param slew greatest speed it may ask for: m/s for the lift, 1/s for a wing's slope
     * @param armM metres of height that its actuator moves the sensors per unit of its own movement: 1 for
     *     the lift, the mean distance of the sensors from the hinge for a wing
     */
    HeightControl(double[] sensorRightM, HeightControlSpec spec, double slew, double armM) {
        this.sensorRightM = sensorRightM;
        this.spec = spec;
        this.slew = slew;
        this.armM = armM;
        this.average = new Lag(spec.averagingS());
    }

    double[] sensorRightM() {
        return sensorRightM;
    }

    /** Fills its memory as if it had always seen this error. */
    void place(double dtS, double errorM) {
        waiting = new double[1 + (int) Math.rint(spec.delayS() / dtS)];
        Arrays.fill(waiting, errorM);
        average.place(errorM);
        oldest = 0;
    }

    /** The speed to move at during the coming step, from what was seen a delay ago. */
    double speed() {
        if (sensorRightM.length == 0) {
            return 0;
        }
        double error = waiting[oldest];
        double beyond = error - Math.max(-spec.deadBandM(), Math.min(spec.deadBandM(), error));
        return drive * Math.max(-slew, Math.min(slew, spec.gainPerS() * beyond / armM));
    }

    /** @param share of its speed that its actuator still has: 1 is whole, 0 is stuck */
    void drive(double share) {
        drive = share;
    }

    /** Takes in the height error at the end of a step: set height less the mean height seen, m. */
    void see(double dtS, double errorM) {
        average.step(dtS, errorM);
        waiting[oldest] = average.value();
        oldest = oldest + 1 == waiting.length ? 0 : oldest + 1;
    }
}
