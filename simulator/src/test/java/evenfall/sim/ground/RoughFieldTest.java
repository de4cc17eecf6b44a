package evenfall.sim.ground;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.chance.Chance;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The model under test: isotropic random ground, one-sided profile density Gd(n) = Gd(n0)·(n/n0)⁻² m³,
 * n0 = 0.1 cycle/m, field band 1/512 … 3.6 cycles/m.
 */
class RoughFieldTest {

    private static final double N0_CPM = 0.1;

    private static RoughField field(RoughnessClass roughness, long seed) {
        return RoughField.of(roughness, Chance.stream(seed, "ground"));
    }

    @ParameterizedTest
    @CsvSource({"x, 0", "y, 90", "diagonal, 45", "odd direction, 107.3"})
    void aProfileInAnyDirectionStaysInTheClassBandAndFallsWithSlopeMinusTwo(String name, double degrees) {
        RoughField ground = field(RoughnessClass.D, 20240611);
        ProfileSpectrum spectrum = ProfileSpectrum.along(ground, Math.toRadians(degrees), 8, 8);

        assertThat(spectrum.slope(0.02, 2.0)).as("slope along %s", name).isCloseTo(-2.0, within(0.1));
        double ratio = Math.cbrt(2);
        for (double low = 0.02; low * ratio < 2.83; low *= ratio) {
            double middle = low * Math.sqrt(ratio);
            double scaled = spectrum.meanM3(low, low * ratio) * (middle / N0_CPM) * (middle / N0_CPM);
            // Limits of class D in ISO 8608: 512 and 2048 · 10⁻⁶ m³.
            assertThat(scaled)
                    .as("Gd(n0) from the third octave at %.3f cycles/m along %s", middle, name)
                    .isBetween(512e-6, 2048e-6);
        }
        assertThat(spectrum.meanM3(0.1, 1.0))
                .as("mean density 0.1 to 1 cycle/m along %s", name)
                .isCloseTo(1024e-6 * N0_CPM * N0_CPM * (1 / 0.1 - 1 / 1.0) / 0.9, within(1024e-6 * 0.1 * 0.08));
    }

    @ParameterizedTest
    @CsvSource({"B, 7.613", "C, 15.226", "D, 30.451"})
    void theRmsInTheBandOfTheStandardIsTheClosedForm(RoughnessClass roughness, double rmsMm) {
        // √(Gd(n0)·n0²·(1/0.011 − 1/2.83)) with the class means of ISO 8608. The field's own shortfall near
        // 2.83 cycles/m is worth 0.1 % of it.
        double closedForm = Math.sqrt(roughness.gdN0M3() * N0_CPM * N0_CPM * (1 / 0.011 - 1 / 2.83));
        assertThat(closedForm * 1e3).isCloseTo(rmsMm, within(0.001));

        RoughField ground = field(roughness, 5);
        double meanSquare = 0;
        double[] directions = {0, 90, 45, 135};
        for (double degrees : directions) {
            double rms =
                    ProfileSpectrum.along(ground, Math.toRadians(degrees), 8, 8).rmsM(0.011, 2.83);
            meanSquare += rms * rms / directions.length;
        }
        assertThat(Math.sqrt(meanSquare)).isCloseTo(closedForm, within(0.06 * closedForm));
    }

    @Test
    void theVarianceOverTheAreaIsTheIntegralOfTheFieldsSpectrum() {
        RoughField ground = field(RoughnessClass.D, 9);
        double sum = 0;
        double square = 0;
        int n = 0;
        // 2 km square covers the long tile of 1024 m nearly four times over.
        for (double x = 0; x < 2000; x += 4.19) {
            for (double y = 0; y < 2000; y += 4.37) {
                double h = ground.heightM(x, y);
                sum += h;
                square += h * h;
                n++;
            }
        }
        double variance = square / n - (sum / n) * (sum / n);
        double closedForm = Math.PI / 2 * 1024e-6 * N0_CPM * N0_CPM * (512 - 1 / 3.6);
        assertThat(Math.sqrt(variance)).isCloseTo(Math.sqrt(closedForm), within(0.05 * Math.sqrt(closedForm)));
        assertThat(sum / n).isCloseTo(0.0, within(0.01));
    }

