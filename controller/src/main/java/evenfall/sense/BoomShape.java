package evenfall.sense;

import evenfall.rig.Rig;
import java.util.List;

/**
 * From the heights at a few sensors to the height of every outlet: straight lines between neighbouring sensors, and on beyond the
 * outermost. Between two sensors of which one is not known, and beyond one, the outlets' heights are not known: a wing bends,
 * and a line across a missing sensor would hide it.
 */
public final class BoomShape {
    private final int[] leftSensor;
    private final double[] weightRight;
    private final int sensors;

    /**
     * @param sensors from left to right
     * @param outletRightM place of each outlet, m
     */
    public BoomShape(List<Rig.Height> sensors, double[] outletRightM) {
        this.sensors = sensors.size();
        leftSensor = new int[outletRightM.length];
        weightRight = new double[outletRightM.length];
        for (int outlet = 0; outlet < outletRightM.length; outlet++) {
            int left = 0;
            while (left + 2 < this.sensors && sensors.get(left + 1).rightM() <= outletRightM[outlet]) {
                left++;
            }
            leftSensor[outlet] = left;
            if (this.sensors >= 2) {
                double fromM = sensors.get(left).rightM();
                double toM = sensors.get(left + 1).rightM();
                weightRight[outlet] = (outletRightM[outlet] - fromM) / (toM - fromM);
            }
        }
    }

    /**
     * Spreads the sensors' heights over the outlets.
     *
     * @param sensorM height at each sensor
     * @param heightM filled with the height of each outlet, m, where known
     * @param known filled with whether it is
     */
    public void spread(List<Quantity> sensorM, double[] heightM, boolean[] known) {
        for (int outlet = 0; outlet < heightM.length; outlet++) {
            int left = leftSensor[outlet];
            int right = sensors >= 2 ? left + 1 : left;
            known[outlet] = sensors > 0
                    && sensorM.get(left).isKnown()
                    && sensorM.get(right).isKnown();
            heightM[outlet] = known[outlet]
                    ? sensorM.get(left).get()
                            + weightRight[outlet]
                                    * (sensorM.get(right).get()
                                            - sensorM.get(left).get())
                    : 0;
        }
    }
}
