package evenfall.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.liquid.Liquids;
import evenfall.outlet.OutletCatalogue;
import evenfall.outlet.OutletType;
import evenfall.outlet.Stream;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WettedWidthTest {
    @ParameterizedTest
    @ValueSource(strings = {"three-stream", "five-stream", "six-stream", "seven-stream", "streamer-bar"})
    void itNeverFallsAsHeightOrPressureGrows(String id) {
        OutletType type = OutletCatalogue.builtIn(id).fitted(0.508);
        WettedWidth wetted = new WettedWidth(type, Liquids.UAN_28);
        for (double heightM = 0; heightM < 1.5; heightM += 0.05) {
            for (double kPa = 50; kPa < 600; kPa += 25) {
                double here = at(wetted, type, heightM, kPa);
                assertThat(at(wetted, type, heightM + 0.05, kPa))
                        .as("%s, %.2f m, %.0f kPa, higher", id, heightM, kPa)
                        .isGreaterThanOrEqualTo(here);
                assertThat(at(wetted, type, heightM, kPa + 25))
                        .as("%s, %.2f m, %.0f kPa, more pressure", id, heightM, kPa)
                        .isGreaterThan(here);
            }
        }
    }

    private static double at(WettedWidth wetted, OutletType type, double heightM, double kPa) {
        return wetted.ofOutletM(heightM, type.speedFactor(1000 * kPa, Liquids.UAN_28.specificGravity()));
    }

    /** Of the same flow at the same exit speed; common practice, no source. */
    @Test
    void moreStreamsWetMore() {
        double before = 0;
        for (String id : new String[] {"three-stream", "five-stream", "six-stream", "seven-stream"}) {
            OutletType type = OutletCatalogue.builtIn(id).fitted(0.508).withRatedFlow(2.8e-3 / 60);
            double here = at(new WettedWidth(type, Liquids.UAN_28), type, 0.5, 200);
            assertThat(here).as(id).isGreaterThan(before);
            before = here;
        }
    }

    /**
     * One stream by hand, the middle of the five at 2.8 L/min of water and 5 m/s: q = 2.8e-3/60/3 m³/s, d = √(4 q/(π 5)) = 1.990 mm;
     * u = 5 m/s at SG 1 and the rated pressure; We = 998.2 · 25 · 1.990e-3/0.069 = 719.8; L = 8.51 · 719.8^0.32 d = 0.1391 m; 0.5 m are
     * 3.594 L, ln 3.594/ln 4 = 0.9229, drop 1.89^0.9229 d = 3.581 mm, We = 1295, width 3.581 mm · 1295^¼ = 21.48 mm.
     */
    @Test
    void oneStreamByHand() {
        OutletType five = OutletCatalogue.builtIn("five-stream").fitted(0.508);
        OutletType middle = new OutletType(
                "one",
                "one",
                five.ratedPressurePa(),
                five.ratedFlowM3ps() / 3,
                five.lowPa(),
                five.highPa(),
                List.of(new Stream(1, 0, 0, 0, 5)));
        assertThat(new WettedWidth(middle, Liquids.WATER).ofOutletM(0.5, 1)).isCloseTo(0.02148, within(2e-5));
    }

    @Test
    void theFactorsStandBesideTheGeometryAndTheCaveatPromisesNothing() {
        LeafContact plain = new LeafContact(0.18, 1.2, OptionalDouble.empty(), OptionalDouble.empty());
        LeafContact hot = new LeafContact(0.18, 1.2, OptionalDouble.of(1.5), OptionalDouble.of(2));
        assertThat(plain.index()).isEqualTo(1.2);
        assertThat(hot.index()).isCloseTo(3.6, within(1e-12));
        assertThat(LeafContact.CAVEAT).contains("predicts neither leaf burn nor yield");
    }
}
