package evenfall.app;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.judge.Alert;
import evenfall.judge.AlertKind;
import evenfall.monitor.Live;
import evenfall.pattern.LineMeasures;
import evenfall.pattern.RowMeasures;
import evenfall.sense.Quantity;
import evenfall.sense.Unknown;
import evenfall.wire.WireCounts;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Figures invented. */
class ConsoleTextTest {
    private static final Alert WING_LOW = new Alert(
            AlertKind.WING_LOW,
            "left",
            11_200_000,
            12_400_000,
            0.112,
            0.15,
            "m",
            "The left wing is at 0.11 m, limit 0.15 m.",
            "Raise it.");

    @Test
    void theStateOfThingsIsOneShortLine() {
        assertThat(ConsoleText.state(
                        live(Quantity.known(5.502, 0), Quantity.known(-0.0121, 0), List.of(WING_LOW)), null))
                .isEqualTo(
                        "   12.4 s  5.5 m/s  148 L/ha (-1 %)  rows 6 %  heights 0.48 ? 0.50  broker up  | wing-low left");
        assertThat(ConsoleText.state(live(Quantity.known(5.502, 0), Quantity.known(0.034, 0), List.of()), null))
                .contains("148 L/ha (+3 %)")
                .endsWith("broker up");
        assertThat(ConsoleText.state(live(Quantity.known(5.502, 0), Quantity.known(0.004, 0), List.of()), null))
                .contains("148 L/ha (0 %)");
    }

    @Test
    void whatIsNotKnownIsAQuestionMarkWithTheReason() {
        Live live = live(Quantity.unknown(Unknown.NO_FIX, 0), Quantity.unknown(Unknown.NEEDS_SPEED, 0), List.of());
        assertThat(ConsoleText.state(live, "Connection refused"))
                .contains("speed ?")
                .contains("148 L/ha  rows")
                .endsWith("broker down  | speed: the receiver has no fix; broker: Connection refused");
    }

    @Test
    void alertsSayWhyAndWhatToDoAndHowLongTheyStood() {
        assertThat(ConsoleText.raised(WING_LOW))
                .isEqualTo("   12.4 s  ALERT wing-low left: The left wing is at 0.11 m, limit 0.15 m. Raise it.");
        assertThat(ConsoleText.cleared(WING_LOW, 15_000_000)).isEqualTo("   15.0 s  clear wing-low left, after 2.6 s");
    }

    private static Live live(Quantity speed, Quantity rateError, List<Alert> standing) {
        Quantity height = Quantity.known(0.5, 0);
        return new Live(
                12_400_000,
                speed,
                height,
                height,
                height,
                Quantity.known(148.2e-7, 0),
                rateError,
                List.of(Quantity.known(0.4812, 0), Quantity.unknown(Unknown.NO_ECHO, 0), height),
                List.of(height, height, height),
                segment(null),
                List.of(),
                null,
                standing,
                new WireCounts(0, 0, 0, 0, 0, 0, 0, 0),
                0);
    }

    private static Live.Segment segment(@Nullable Unknown unknown) {
        return new Live.Segment(
                "boom",
                Quantity.known(0.5, 0),
                new RowMeasures(0.0612, 0.871, 1.13, 0, 0.0125),
                new LineMeasures(0.1421, 0.04),
                unknown);
    }
}
