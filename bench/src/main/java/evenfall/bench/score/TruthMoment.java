package evenfall.bench.score;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The truth at one moment, as far as scoring needs it.
 *
 * @param atS s since the scenario began
 * @param speedMps over the ground, m/s
 * @param rateError true rate over target less 1, a ratio; null below walking pace and with nothing switched on
 * @param rowCv row CV of all rows under the boom, a ratio; null where nothing falls
 * @param leftWingM true mean height of the outer half of the left wing, m
 * @param rightWingM the same of the right wing, m
 * @param lowestM the lowest height that a wing may take at the true pressure, m
 * @param highestM the highest, m
 * @param targetHeightM the height that is wanted, m
 * @param boom the rows under the whole boom, as they are judged
 * @param withoutLeft the rows under centre and right
 * @param withoutRight the rows under left and centre
 * @param centre the rows under the centre alone
 * @param flows what flows
 * @param heights how high it is elsewhere
 */
record TruthMoment(
        double atS,
        double speedMps,
        @Nullable Double rateError,
        @Nullable Double rowCv,
        double leftWingM,
        double rightWingM,
        double lowestM,
        double highestM,
        double targetHeightM,
        Stretch boom,
        Stretch withoutLeft,
        Stretch withoutRight,
        Stretch centre,
        Flows flows,
        Heights heights) {

    /**
     * A stretch of the boom, without the rows beside sections that are switched off.
     *
     * @param rowCv of its rows, a ratio; null where nothing falls
     * @param doubledMore share of its liquid in doubled lines over what it is at target height and rated pressure, a ratio; null
     *     where nothing falls or a section is off
     * @param gapTimes its widest gap over that at target height and rated pressure, a ratio; null as before
     */
    record Stretch(
            @Nullable Double rowCv,
            @Nullable Double doubledMore,
            @Nullable Double gapTimes) {

        /** Whether lines that fall on a neighbour's make its rows uneven. */
        boolean isDoubled() {
            return doubledMore != null && doubledMore >= ScoringRules.DOUBLED_MORE;
        }

        /** Whether gaps do that no doubled line leaves. */
        boolean isGapped() {
            return gapTimes != null
                    && gapTimes > (isDoubled() ? ScoringRules.GAP_BESIDE_DOUBLED : ScoringRules.GAP_TIMES);
        }
    }

    /**
     * @param outletsM3ps what leaves all outlets, m³/s
     * @param meterM3ps liquid through the meter, m³/s
     * @param feedPressurePa where the transmitter sits, Pa
     * @param widthOnM width that is switched on, m
     * @param sectionMask what is switched on, bit 0 is the leftmost section
     * @param wantedM3ps what the target rate takes at this speed and width, m³/s
     * @param machineM3ps what it takes at the whole width and {@link ScoringRules#MACHINE_MPS}, m³/s
     */
    record Flows(
            double outletsM3ps,
            double meterM3ps,
            double feedPressurePa,
            double widthOnM,
            long sectionMask,
            double wantedM3ps,
            double machineM3ps) {

        /** What leaves outlets or leaks before them, m³/s. */
        double leavesM3ps() {
            return Math.max(outletsM3ps, meterM3ps);
        }
    }

    /**
     * Heights over the ground, m.
     *
     * @param leftM mean over all outlets of the left wing
     * @param rightM the same of the right wing
     * @param leftTipM lowest that the outer quarter of the left wing has been since the moment before
     * @param rightTipM the same of the right wing
     * @param sensorM of the outlets at each height sensor
     */
    record Heights(double leftM, double rightM, double leftTipM, double rightTipM, List<Double> sensorM) {
        Heights {
            sensorM = List.copyOf(sensorM);
        }

        /** Of the tip at a place. */
        double tipM(String place) {
            return place.equals("left") ? leftTipM : rightTipM;
        }
    }

    /** The same with another rate error, as a machine shows it whose meter is wrong. */
    TruthMoment shown(@Nullable Double shownError) {
        return new TruthMoment(
                atS,
                speedMps,
                shownError,
                rowCv,
                leftWingM,
                rightWingM,
                lowestM,
                highestM,
                targetHeightM,
                boom,
                withoutLeft,
                withoutRight,
                centre,
                flows,
                heights);
    }

    /** The same as a machine shows it whose heights are wrong: of lines nothing is said, row CVs are ratios or null, heights are in m. */
    TruthMoment shown(
            @Nullable Double shownError,
            double leftM,
            double rightM,
            @Nullable Double boomCv,
            @Nullable Double withoutLeftCv,
            @Nullable Double withoutRightCv,
            @Nullable Double centreCv) {
        return new TruthMoment(
                atS,
                speedMps,
                shownError,
                boomCv,
                leftM,
                rightM,
                lowestM,
                highestM,
                targetHeightM,
                new Stretch(boomCv, null, null),
                new Stretch(withoutLeftCv, null, null),
                new Stretch(withoutRightCv, null, null),
                new Stretch(centreCv, null, null),
                flows,
                heights);
    }

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
