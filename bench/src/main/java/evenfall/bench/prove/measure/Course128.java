package evenfall.bench.prove.measure;

import evenfall.quantity.TradeUnits;

/**
 * The 1/128-acre shortcut: on a course so long that one outlet covers a 128th of an acre, the US fluid ounces caught from one
 * outlet are the US gallons on an acre, since a gallon has 128 ounces (Ohio State University Extension; LSU AgCenter, "Ounces
 * Equal Gallons").
 *
 * @param courseM length of the course, m
 * @param seconds that it takes at the working speed, s
 */
public record Course128(double courseM, double seconds) {
    /**
     * @param spacingM between outlets, m, above 0
     * @param speedMps working speed, m/s, above 0
     */
    public static Course128 of(double spacingM, double speedMps) {
        double courseM = TradeUnits.ACRE_M2 / 128 / spacingM;
        return new Course128(courseM, courseM / speedMps);
    }

    /** US fluid ounces that an outlet of this flow gives on the course; the same number in US gallons an acre. */
    public double ounces(double flowM3ps) {
        return flowM3ps * seconds / (TradeUnits.US_GALLON_M3 / 128);
    }
}
