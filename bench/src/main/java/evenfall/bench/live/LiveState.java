package evenfall.bench.live;

import evenfall.bench.received.Message;
import evenfall.bench.received.Report;
import evenfall.bench.received.ReportedAlert;
import evenfall.bench.received.ReportedMoment;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The newest of what the monitor said. One thread tells, another looks. */
public final class LiveState {
    /** Two alerts are read at a glance, a dozen are not; more than this never stand on one rig. */
    private static final int MOST_ALERTS = 64;

    private @Nullable ReportedMoment now;
    private final List<ReportedAlert> standing = new ArrayList<>();

    /** Takes a message; what cannot be read changes nothing here, for scoring will complain of it. */
    public synchronized void hear(Message message) {
        Report one;
        try {
            one = Report.onOneClock(List.of(message));
        } catch (IOException e) {
            return;
        }
        if (!one.moments().isEmpty()) {
            now = one.moments().get(0);
        }
        for (ReportedAlert alert : one.alerts()) {
            standing.removeIf(a -> a.kind().equals(alert.kind()) && a.place().equals(alert.place()));
            if (message.payload().contains("\"state\":\"standing\"") && standing.size() < MOST_ALERTS) {
                standing.add(alert);
            }
        }
    }

    /** The newest live message; null before the first. */
    public synchronized @Nullable ReportedMoment now() {
        return now;
    }

    /** Alerts that stand, oldest first. */
    public synchronized List<ReportedAlert> standing() {
        return List.copyOf(standing);
    }
}
