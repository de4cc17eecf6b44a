package evenfall.liquid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.quantity.TradeUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OrificeTest {
    @ParameterizedTest
    @CsvSource({
        // lb/US gal, printed SG, printed factor. Setting the Sprayer Flow Rate for Non-Water Solutions, Univ. of
        // Nebraska-Lincoln CropWatch 2016; the last two: P. E. Sumner, Univ. of Georgia.
        "6.6, 0.79, 0.89",
        "7.0, 0.84, 0.92",
        "8.0, 0.96, 0.98",
        "8.34, 1.00, 1.00",
        "9.0, 1.08, 1.04",
        "10.0, 1.20, 1.10",
        "10.65, 1.28, 1.13",
        "11.00, 1.32, 1.15",
        "11.06, 1.32, 1.15",
        "11.4, 1.37, 1.17",
        "11.5, 1.38, 1.17",
        "11.6, 1.39, 1.18",
        "12.0, 1.44, 1.20",
        "14, 1.68, 1.30",
        "16, 1.92, 1.39"
    })
    void waterFlowOverSolutionFlowIsThePrintedFactor(double poundsPerGallon, double sg, double factor) {
        Orifice orifice = Orifice.ratedAt(1.5 * TradeUnits.LPM_M3PS, 200_000);

        double water = orifice.flowM3ps(250_000, 1);
        assertThat(water / orifice.flowM3ps(250_000, sg)).isCloseTo(factor, within(0.0051));
        assertThat(poundsPerGallon / 8.34).isCloseTo(sg, within(0.0065));
    }

    @Test
    void twentyGallonsOfSolutionTakeAWaterSettingOfTwentyTwoPointSix() {
        // CropWatch 2016: 20 GPA of 28 % times 1.13 is 22.6 GPA of water.
        assertThat(20 * Math.sqrt(10.65 / 8.34)).isCloseTo(22.6, within(0.01));
    }

    @ParameterizedTest
    @CsvSource({
        // hole mm, bar, kg/m3, L/min by Q = Cd A sqrt(2 dp / rho), Cd 0.61 (sharp edge: 0.60 to 0.62, Encyclopaedia
        // Britannica, 11th ed., vol. 14, "Hydraulics").
        "1.0, 1, 998.2, 0.40689",
        "1.0, 2, 1280, 0.50815",
        "1.2, 2, 1280, 0.73174"
    })
    void agreesWithTheSharpEdgedOrifice(double holeMm, double bar, double densityKgpM3, double expectedLpm) {
        double areaM2 = Math.PI / 4 * holeMm * holeMm * 1e-6;
        double waterAt1Bar = 0.61 * areaM2 * Math.sqrt(2 * TradeUnits.BAR_PA / Liquid.WATER_KGPM3);
        Orifice orifice = Orifice.ratedAt(waterAt1Bar, TradeUnits.BAR_PA);

        double flow = orifice.flowM3ps(bar * TradeUnits.BAR_PA, densityKgpM3 / Liquid.WATER_KGPM3);

        assertThat(flow / TradeUnits.LPM_M3PS).isCloseTo(expectedLpm, within(1e-5));
    }

    @Test
    void fourTimesThePressureIsTwiceTheFlow() {
        Orifice orifice = Orifice.ratedAt(1, 100_000);

        assertThat(orifice.flowM3ps(400_000, 1) / orifice.flowM3ps(100_000, 1)).isCloseTo(2, within(1e-12));
    }

    @Test
    void pressureIsTheWayBack() {
        Orifice orifice = Orifice.ratedAt(2.8 * TradeUnits.LPM_M3PS, 200_000);

        for (double pressurePa = 10_000; pressurePa < 1e6; pressurePa *= 1.7) {
            double flow = orifice.flowM3ps(pressurePa, 1.28);
            assertThat(orifice.pressurePa(flow, 1.28) / pressurePa).isCloseTo(1, within(1e-12));
        }
    }

    @Test
    void nothingFlowsWithoutPressure() {
        assertThat(Orifice.ratedAt(1, 1).flowM3ps(0, 1)).isZero();
        assertThat(Orifice.ratedAt(1, 1).flowM3ps(-5, 1)).isZero();
    }
}
