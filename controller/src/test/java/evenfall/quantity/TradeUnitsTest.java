package evenfall.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import javax.measure.quantity.Volume;
import org.junit.jupiter.api.Test;
import systems.uom.common.USCustomary;
import tech.units.indriya.quantity.Quantities;
import tech.units.indriya.unit.Units;

/** Our conversion constants against a general reference library of units (JSR 385: Indriya with its US customary units). */
class TradeUnitsTest {
    @Test
    void lengthsAgreeWithTheReferenceLibrary() {
        assertThat(TradeUnits.INCH_M).isCloseTo(metres(USCustomary.INCH), within(1e-15));
        assertThat(TradeUnits.FOOT_M).isCloseTo(metres(USCustomary.FOOT), within(1e-15));
        assertThat(TradeUnits.MPH_MPS * 3600).isCloseTo(metres(USCustomary.MILE), within(1e-9));
    }

    @Test
    void volumesAgreeWithTheReferenceLibrary() {
        Quantity<Volume> gallon = Quantities.getQuantity(1.0, USCustomary.GALLON_LIQUID);
        double cubicMetres = gallon.to(Units.CUBIC_METRE).getValue().doubleValue();

        assertThat(TradeUnits.US_GALLON_M3).isCloseTo(cubicMetres, within(1e-15));
    }

    @Test
    void theAcreIsTheInternationalOne() {
        Quantity<Area> acre = Quantities.getQuantity(1.0, USCustomary.ACRE);
        double squareMetres = acre.to(Units.SQUARE_METRE).getValue().doubleValue();

        assertThat(TradeUnits.ACRE_M2).isCloseTo(squareMetres, within(1e-6));
    }

    @Test
    void oneGallonPerAcreIsWhatConversionTablesPrint() {
        // Exact from 3.785411784 L and 0.40468564224 ha; printed tables say 9.35 L/ha.
        assertThat(TradeUnits.GPA_M / TradeUnits.LPHA_M).isCloseTo(9.353956, within(1e-6));
    }

    @Test
    void psiIsWhatEngineeringTablesPrint() {
        // 6894.757 Pa: NIST SP 811, appendix B, from memory.
        assertThat(TradeUnits.PSI_PA).isCloseTo(6894.757, within(5e-4));
    }

    private static double metres(Unit<Length> unit) {
        return Quantities.getQuantity(1.0, unit).to(Units.METRE).getValue().doubleValue();
    }
}
