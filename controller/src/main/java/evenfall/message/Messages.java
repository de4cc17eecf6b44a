package evenfall.message;

import evenfall.judge.Alert;
import evenfall.monitor.Live;
import evenfall.pattern.HeightWindow;
import evenfall.pattern.LineMeasures;
import evenfall.pattern.RowMeasures;
import evenfall.quantity.TradeUnits;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import evenfall.sense.Unknown;
import evenfall.wire.WireCounts;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The payloads, each with a JSON Schema in the controller's {@code docs}. */
public final class Messages {
    private static final double PERCENT = 0.01;

    private final Rig rig;

    /**
     * @param rig whose name, target and sensors stand in the messages
     */
    public Messages(Rig rig) {
        this.rig = rig;
    }

    /** {@code live.schema.json}. */
    void live(JsonText json, Live live) {
        List<Rig.Height> sensors = rig.sensors().heights();
        if (live.sensorHeightM().size() != sensors.size()
                || live.sensorRateMps().size() != sensors.size()) {
            throw new IllegalArgumentException("as many heights as the rig has height sensors");
        }
        json.seconds("at_s", live.timeUs());
        json.quantity("speed_mps", live.speedMps(), 1, 3);
        json.quantity("flow_Lpm", live.flowM3ps(), TradeUnits.LPM_M3PS, 2);
        json.quantity("pressure_kPa", live.pressurePa(), TradeUnits.KPA_PA, 1);
        json.quantity("width_m", live.widthM(), 1, 3);
        json.quantity("rate_Lpha", live.rateM(), TradeUnits.LPHA_M, 1);
        json.number("target_Lpha", rig.target().rateM() / TradeUnits.LPHA_M, 1);
        json.quantity("rate_error_pct", live.rateError(), PERCENT, 1);
        json.beginList("heights");
        for (int i = 0; i < sensors.size(); i++) {
            json.beginEntry();
            json.text("sensor", sensors.get(i).name());
            json.number("right_m", sensors.get(i).rightM(), 3);
            json.quantity("height_m", live.sensorHeightM().get(i), 1, 3);
            json.quantity("rate_mps", live.sensorRateMps().get(i), 1, 2);
            json.endObject();
        }
        json.endList();
        json.beginObject("boom");
        measures(json, live.boom());
        json.endObject();
        json.beginList("segments");
        for (Live.Segment segment : live.segments()) {
            json.beginEntry();
            json.text("name", segment.name());
            measures(json, segment);
            json.endObject();
        }
        json.endList();
        window(json, live.window());
        json.beginList("standing");
        for (Alert alert : live.standing()) {
            json.beginEntry();
            json.text("kind", alert.kind().word());
            json.text("place", alert.place());
            json.endObject();
        }
        json.endList();
        counts(json, live.wire(), live.droppedBytes());
    }

    private static void measures(JsonText json, Live.Segment segment) {
        json.quantity("height_m", segment.heightM(), 1, 3);
        RowMeasures rows = segment.rows();
        if (rows == null) {
            json.unknown("row_cv", "least_row", "most_row", "below_80_share", "above_120_share");
        } else {
            json.number("row_cv", rows.rowCv(), 4);
            json.number("least_row", rows.leastRow(), 3);
            json.number("most_row", rows.mostRow(), 3);
            json.number("below_80_share", rows.below80Share(), 4);
            json.number("above_120_share", rows.above120Share(), 4);
        }
        LineMeasures lines = segment.lines();
        if (lines == null) {
            json.unknown("widest_gap_m", "doubled_share");
        } else {
            json.number("widest_gap_m", lines.widestGapM(), 3);
            json.number("doubled_share", lines.doubledShare(), 4);
        }
        if (rows == null || lines == null) {
            Unknown why = segment.unknown();
            json.text("why", why == null ? "no reason was given" : why.words());
        }
    }

    private static void window(JsonText json, @Nullable HeightWindow window) {
        json.beginObject("window");
        if (window == null) {
            json.unknown("low_m", "high_m");
            json.text("why", "no height keeps the limit, or neither pressure nor flow is known");
        } else {
            json.number("low_m", window.lowM(), 2);
            json.number("high_m", window.highM(), 2);
        }
        json.endObject();
    }

    private static void counts(JsonText json, WireCounts wire, long droppedBytes) {
        json.beginObject("wire");
        json.count("sentences", wire.sentences());
        json.count("accepted", wire.accepted());
        json.count("ignored", wire.ignored());
        json.beginObject("rejected");
        json.count("checksum", wire.rejectedChecksum());
        json.count("malformed", wire.rejectedMalformed());
        json.count("too_long", wire.rejectedTooLong());
        json.endObject();
        json.count("dropped_B", droppedBytes);
        json.endObject();
    }

