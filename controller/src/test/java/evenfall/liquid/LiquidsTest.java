package evenfall.liquid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenfall.quantity.TradeUnits;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LiquidsTest {
    private static double kgpM3(double poundsPerGallon) {
        return poundsPerGallon * TradeUnits.POUND_KG / TradeUnits.US_GALLON_M3;
    }

    private static Liquid liquid(String id) {
        return Liquids.byId(id).orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({
        // lb/US gal. Univ. of Nebraska-Lincoln CropWatch 2016 (10.65, 11.06); Estimated Physical Characteristics of
        // Fertilizer
        // Material, a dealers' handout (10.67). 30 %: 10.85, from memory.
        "uan-28, 10.65",
        "uan-28, 10.67",
        "uan-30, 10.85",
        "uan-32, 11.06"
    })
    void densitiesLieWithinHalfAPercentOfPublishedOnes(String id, double poundsPerGallon) {
        assertThat(liquid(id).densityKgpM3()).isCloseTo(kgpM3(poundsPerGallon), Percentage.withPercentage(0.5));
    }

    @ParameterizedTest
    @CsvSource({
        // SG at 16 °C: UNIDO/IFDC Fertilizer Manual 1998 by way of an encyclopaedia.
        "uan-28, 1.283",
        "uan-30, 1.303",
        "uan-32, 1.320"
    })
    void specificGravitiesAgreeWithTheFertilizerManual(String id, double sg) {
        assertThat(liquid(id).specificGravity()).isCloseTo(sg, Percentage.withPercentage(0.5));
    }

    @ParameterizedTest
    @CsvSource({
        // lb N/US gal: CropWatch 2016 (2.982); the handout (2.988, 3.539). 30 %: 3.255, from memory.
        "uan-28, 2.982",
        "uan-28, 2.988",
        "uan-30, 3.255",
        "uan-32, 3.539"
    })
    void nitrogenPerGallonAgreesWithPublishedFigures(String id, double poundsPerGallon) {
        assertThat(liquid(id).nitrogenKgpM3()).isCloseTo(kgpM3(poundsPerGallon), Percentage.withPercentage(0.5));
    }

    @ParameterizedTest
    @CsvSource({
        // Per cent ammonium nitrate and urea: UNIDO/IFDC Fertilizer Manual 1998 by way of an encyclopaedia.
        "uan-28, 40, 30",
        "uan-30, 42, 33",
        "uan-32, 45, 35"
    })
    void nitrogenFollowsFromTheComposition(String id, double ammoniumNitrate, double urea) {
        // N by mass: 2 * 14.007 / 80.043 of ammonium nitrate, 2 * 14.007 / 60.056 of urea (atomic weights).
        double share = 0.34998 * ammoniumNitrate / 100 + 0.46646 * urea / 100;

        assertThat(liquid(id).nitrogenKgpM3() / liquid(id).densityKgpM3()).isCloseTo(share, within(0.001));
    }

    @Test
    void thiosulphateLiesBetweenThePublishedDensities() {
        // 11.04 lb/US gal in the handout, 11.5 in CropWatch 2016: the sources differ by 4 %.
        assertThat(Liquids.THIOSULPHATE.densityKgpM3()).isBetween(kgpM3(11.04), kgpM3(11.5));
        // 1.325 lb N and 2.870 lb S per gallon go with 11.04 (handout): by mass 12 and 26 %.
        Liquid measured = Liquids.THIOSULPHATE.withDensity(kgpM3(11.04));
        assertThat(measured.nitrogenKgpM3()).isCloseTo(kgpM3(1.325), Percentage.withPercentage(0.1));
        assertThat(measured.sulphurKgpM3()).isCloseTo(kgpM3(2.870), Percentage.withPercentage(0.1));
    }

    @Test
    void blendsKeepTheMassOfWhatGoesIn() {
        Liquid blend = Liquids.UAN_32.blendedWith(Liquids.THIOSULPHATE, 0.25);

        assertThat(blend.densityKgpM3()).isCloseTo(0.75 * 1324 + 0.25 * 1330, within(1e-9));
        assertThat(blend.nitrogenKgpM3()).isCloseTo(0.75 * 0.32 * 1324 + 0.25 * 0.12 * 1330, within(1e-9));
        assertThat(blend.sulphurKgpM3()).isCloseTo(0.25 * 0.26 * 1330, within(1e-9));
    }

    @Test
    void halfWaterHalvesTheNitrogen() {
        Liquid blend = Liquids.UAN_28.blendedWith(Liquids.WATER, 0.5);

        assertThat(blend.nitrogenKgpM3()).isCloseTo(0.5 * Liquids.UAN_28.nitrogenKgpM3(), within(1e-9));
    }

    @Test
    void aShareIsAShare() {
        assertThatThrownBy(() -> Liquids.UAN_28.blendedWith(Liquids.WATER, 1.1))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void seventyFivePoundsOfNitrogenTakeTwentyFiveGallons() {
        // CropWatch 2016: 75 lb N/ac from 28 % at 10.65 lb/gal takes 25.151 gal/ac.
        Liquid product = Liquids.UAN_28.withDensity(kgpM3(10.65));
        double kgpM2 = Application.nitrogenKgpM2(25.151 * TradeUnits.GPA_M, product);

        assertThat(kgpM2 * TradeUnits.ACRE_M2 / TradeUnits.POUND_KG).isCloseTo(75, within(0.01));
    }
}
