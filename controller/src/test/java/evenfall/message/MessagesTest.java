package evenfall.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenfall.monitor.Live;
import evenfall.sense.Unknown;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Isolated;

/** Alone, since it sets the locale of the whole machine. */
@Isolated
class MessagesTest {
    private final Messages messages = new Messages(Examples.RIG);

    @Test
    void aLivePayloadSpeaksTradeUnitsWithFixedDecimals() {
        assertThat(text(live(Examples.known(12_400_000))))
                .startsWith("{\"at_s\":12.400,"
                        + "\"speed_mps\":{\"value\":5.502,\"sd\":0.0200,\"age_s\":0.08},"
                        + "\"flow_Lpm\":{\"value\":165.30,\"sd\":0.000,\"age_s\":0.02},"
                        + "\"pressure_kPa\":{\"value\":203.4,\"sd\":0.00,\"age_s\":0.02},"
                        + "\"width_m\":{\"value\":36.576,\"sd\":0.0000,\"age_s\":0.00},"
                        + "\"rate_Lpha\":{\"value\":148.2,\"sd\":0.00,\"age_s\":0.08},"
                        + "\"target_Lpha\":150.0,"
                        + "\"rate_error_pct\":{\"value\":-1.2,\"sd\":0.00,\"age_s\":0.08},"
                        + "\"heights\":[{\"sensor\":\"left-tip\",\"right_m\":-17.000,"
                        + "\"height_m\":{\"value\":0.481,\"sd\":0.0050,\"age_s\":0.04},"
                        + "\"rate_mps\":{\"value\":-0.12,\"sd\":0.050,\"age_s\":0.04}},")
                .contains("\"boom\":{\"height_m\":{\"value\":0.481,\"sd\":0.0050,\"age_s\":0.04},\"row_cv\":0.0612,"
                        + "\"least_row\":0.871,\"most_row\":1.130,\"below_80_share\":0.0000,"
                        + "\"above_120_share\":0.0125,\"widest_gap_m\":0.142,\"doubled_share\":0.0400}")
                .endsWith(
                        "\"window\":{\"low_m\":0.34,\"high_m\":0.67},\"standing\":[{\"kind\":\"wing-low\",\"place\":\"left\"}],"
                                + "\"wire\":{\"sentences\":1000,\"accepted\":990,\"ignored\":4,"
                                + "\"rejected\":{\"checksum\":3,\"malformed\":2,\"too_long\":1},\"dropped_B\":17}}");
    }

    @Test
    void whatIsNotKnownIsNullWithTheReasonAndTheAgeOfTheLastInput() {
        assertThat(text(live(Examples.unknown(Unknown.NO_FIX, 1_200_000))))
                .contains("\"speed_mps\":{\"value\":null,\"why\":\"the receiver has no fix\",\"age_s\":1.20}")
                .contains("\"row_cv\":null")
                .contains("\"doubled_share\":null,\"why\":\"the receiver has no fix\"}");
        assertThat(text(live(Examples.unknown(Unknown.NOT_YET, -1))))
                .as("no input ever came, so there is no age")
                .contains("\"speed_mps\":{\"value\":null,\"why\":\"nothing heard yet\",\"age_s\":null}");
    }

    @Test
    void anAlertTellsWhenWhyAndWhatToDo() {
        assertThat(text(messages.raised(Examples.WING_LOW)))
                .isEqualTo(
                        "{\"kind\":\"wing-low\",\"place\":\"left\",\"priority\":\"medium\",\"state\":\"standing\",\"at_s\":12.400,"
                                + "\"since_s\":11.200,\"raised_s\":12.400,\"cleared_s\":null,\"value\":0.112,\"limit\":0.150,"
                                + "\"unit\":\"m\",\"why\":\"Left wing 0.11 m over the ground, limit 0.15 m.\","
                                + "\"act\":\"Raise the left wing.\"}");
        assertThat(text(messages.cleared(Examples.WING_LOW, 15_000_000)))
                .contains("\"state\":\"cleared\",\"at_s\":15.000,")
                .contains("\"cleared_s\":15.000");
        assertThat(text(messages.raised(Examples.SILENT)))
                .contains("\"value\":null,\"limit\":1.00,\"unit\":\"s\",\"why\":\"Nothing ever came.\"");
    }

    @Test
    void aStatusEscapesWhatAFaultMayBring() {
        assertThat(text(messages.status(Examples.status(Status.State.RUNNING))))
                .contains("\"fault\":\"the core met \\\"something\\\"\\n\"")
                .contains("{\"port\":\"hub\",\"open\":true,\"heard_age_s\":0.02,\"dropped_B\":0}")
                .contains("{\"port\":\"gnss\",\"open\":false,\"why\":\"there is no /dev/ttyUSB1\",\"heard_age_s\":null,"
                        + "\"dropped_B\":512}");
    }

    @Test
    void theLanguageOfTheMachineChangesNothing() {
        byte[] before = live(Examples.known(12_400_000));
        Locale machine = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG"));
            assertThat(live(Examples.known(12_400_000))).isEqualTo(before);
        } finally {
            Locale.setDefault(machine);
        }
    }

    @Test
    void heightsThatDoNotMatchTheRigAreRefused() {
        var live = Examples.known(0);
        var fewer = new Live(
                0,
                live.speedMps(),
                live.flowM3ps(),
                live.pressurePa(),
                live.widthM(),
                live.rateM(),
                live.rateError(),
                List.of(),
                List.of(),
                live.boom(),
                live.segments(),
                live.window(),
                live.standing(),
                live.wire(),
                live.droppedBytes());
        assertThatThrownBy(() -> live(fewer)).hasMessageContaining("height sensors");
    }

    private byte[] live(Live live) {
        return JsonText.document(json -> messages.live(json, live));
    }

    private static String text(byte[] payload) {
        return new String(payload, StandardCharsets.UTF_8);
    }
}
