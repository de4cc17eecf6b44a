package evenfall.bench.replay;

import evenfall.bench.received.ReportedAlert;
import evenfall.bench.report.Counted;
import evenfall.bench.report.Paint;
import evenfall.bench.report.TextTable;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.Units;
import evenfall.wire.WireCounts;
import java.util.ArrayList;
import java.util.List;

/** The answer of {@code replay} for people. */
public final class ReplayText {
    private final Units units;
    private final Paint paint;

    public ReplayText(Units units, Paint paint) {
        this.units = units;
        this.paint = paint;
    }

    public List<String> lines(ReplayResult result) {
        List<String> lines = new ArrayList<>();
        String kind = result.raw() ? "a receiver's raw log" : "a trace";
        lines.add(paint.strong(result.file()) + ": " + kind + " of " + FixedDecimals.text(result.lengthS(), 1) + " s");
        lines.add("");
        lines.addAll(wire(result.wire()));
        lines.add("");
        lines.add("  " + receiver(result.gnss()));
        lines.add("");
        lines.addAll(alerts(result.alerts()));
        lines.add("  " + Counted.text(result.messages(), "message") + ", SHA-256 " + result.digest());
        return lines;
    }

    private List<String> wire(WireCounts wire) {
        TextTable table = new TextTable(paint, 1, "sentences", "count", "");
        table.row("accepted", Long.toString(wire.accepted()), "");
        table.row("ignored", Long.toString(wire.ignored()), "sound, but of a kind that is not used");
        reject(table, "rejected: checksum", wire.rejectedChecksum(), "what came is not what was sent");
        reject(
                table,
                "rejected: malformed",
                wire.rejectedMalformed(),
                "torn, without checksum, or with impossible fields");
        reject(table, "rejected: too long", wire.rejectedTooLong(), "longer than a sentence may be");
        table.row("all", Long.toString(wire.sentences()), "");
        if (wire.otherLines() > 0) {
            table.row("other lines", Long.toString(wire.otherLines()), "do not start with $");
        }
        return table.lines();
    }

    private void reject(TextTable table, String name, long count, String why) {
        String number = Long.toString(count);
        table.row(name, count > 0 ? paint.high(number) : number, count > 0 ? why : "");
    }

    private String receiver(GnssSummary gnss) {
        if (gnss.fixes() == 0) {
            return "receiver: no fix";
        }
        String text = "receiver: " + Counted.text(gnss.fixes(), "fix");
        if (gnss.firstUtc() != null) {
            text += " from " + gnss.firstUtc() + " to " + gnss.lastUtc();
        }
        Double mean = gnss.meanSpeedMps();
        Double highest = gnss.maxSpeedMps();
        if (mean != null && highest != null) {
            text += ", mean speed " + units.speed(mean) + ", highest " + units.speed(highest);
        }
        return text;
    }

    private List<String> alerts(List<ReportedAlert> alerts) {
        List<String> lines = new ArrayList<>();
        if (alerts.isEmpty()) {
            lines.add("  " + paint.good("no alerts"));
        }
        for (ReportedAlert alert : alerts) {
            lines.add(line(alert));
            lines.add("    " + alert.why() + " → " + alert.act());
        }
        lines.add("");
        return lines;
    }

    /** One alert in one line, for the list and for telling it as it happens. */
    public String line(ReportedAlert alert) {
        Double clearedS = alert.clearedS();
        String end = clearedS == null ? "still stands" : "cleared at " + FixedDecimals.text(clearedS, 1) + " s";
        return "  " + paint.bad(alert.kind() + " " + alert.place()) + " raised at "
                + FixedDecimals.text(alert.raisedS(), 1) + " s, " + end;
    }
}
