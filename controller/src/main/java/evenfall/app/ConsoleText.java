package evenfall.app;

import evenfall.judge.Alert;
import evenfall.monitor.Live;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.TradeUnits;
import evenfall.sense.Quantity;
import evenfall.sense.Unknown;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Words for a person who has one second to look. */
final class ConsoleText {
    private static final double US_PER_S = 1e6;
    private static final int TIME_WIDTH = 7;

    private ConsoleText() {}

    /**
     * The state of things in one line.
     *
     * @param whyNoBroker null while the broker is there
     */
    static String state(Live live, @Nullable String whyNoBroker) {
        StringBuilder line = new StringBuilder(time(live.timeUs()));
        part(line, "speed", live.speedMps(), 1, 1, " m/s");
        part(line, "rate", live.rateM(), TradeUnits.LPHA_M, 0, " L/ha");
        if (live.rateError().isKnown()) {
            double percent = 100 * live.rateError().get();
            line.append(" (").append(percent >= 0.5 ? "+" : "");
            FixedDecimals.append(line, percent, 0);
            line.append(" %)");
        }
        line.append("  rows ");
        if (live.boom().rows() == null) {
            line.append('?');
        } else {
            FixedDecimals.append(line, 100 * live.boom().rows().rowCv(), 0);
            line.append(" %");
        }
        line.append("  heights");
        for (Quantity height : live.sensorHeightM()) {
            line.append(' ').append(height.isKnown() ? FixedDecimals.text(height.get(), 2) : "?");
        }
        line.append("  broker ").append(whyNoBroker == null ? "up" : "down");
        List<String> remarks = remarks(live, whyNoBroker);
        if (!remarks.isEmpty()) {
            line.append("  | ").append(String.join("; ", remarks));
        }
        return line.toString();
    }

    private static void part(
            StringBuilder line, String name, Quantity quantity, double perUnit, int decimals, String unit) {
        line.append("  ");
        if (quantity.isKnown()) {
            FixedDecimals.append(line, quantity.get() / perUnit, decimals);
            line.append(unit);
        } else {
            line.append(name).append(" ?");
        }
    }

    private static List<String> remarks(Live live, @Nullable String whyNoBroker) {
        List<String> remarks = new ArrayList<>();
        for (Alert alert : live.standing()) {
            remarks.add(name(alert));
        }
        unknown(remarks, "speed", live.speedMps().unknown());
        unknown(remarks, "rate", live.rateM().unknown());
        if (live.boom().rows() == null) {
            unknown(remarks, "rows", live.boom().unknown());
        }
        if (whyNoBroker != null) {
            remarks.add("broker: " + whyNoBroker);
        }
        return remarks;
    }

    private static void unknown(List<String> remarks, String name, @Nullable Unknown reason) {
        if (reason != null) {
            remarks.add(name + ": " + reason.words());
        }
    }

    static String raised(Alert alert) {
        return time(alert.raisedUs()) + "  ALERT " + name(alert) + ": " + alert.why() + " " + alert.act();
    }

    static String acknowledged(Alert alert, long atUs) {
        return time(atUs) + "  seen  " + name(alert);
    }

    static String cleared(Alert alert, long clearedUs) {
        return time(clearedUs) + "  clear " + name(alert) + ", after "
                + FixedDecimals.text((clearedUs - alert.raisedUs()) / US_PER_S, 1) + " s";
    }

    /** Something about the box itself. */
    static String note(long timeUs, String text) {
        return time(timeUs) + "  " + text;
    }

    private static String name(Alert alert) {
        return alert.kind().word() + " " + alert.place();
    }

    private static String time(long timeUs) {
        String seconds = FixedDecimals.text(timeUs / US_PER_S, 1);
        return " ".repeat(Math.max(0, TIME_WIDTH - seconds.length())) + seconds + " s";
    }
}
