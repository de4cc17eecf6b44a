package evenfall.liquid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.quantity.TradeUnits;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The identity A = Q / (v W) against the calibration sheets of extension services. */
class CalibrationTest {
    /** Gallons per acre from trade units, all the way through SI. */
    private static double gpa(double gpm, double mph, double inches) {
        return Application.rateM(gpm * TradeUnits.GPM_M3PS, mph * TradeUnits.MPH_MPS, inches * TradeUnits.INCH_M)
                / TradeUnits.GPA_M;
    }

    private static double lpm(double lpha, double kmph, double metres) {
        return Application.flowM3ps(lpha * TradeUnits.LPHA_M, kmph * TradeUnits.KMPH_MPS, metres) / TradeUnits.LPM_M3PS;
    }

    @Test
    void bothTradeFormulasFollowFromTheIdentity() {
        long seed = 5940;
        Random random = new Random(seed);
        for (int i = 0; i < 1000; i++) {
            double flow = 0.05 + 3 * random.nextDouble();
            double speed = 1 + 20 * random.nextDouble();
            double width = 5 + 60 * random.nextDouble();
            // GPA = 5940 gpm / (mph inches): Stationary Calibration Method, Mesa County (Colorado); Clemson University;
            // University of Florida IFAS EDIS WG013.
            assertThat(gpa(flow, speed, width) / (5940 * flow / (speed * width)))
                    .as("seed %d", seed)
                    .isCloseTo(1, within(1e-12));
            // q = Q V W / 600: Boller and Raetano 2011, as an open agronomy manual documents it.
            assertThat(lpm(flow * 100, speed, width / 40) / (flow * 100 * speed * (width / 40) / 600))
                    .as("seed %d", seed)
                    .isCloseTo(1, within(1e-12));
        }
    }

    @Test
    void aQuarterGallonPerMinuteGivesTwelvePointFour() {
        // 0.25 gpm where mph times inches is 120: 12.38 GPA (Mesa County sheet).
        assertThat(gpa(0.25, 6, 20)).isCloseTo(12.38, within(0.006));
    }

    @Test
    void aWideSwathGivesTwenty() {
        // 3.75 gpm, 222 in, 5 mph: printed 20 GPA, exactly 20.07 (Albany County, Wyoming, Weed & Pest District).
        assertThat(gpa(3.75, 5, 222)).isCloseTo(20.07, within(0.005));
    }

    @Test
    void aCaseThatTheSourcePrintsWrongComesOutRight() {
        // 101 fl oz/min, 3 mph, 18 in: Oklahoma State University's turf sheet prints 88 GPA; its own formula gives
        // 86.8.
        assertThat(gpa(101.0 / 128, 3, 18)).isCloseTo(86.80, within(0.01));
    }

    @ParameterizedTest
    @CsvSource({
        // L/ha, km/h, m, L/min. First row: documented case of the metric formula; the others by its arithmetic.
        "190, 10, 0.5, 1.583333",
        "200, 8, 0.5, 1.333333",
        "150, 10, 0.5, 1.25"
    })
    void metricCasesComeOut(double lpha, double kmph, double metres, double expectedLpm) {
        assertThat(lpm(lpha, kmph, metres)).isCloseTo(expectedLpm, within(1e-6));
    }

    @Test
    void bothUnitSystemsGiveTheSameFlow() {
        // 20 GPA at 6 mph under 20 in, once in US units, once as 187.0791 L/ha, 9.656064 km/h, 0.508 m.
        double us = Application.flowM3ps(20 * TradeUnits.GPA_M, 6 * TradeUnits.MPH_MPS, 20 * TradeUnits.INCH_M);
        double metric = Application.flowM3ps(
                20 * TradeUnits.GPA_M / TradeUnits.LPHA_M * TradeUnits.LPHA_M, 9.656064 * TradeUnits.KMPH_MPS, 0.508);

        assertThat(us / TradeUnits.GPM_M3PS).isCloseTo(0.40404040, within(1e-8));
        assertThat(us / TradeUnits.LPM_M3PS).isCloseTo(1.529459, within(1e-6));
        assertThat(metric / us).isCloseTo(1, within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({
        // Ohio State University Extension (in Farm and Dairy): 10, 15, 20, 30, 40 in; Clemson University and LSU
        // AgCenter: the rest.
        "10, 408",
        "12, 340",
        "14, 291",
        "15, 272",
        "16, 255",
        "18, 227",
        "20, 204",
        "22, 185",
        "24, 170",
        "26, 157",
        "28, 146",
        "30, 136",
        "32, 127",
        "32, 128",
        "36, 113",
        "40, 102"
    })
    void theOunceCourseHasThePublishedLength(double spacingInches, double publishedFeet) {
        // On 1/128 acre the ounces caught are the gallons per acre, since a gallon has 128 fluid ounces.
        double courseM = TradeUnits.ACRE_M2 / 128 / (spacingInches * TradeUnits.INCH_M);

        assertThat(courseM / TradeUnits.FOOT_M).isCloseTo(publishedFeet, within(0.7));
    }

    @Test
    void ouncesCaughtOnTheCourseAreGallonsPerAcre() {
        // LSU AgCenter: 40-in rows, 102 ft, 17 s, 14 oz from both outlets: 14 GPA.
        double speedMps = 102 * TradeUnits.FOOT_M / 17;
        double flowM3ps = 14.0 / 128 * TradeUnits.US_GALLON_M3 / 17;

        assertThat(Application.rateM(flowM3ps, speedMps, 40 * TradeUnits.INCH_M) / TradeUnits.GPA_M)
                .isCloseTo(14, within(0.02));
    }

    @ParameterizedTest
    @CsvSource({"200, 45, 3.03", "200, 27, 5.05"})
    void timedSpeedsComeOut(double feet, double seconds, double publishedMph) {
        // MPH = 200 ft * 60 / (s * 88): Oklahoma State University, printed as 3 and 5 mph.
        assertThat(feet * TradeUnits.FOOT_M / seconds / TradeUnits.MPH_MPS).isCloseTo(publishedMph, within(0.005));
    }
}