    @Test
    void theSameSeedGivesTheSameGroundToTheLastBit() {
        RoughField one = field(RoughnessClass.C, 77);
        RoughField other = field(RoughnessClass.C, 77);
        RoughField different = field(RoughnessClass.C, 78);
        int same = 0;
        for (int i = 0; i < 10_000; i++) {
            double x = i * 3.77 - 10_000;
            double y = i % 37 - 18;
            assertThat(Double.doubleToLongBits(one.heightM(x, y)))
                    .isEqualTo(Double.doubleToLongBits(other.heightM(x, y)));
            if (one.heightM(x, y) == different.heightM(x, y)) {
                same++;
            }
        }
        assertThat(same).isZero();
    }

    @Test
    void theGroundIsAsItWasTheDayScenariosWereRecorded() {
        // Not an outside value: it fails when a change of ours would change every recorded scenario.
        RoughField ground = field(RoughnessClass.D, 1);
        assertThat(ground.heightM(0, 0)).isEqualTo(0.12260792311280966);
        assertThat(ground.heightM(12_345.6, -17.8)).isEqualTo(-0.0860398363061214);
    }

    @ParameterizedTest
    @EnumSource(names = {"B", "C", "D", "E"})
    void eachClassHasTwiceTheHeightsOfTheOneBelow(RoughnessClass roughness) {
        RoughnessClass below = RoughnessClass.values()[roughness.ordinal() - 1];
        RoughField rough = field(roughness, 3);
        RoughField smooth = field(below, 3);
        for (int i = 0; i < 1000; i++) {
            double x = i * 1.37;
            double y = i * 0.11 - 50;
            assertThat(rough.heightM(x, y)).isCloseTo(2 * smooth.heightM(x, y), within(1e-9));
        }
    }

    @Test
    void theClassesAreThoseOfIso8608() {
        // ISO 8608 as reproduced in github.com/wanglongqi/RoadProfile: upper limits A to E.
        double[] upperLimits = {32e-6, 128e-6, 512e-6, 2048e-6, 8192e-6};
        for (RoughnessClass roughness : RoughnessClass.values()) {
            assertThat(roughness.upperLimitM3()).isCloseTo(upperLimits[roughness.ordinal()], within(1e-15));
            assertThat(roughness.lowerLimitM3()).isCloseTo(upperLimits[roughness.ordinal()] / 4, within(1e-15));
        }
    }

    @Test
    void anHourOfDrivingDoesNotComeBackToTheSameGround() {
        RoughField ground = field(RoughnessClass.D, 11);
        // Slopes over half a metre, 100 m of them, against every later 100 m up to 20 km. Unlike heights,
        // slopes are not ruled by a few long waves that look alike anyway.
        double[] slopes = new double[40_000];
        for (int i = 0; i < slopes.length; i++) {
            slopes[i] = (ground.heightM(0.5 * i + 0.5, 0) - ground.heightM(0.5 * i, 0)) / 0.5;
        }
        int n = 200;
        double highest = 0;
        for (int start = n; start + n < slopes.length; start++) {
            double dot = 0;
            double a = 0;
            double b = 0;
            for (int i = 0; i < n; i++) {
                dot += slopes[i] * slopes[start + i];
                a += slopes[i] * slopes[i];
                b += slopes[start + i] * slopes[start + i];
            }
            highest = Math.max(highest, dot / Math.sqrt(a * b));
        }
        assertThat(highest).isBetween(0.1, 0.7);
    }

    @Test
    void aRoughnessThatIsNotAboveZeroIsRefused() {
        Chance chance = Chance.stream(1, "ground");
        for (double wrong : new double[] {0, -1e-6, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> RoughField.of(wrong, chance))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("above 0");
        }
    }

    @Test
    void manyPlacesAtOnceHaveTheHeightsThatEachHasAlone() {
        Chance chance = Chance.stream(7, "places");
        int n = 500;
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = 3000 * (chance.nextDouble() - 0.5);
            y[i] = 3000 * (chance.nextDouble() - 0.5);
        }
        RoughField rough = field(RoughnessClass.C, 7);
        Ground knoll = new Knoll(0, 0, 900, 2);
        for (Ground ground : List.of(
                rough,
                new CompositeGround(List.of(rough)),
                new CompositeGround(List.of(knoll, rough)),
                Ground.level())) {
            double[] heights = new double[n + 1];
            heights[n] = 17;
            ground.heightsM(x, y, heights, n);
            for (int i = 0; i < n; i++) {
                assertThat(heights[i]).isEqualTo(ground.heightM(x[i], y[i]));
            }
            assertThat(heights[n]).isEqualTo(17);
        }
    }
}
