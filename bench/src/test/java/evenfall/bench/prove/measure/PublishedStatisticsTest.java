package evenfall.bench.prove.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Statistics against values that others have published. */
class PublishedStatisticsTest {

    /** NIST/ITL StRD, data set Norris, "Calibration of Ozone Monitors": y, x. */
    private static final double[][] NORRIS = {
        {0.1, 0.2}, {338.8, 337.4}, {118.1, 118.2}, {888.0, 884.6}, {9.2, 10.1}, {228.1, 226.5}, {668.5, 666.3},
        {998.5, 996.3}, {449.1, 448.6}, {778.9, 777.0}, {559.2, 558.2}, {0.3, 0.4}, {0.1, 0.6}, {778.1, 775.5},
        {668.8, 666.9}, {339.3, 338.0}, {448.9, 447.5}, {10.8, 11.6}, {557.7, 556.0}, {228.3, 228.1}, {998.0, 995.8},
        {888.8, 887.6}, {119.6, 120.2}, {0.3, 0.3}, {0.6, 0.3}, {557.6, 556.8}, {339.3, 339.1}, {888.0, 887.2},
        {998.5, 999.0}, {778.9, 779.0}, {10.2, 11.1}, {117.6, 118.3}, {228.9, 229.2}, {668.4, 669.1}, {449.2, 448.9},
        {0.2, 0.5}
    };

    private static double[] column(double[][] rows, int column) {
        double[] values = new double[rows.length];
        for (int i = 0; i < rows.length; i++) {
            values[i] = rows[i][column];
        }
        return values;
    }

    @Test
    void theLineThroughNorrisHasTheCertifiedValuesOfNist() {
        Line line = Line.through(column(NORRIS, 1), column(NORRIS, 0));
        assertThat(line.n()).isEqualTo(36);
        assertThat(line.intercept()).isCloseTo(-0.262323073774029, within(1e-11));
        assertThat(line.slope()).isCloseTo(1.00211681802045, within(1e-13));
        assertThat(line.interceptStandard()).isCloseTo(0.232818234301152, within(1e-10));
        assertThat(line.slopeStandard()).isCloseTo(0.429796848199937e-3, within(1e-13));
        assertThat(line.residualSd()).isCloseTo(0.884796396144373, within(1e-10));
        assertThat(line.standardAt(0)).isCloseTo(line.interceptStandard(), within(1e-12));
    }

    /** GUM (JCGM 100:2008) H.3, calibration of a thermometer; full digits from the MSL Measurement Standards Laboratory's worked copy. */
    @Test
    void theThermometerOfTheGumHasItsPublishedLine() {
        double[] t = {21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511};
        double[] b = {-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160};
        double[] x = new double[t.length];
        for (int i = 0; i < t.length; i++) {
            x[i] = t[i] - 20;
        }
        Line line = Line.through(x, b);
        assertThat(line.intercept()).isCloseTo(-0.17120379013135004, within(1e-14));
        assertThat(line.slope()).isCloseTo(0.0021826977398872894, within(1e-15));
        assertThat(line.slopeStandard()).isCloseTo(0.0006679387732278323, within(1e-15));
        assertThat(line.dof()).isEqualTo(9);
        assertThat(line.residualSd() * line.residualSd() * 9).isCloseTo(0.000110096583109, within(1e-14));
        // As the GUM prints them.
        assertThat(line.interceptStandard()).isCloseTo(0.0029, within(0.00005));
        assertThat(line.correlation()).isCloseTo(-0.930, within(0.0005));
        assertThat(line.at(10)).isCloseTo(-0.1494, within(0.00005));
        assertThat(line.standardAt(10)).isCloseTo(0.0041, within(0.00005));
    }

    /** GUM G.4.1, example: three relative uncertainties from 10, 5 and 15 readings (from memory). */
    @Test
    void effectiveDegreesOfFreedomAreThoseOfTheGumsExample() {
        Estimate estimate = Estimate.of(
                100,
                Component.repeats("x1", 0.25, 9),
                Component.repeats("x2", 0.57, 4),
                Component.repeats("x3", 0.82, 14));
        assertThat(estimate.standard()).isCloseTo(1.03, within(0.005));
        assertThat(estimate.dof()).isCloseTo(19.0, within(0.05));
        assertThat(Estimate.factor(19, 0.95)).isCloseTo(2.09, within(0.005));
        assertThat(Estimate.factor(19, 0.95) * estimate.standard()).isCloseTo(2.2, within(0.05));
    }

