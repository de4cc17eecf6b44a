package evenfall.outlet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenfall.config.ConfigException;
import org.junit.jupiter.api.Test;

class OutletFormTest {
    private static final String PLAIN = """
            id: mine
            title: Invented
            rated: {pressure_kPa: 200, flow_Lpm: 1.6}
            window: {low_kPa: 100, high_kPa: 400}
            streams:
              - {share: 1, splay_deg: 0, tilt_deg: 0, exit_mps: 5}
            """;

    /** Common practice, no source: only bars carry several metering sizes at once. */
    @Test
    void onlyTheBarOfTheCatalogueCarriesSeveralMeteringSizes() {
        for (String id : OutletCatalogue.ids()) {
            OutletDesign design = OutletCatalogue.builtIn(id);
            assertThat(design.isBar()).as(id).isEqualTo(id.equals("streamer-bar"));
            assertThat(design.meteringSizes() > 1).as(id).isEqualTo(id.equals("streamer-bar"));
        }
    }

    @Test
    void aFileThatSaysNothingIsANozzleOfOneSize() throws ConfigException {
        OutletDesign design = OutletDesign.parse("mine.yaml", PLAIN);
        assertThat(design.isBar()).isFalse();
        assertThat(design.meteringSizes()).isEqualTo(1);
    }

    @Test
    void noSizeAtAllIsRefusedWithTheLine() {
        assertThatThrownBy(() -> OutletDesign.parse("mine.yaml", PLAIN + "metering_sizes: 0\n"))
                .isInstanceOf(ConfigException.class)
                .hasMessageContaining("mine.yaml:7: metering_sizes: 0 cannot be used");
    }
}
