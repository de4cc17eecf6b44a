package evenfall.bench.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.bench.received.Message;
import evenfall.bench.received.ReportedMoment;
import evenfall.bench.report.Paint;
import evenfall.quantity.Units;
import java.util.List;
import org.junit.jupiter.api.Test;

class LiveViewTest {
    private static final int COLUMNS = 80;
    private static final LiveView VIEW =
            new LiveView("level-field", 45, 10, 0.15, 0.5, Units.METRIC, Paint.OFF, COLUMNS);

    private static Message live(String rate, String rowCv) {
        return new Message(0, "evenfall/x/live", """
                {"at_s":1,"speed_mps":{"value":5},"rate_Lpha":{"value":%s},"target_Lpha":150,
                 "rate_error_pct":{"value":%s},"boom":{"row_cv":%s},
                 "heights":[{"right_m":-17,"height_m":{"value":0.5}},{"right_m":17,"height_m":{"value":0.5}}],
                 "wire":{}}
                """.formatted(rate, rate.equals("null") ? "null" : "-2.0", rowCv));
    }

    private static Message alert(String kind, String state) {
        return new Message(0, "evenfall/x/alert/" + kind + "/left", """
                {"kind":"%s","place":"left","state":"%s","at_s":1,"since_s":0.2,"raised_s":1,"cleared_s":null,
                 "value":0.2,"limit":0.35,"unit":"m","why":"The left wing of this boom hangs so low that this line is too long.",
                 "act":"Raise it."}
                """.formatted(kind, state));
    }

    @Test
    void noFrameIsLongerThanTenLinesNorWiderThanTheTerminal() {
        LiveState state = new LiveState();
        state.hear(live("147.0", "0.31"));
        for (String kind : List.of("wing-low", "wing-high", "rate-low", "rate-high", "bands-gapped")) {
            state.hear(alert(kind, "standing"));
        }
        List<String> frame = VIEW.frame(state, 12);
        assertThat(frame).hasSizeLessThanOrEqualTo(LiveView.MOST_LINES);
        assertThat(frame).allMatch(line -> Paint.width(line) <= COLUMNS);
        assertThat(String.join("\n", frame)).contains("147 L/ha", "31 %", "Raise it.", "and 4 older");
    }

    @Test
    void inTradeUnitsAndANarrowWindowNoLineIsWiderThanTheTerminalEither() {
        LiveState state = new LiveState();
        state.hear(live("147.0", "0.31"));
        state.hear(alert("wing-low", "standing"));
        LiveView narrow = new LiveView("terrace-crossing, three-stream", 45, 10, 0.15, 0.5, Units.US, Paint.ON, 60);
        assertThat(narrow.frame(state, 12)).allMatch(line -> Paint.width(line) <= 60);
    }

    @Test
    void whatIsNotKnownIsSaidToBeNotKnown() {
        LiveState state = new LiveState();
        assertThat(String.join("\n", VIEW.frame(state, 0))).contains("waiting");
        state.hear(live("null", "null"));
        assertThat(String.join("\n", VIEW.frame(state, 1)))
                .contains("rate not known", "rows not known", "nothing to do");
        assertThat(VIEW.line(state, 1)).contains("rate not known", "row CV not known");
    }

    @Test
    void aMachineThatStandsHasNoRows() {
        LiveState state = new LiveState();
        String rolling = live("147.0", "0.31").payload();
        state.hear(new Message(
                0,
                "evenfall/x/live",
                rolling.replace("\"speed_mps\":{\"value\":5}", "\"speed_mps\":{\"value\":0.49}")));
        assertThat(String.join("\n", VIEW.frame(state, 1))).contains("standing").doesNotContain("31 %");
        assertThat(VIEW.line(state, 1)).contains("standing").doesNotContain("31 %");
        state.hear(new Message(
                0,
                "evenfall/x/live",
                rolling.replace("\"speed_mps\":{\"value\":5}", "\"speed_mps\":{\"value\":0.51}")));
        assertThat(VIEW.line(state, 1)).contains("row CV 31 %");
    }

    @Test
    void anAlertGoesFromTheViewWhenItClears() {
        LiveState state = new LiveState();
        state.hear(live("147.0", "0.05"));
        state.hear(alert("wing-low", "standing"));
        assertThat(state.standing()).hasSize(1);
        state.hear(alert("wing-low", "standing"));
        assertThat(state.standing()).as("said again after a reconnection").hasSize(1);
        state.hear(alert("wing-low", "cleared"));
        assertThat(state.standing()).isEmpty();
    }

    @Test
    void heightsBetweenSensorsAreOnAStraightLineAndUnknownOnesAreLeftOut() {
        List<ReportedMoment.Height> sensors = List.of(
                new ReportedMoment.Height(-10, 0.2),
                new ReportedMoment.Height(0, null),
                new ReportedMoment.Height(10, 0.6));
        assertThat(BoomPicture.heightAt(sensors, 0.0)).isEqualTo(0.2);
        assertThat(BoomPicture.heightAt(sensors, 0.5)).isCloseTo(0.4, within(1e-9));
        assertThat(BoomPicture.heightAt(sensors, 1.0)).isEqualTo(0.6);
        assertThat(BoomPicture.heightAt(List.of(new ReportedMoment.Height(0, null)), 0.5))
                .isNull();
        assertThat(BoomPicture.heightAt(List.of(), 0.5)).isNull();
    }

    @Test
    void aTiltedBoomIsDrawnTilted() {
        List<String> lines = BoomPicture.lines(
                List.of(new ReportedMoment.Height(-10, 0.05), new ReportedMoment.Height(10, 1.0)),
                30,
                text -> text,
                text -> text,
                Paint.OFF);
        assertThat(lines).hasSize(4);
        assertThat(lines.get(2).charAt(0)).isNotEqualTo(' ');
        assertThat(lines.get(0).charAt(0)).isEqualTo(' ');
        assertThat(lines.get(0).charAt(29)).isNotEqualTo(' ');
        assertThat(lines.get(3)).isEqualTo("▀".repeat(30));
    }

    @Test
    void aCutLineKeepsItsColourClosed() {
        String cut = Paint.cut(Paint.ON.bad("wing-low") + " left", 4);
        assertThat(Paint.width(cut)).isEqualTo(4);
        assertThat(cut).endsWith("\u001b[0m");
    }
}