    /** {@code alert.schema.json}, state {@code standing}: what an alert topic retains while the alert stands. */
    public byte[] raised(Alert alert) {
        return alert(alert, "standing", alert.raisedUs(), null);
    }

    /** {@code alert.schema.json}, state {@code cleared}: said once, not retained. */
    public byte[] cleared(Alert alert, long clearedUs) {
        return alert(alert, "cleared", clearedUs, clearedUs);
    }

    /** {@code alert.schema.json}, state {@code ended}: nobody watches any longer whether it still stands. */
    public byte[] ended(Alert alert, long atUs) {
        return alert(alert, "ended", atUs, null);
    }

    /**
     * {@code acknowledged.schema.json}: somebody has seen an alert.
     *
     * @param atUs event time, µs
     */
    public byte[] acknowledged(String kind, String place, long atUs) {
        return JsonText.document(json -> {
            json.text("kind", kind);
            json.text("place", place);
            json.seconds("at_s", atUs);
        });
    }

    /** What a page has to know of the machine to draw it; from the rig file. */
    public byte[] machine() {
        return JsonText.document(json -> {
            json.text("rig", rig.name());
            json.text("units", rig.units() == Units.US ? "us" : "metric");
            json.text("outlet", rig.outlet().id());
            json.number("half_width_m", 0.5 * rig.boom().widthM(), 3);
            json.number("hinge_m", rig.boom().hingeM(), 3);
            json.number("target_Lpha", rig.target().rateM() / TradeUnits.LPHA_M, 1);
            json.number("target_height_m", rig.target().heightM(), 3);
            json.number("rate_error_pct_limit", 100 * rig.limits().rateError(), 1);
            json.number("row_cv_limit", rig.limits().rowCv(), 4);
            json.number("clearance_m", rig.limits().clearanceM(), 3);
            json.number("ceiling_m", rig.limits().ceilingM(), 3);
        });
    }

    private static byte[] alert(Alert alert, String state, long atUs, @Nullable Long clearedUs) {
        int decimals = decimals(alert.unit());
        return JsonText.document(json -> {
            json.text("kind", alert.kind().word());
            json.text("place", alert.place());
            json.text("priority", alert.kind().priority().word());
            json.text("state", state);
            json.seconds("at_s", atUs);
            json.seconds("since_s", alert.sinceUs());
            json.seconds("raised_s", alert.raisedUs());
            if (clearedUs == null) {
                json.unknown("cleared_s");
            } else {
                json.seconds("cleared_s", clearedUs);
            }
            numberOrNull(json, "value", alert.value(), decimals);
            numberOrNull(json, "limit", alert.limit(), decimals);
            json.text("unit", alert.unit());
            json.text("why", alert.why());
            json.text("act", alert.act());
        });
    }

    private static void numberOrNull(JsonText json, String key, @Nullable Double value, int decimals) {
        json.number(key, value != null, value != null ? value : 0, decimals);
    }

    private static int decimals(String unit) {
        return switch (unit) {
            case "%" -> 1;
            case "s" -> 2;
            default -> 3;
        };
    }

    /** {@code status.schema.json}, state {@code running} or {@code stopped}. */
    public byte[] status(Status status) {
        return JsonText.document(json -> {
            json.text("rig", rig.name());
            json.text("state", status.state().word());
            json.seconds("at_s", status.atUs());
            json.text("version", status.version());
            json.beginList("ports");
            for (Status.Port port : status.ports()) {
                json.beginEntry();
                json.text("port", port.port());
                json.flag("open", port.open());
                if (!port.open()) {
                    json.text("why", port.why());
                }
                json.age("heard_age_s", port.heardAgeUs());
                json.count("dropped_B", port.droppedBytes());
                json.endObject();
            }
            json.endList();
            json.text("trace", status.trace().word());
            json.count("core_restarts", status.restarts());
            json.text("fault", status.fault());
            json.count("messages_dropped", status.messagesDropped());
        });
    }

    /**
     * {@code status.schema.json}, state {@code gone}: the last will, which the broker publishes when the box no longer answers.
     *
     * @param connectedUs event time of the connection that it belongs to, µs
     */
    public byte[] gone(long connectedUs) {
        return JsonText.document(json -> {
            json.text("rig", rig.name());
            json.text("state", "gone");
            json.unknown("at_s");
            json.text("why", "the broker lost the box, which could not say when");
            json.seconds("connected_s", connectedUs);
        });
    }
}
