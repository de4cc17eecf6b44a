package evenfall.bench.score;

import org.jspecify.annotations.Nullable;

/**
 * The truth at one moment, as far as scoring needs it.
 *
 * @param atS s since the scenario began
 * @param speedMps over the ground, m/s
 * @param rateError true rate over target less 1, a ratio; null below walking pace and with nothing switched on
 * @param leftWingM true mean height of the outer half of the left wing, m
 * @param rightWingM the same of the right wing, m
 * @param lowestM the lowest height that a wing may take at the true pressure, m
 * @param highestM the highest, m
 * @param targetHeightM the height that is wanted, m
 * @param boom the rows under the whole boom
 * @param withoutLeft the rows under centre and right
 * @param withoutRight the rows under left and centre
 * @param centre the rows under the centre alone
 */
record TruthMoment(
        double atS,
        double speedMps,
        @Nullable Double rateError,
        double leftWingM,
        double rightWingM,
        double lowestM,
        double highestM,
        double targetHeightM,
        Stretch boom,
        Stretch withoutLeft,
        Stretch withoutRight,
        Stretch centre) {

    /**
     * A stretch of the boom.
     *
     * @param rowCv of its rows, a ratio; null where nothing falls
     * @param heightM true mean height of its outlets, m
     */
    record Stretch(@Nullable Double rowCv, double heightM) {}

    boolean leftOutside() {
        return leftWingM < lowestM || leftWingM > highestM;
    }

    boolean rightOutside() {
        return rightWingM < lowestM || rightWingM > highestM;
    }

    /** The stretch that no wing's height explains already. */
    Stretch unexplained() {
        if (leftOutside()) {
            return rightOutside() ? centre : withoutLeft;
        }
        return rightOutside() ? withoutRight : boom;
    }
}
