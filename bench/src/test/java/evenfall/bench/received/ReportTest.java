package evenfall.bench.received;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;

class ReportTest {
    private static final String LIVE = """
            {"at_s":%s,"speed_mps":{"value":4.2,"age_s":0.1},"rate_Lpha":{"value":null,"why":"standing","age_s":0},
             "target_Lpha":150.0,"rate_error_pct":{"value":-3.5,"age_s":0.1},
             "heights":[{"sensor":"tip","right_m":-17,"height_m":{"value":0.41,"age_s":0}}],
             "boom":{"row_cv":0.07,"below_80_share":0.1,"above_120_share":0},
             "wire":{"sentences":9,"accepted":6,"ignored":2,"rejected":{"checksum":1,"malformed":0,"too_long":0}}}
            """;
    private static final String ALERT = """
            {"kind":"wing-low","place":"left","state":"%s","at_s":%s,"since_s":3.0,"raised_s":4.0,"cleared_s":%s,
             "value":0.21,"limit":0.35,"unit":"m","why":"low","act":"raise"}
            """;

    private static Message live(long arrivalUs, double atS) {
        return new Message(arrivalUs, "evenfall/x/live", LIVE.formatted(atS));
    }

    private static Message alert(long arrivalUs, String state, double atS, String clearedS) {
        return new Message(arrivalUs, "evenfall/x/alert/wing-low/left", ALERT.formatted(state, atS, clearedS));
    }

    @Test
    void theMonitorSClockIsMovedByItsLeastDelayedMessage() throws IOException {
        Report report = Report.of(List.of(
                live(2_120_000, 0.4),
                live(2_305_000, 0.6),
                live(2_550_000, 0.8),
                alert(5_900_000, "standing", 4.0, "null")));
        assertThat(report.clockShiftS()).isCloseTo(1.705, within(1e-9));
        assertThat(report.moments().get(0).atS()).isCloseTo(2.105, within(1e-9));
        assertThat(report.moments().get(0).arrivalS()).isCloseTo(2.12, within(1e-9));
        assertThat(report.alerts().get(0).raisedS()).isCloseTo(5.705, within(1e-9));
    }

    @Test
    void whatIsNotKnownStaysNull() throws IOException {
        ReportedMoment moment =
                Report.onOneClock(List.of(live(0, 0.4))).moments().get(0);
        assertThat(moment.rateLpha()).isNull();
        assertThat(moment.rateErrorPct()).isEqualTo(-3.5);
        assertThat(moment.rowCv()).isEqualTo(0.07);
        assertThat(moment.heights()).containsExactly(new ReportedMoment.Height(-17, 0.41));
    }

    @Test
    void anAlertSaidAgainAfterAReconnectionIsOneAlertAndItsEndIsFound() throws IOException {
        Report report = Report.onOneClock(List.of(
                alert(4_000_000, "standing", 4.0, "null"),
                alert(5_000_000, "standing", 4.0, "null"),
                alert(7_000_000, "cleared", 7.0, "7.0"),
                new Message(7_000_000, "evenfall/x/alert/wing-low/left", "")));
        assertThat(report.alerts()).hasSize(1);
        assertThat(report.alerts().get(0).clearedS()).isEqualTo(7.0);
        assertThat(report.alerts().get(0).act()).isEqualTo("raise");
    }

    @Test
    void anAlertThatEndedBecauseNobodyWatchedDidNotClear() throws IOException {
        Report report = Report.onOneClock(
                List.of(alert(4_000_000, "standing", 4.0, "null"), alert(9_000_000, "ended", 9.0, "null")));
        assertThat(report.alerts().get(0).clearedS()).isNull();
    }

    @Test
    void countsAreThoseOfTheLastMessage() throws IOException {
        Report report = Report.onOneClock(List.of(live(0, 0.4)));
        assertThat(report.wire()).isEqualTo(new WireTally(9, 6, 2, 1, 0, 0));
        assertThat(report.wire().rejected()).isEqualTo(1);
    }
}