    @ParameterizedTest(name = "{0} degrees of freedom")
    @CsvSource({
        "1, 12.71, 13.97",
        "2, 4.30, 4.53",
        "3, 3.18, 3.31",
        "4, 2.78, 2.87",
        "5, 2.57, 2.65",
        "10, 2.23, 2.28",
        "20, 2.09, 2.13",
        "50, 2.01, 2.05",
        "Infinity, 1.960, 2.000"
    })
    void coverageFactorsAreThoseOfTheGumsTable(double dof, double at95, double at9545) {
        // GUM table G.2, columns 95 % and 95.45 % (from memory).
        assertThat(Estimate.factor(dof, 0.95)).isCloseTo(at95, within(0.0051));
        assertThat(Estimate.factor(dof, Estimate.COVERAGE)).isCloseTo(at9545, within(0.0051));
    }

    /** NIST/ITL StRD, univariate sets, as in the GNU Scientific Library's test of its statistics. */
    @Test
    void meanAndSpreadAreThoseOfNist() {
        Spread one = Spread.of(10000001, 10000003, 10000002);
        assertThat(one.mean()).isEqualTo(10000002);
        assertThat(one.sd()).isEqualTo(1);
        double[] alternating = new double[1001];
        for (int i = 0; i < alternating.length; i++) {
            alternating[i] = i == 0 ? 10000000.2 : i % 2 == 1 ? 10000000.1 : 10000000.3;
        }
        Spread four = Spread.of(alternating);
        assertThat(four.mean()).isCloseTo(10000000.2, within(1e-8));
        assertThat(four.sd()).isCloseTo(0.1, within(1e-8));
        Spread hand = Spread.of(98, 104, 101, 95, 102, 100);
        assertThat(hand.cv()).isCloseTo(0.031623, within(5e-7));
    }

    /** Data "chem" of Venables and Ripley's MASS: median 3.385; two of 24 lie far out. */
    @Test
    void aWildValueAmongEchoesIsLeftOut() {
        long[] us = {
            2900, 3100, 3400, 3400, 3700, 3700, 2800, 2500, 2400, 2400, 2700, 2200, 5280, 3370, 3030, 3030, 28950, 3770,
            3400, 2200, 3500, 3600, 3700, 3700
        };
        java.util.List<@org.jspecify.annotations.Nullable Long> echoes = new java.util.ArrayList<>();
        for (long one : us) {
            echoes.add(one);
        }
        EchoSeries series = EchoSeries.of(echoes, 2e6);
        assertThat(series).isNotNull();
        // Median 3385, 1.4826 MAD 526: five of them reach to 6016, so 5280 stays and 28950 goes.
        assertThat(series.outliers()).isEqualTo(1);
        assertThat(series.kept()).isEqualTo(23);
        assertThat(series.distanceM()).isCloseTo((4280.42 * 24 - 28950) / 23, within(0.05));
    }

    @ParameterizedTest(name = "{0} in")
    @CsvSource({
        "10, 408", "12, 340", "14, 291", "15, 272", "16, 255", "18, 227", "20, 204", "24, 170", "26, 157", "28, 146",
        "30, 136", "36, 113", "40, 102"
    })
    void theCourseOfA128thOfAnAcreIsThePublishedOne(double spacingIn, double courseFt) {
        // Ohio State University Extension (7 steps for easy sprayer calibration), Clemson University, LSU AgCenter.
        Course128 course = Course128.of(spacingIn * 0.0254, 2);
        assertThat(course.courseM() / 0.3048).isCloseTo(courseFt, within(0.7));
    }

    @Test
    void theOuncesOnTheCourseAreTheGallonsOnAnAcre() {
        // 5940 · gpm / (mph · in), the calibration sheets' identity.
        double gpm = 0.404040404;
        Course128 course = Course128.of(20 * 0.0254, 6 * 5280 * 0.3048 / 3600);
        assertThat(course.ounces(gpm * 3.785411784e-3 / 60)).isCloseTo(5940 * gpm / (6 * 20), within(1e-9));
        assertThat(course.ounces(gpm * 3.785411784e-3 / 60)).isCloseTo(20, within(1e-6));
    }
}
