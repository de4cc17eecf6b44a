package evenfall.outlet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.assertj.core.api.Assertions.within;

import evenfall.config.ConfigException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class OutletDesignTest {
    private static final String EXAMPLE = """
            id: example
            title: Example outlet
            rated: {pressure_kPa: 200, flow_Lpm: 1.6}
            window: {low_kPa: 100, high_kPa: 400}
            streams:
              - {share: 1, offset_m: 0.0, splay_deg: 20.2, tilt_deg: 0, exit_mps: 5.0}
              - {share: 3, offset_m: 0.1, splay_deg: -20.2, tilt_deg: 90, exit_mps: 4.0}
            """;

    @Test
    void plainNumbersAreTakenAsTheyStand() throws Exception {
        OutletType type = OutletDesign.parse("outlet.yaml", EXAMPLE).fitted(0.5);

        assertThat(type.ratedFlowM3ps()).isCloseTo(1.6e-3 / 60, within(1e-12));
        assertThat(type.streams().get(0).splayRad()).isCloseTo(Math.toRadians(20.2), within(1e-12));
        assertThat(type.streams().get(0).share()).isEqualTo(0.25);
        assertThat(type.streams().get(1).share()).isEqualTo(0.75);
        assertThat(type.streams().get(1).tiltRad()).isCloseTo(Math.PI / 2, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            high_kPa: 400   | high_kPa: 90     | outlet.yaml:4: window.high_kPa: is not above low_kPa
            splay_deg: 20.2 | splay_deg: 95    | streams[1].splay_deg: 95 cannot be used
            share: 3        | share: 0         | streams[2].share: 0 cannot be used
            splay_deg: 20.2 | lands_spacings: 1 | needs a design point
            'splay_deg: 20.2, ' | ''           | splay_deg: is missing
            flow_Lpm: 1.6   | flow_lpm: 1.6    | rated
            """)
    void aWrongFileIsRefusedWithItsPlace(String from, String to, String says) {
        Throwable thrown = catchThrowable(() -> OutletDesign.parse("outlet.yaml", EXAMPLE.replace(from, to)));

        assertThat(thrown).isInstanceOf(ConfigException.class);
        assertThat(thrown.getMessage()).contains(says).contains("allowed: ").doesNotContain("\n");
    }

    static java.util.List<String> builtIn() {
        return OutletCatalogue.ids();
    }

    @ParameterizedTest
    @MethodSource("builtIn")
    void builtInTypesAreSymmetricalAndWhole(String id) {
        OutletType type = OutletCatalogue.builtIn(id).fitted(0.508);
        int n = type.streams().size();
        double shares = 0;
        for (int i = 0; i < n; i++) {
            Stream left = type.streams().get(i);
            Stream right = type.streams().get(n - 1 - i);
            shares += left.share();
            assertThat(left.share()).isEqualTo(right.share());
            assertThat(left.offsetM() + left.splayRad()).isCloseTo(-right.offsetM() - right.splayRad(), within(1e-9));
        }
        assertThat(shares).isCloseTo(1, within(1e-12));
        assertThat(type.id()).isEqualTo(id);
    }

    @Test
    void anUnknownTypeIsRefusedWithTheKnownOnes() {
        assertThat(catchThrowable(() -> OutletCatalogue.find("nine-stream", Path.of("."))))
                .isInstanceOf(ConfigException.class)
                .hasMessageContaining("nine-stream")
                .hasMessageContaining("three-stream, five-stream, six-stream, seven-stream, streamer-bar");
    }

    @Test
    void exitSpeedGoesWithTheRootOfPressureOverDensity() {
        OutletType type = OutletCatalogue.builtIn("five-stream").fitted(0.508);

        assertThat(type.speedFactor(200_000, 1)).isCloseTo(1, within(1e-12));
        assertThat(type.speedFactor(800_000, 1)).isCloseTo(2, within(1e-12));
        assertThat(type.speedFactor(200_000, 1.28)).isCloseTo(1 / Math.sqrt(1.28), within(1e-12));
        assertThat(type.speedFactor(-1, 1.28)).isZero();
    }
}
