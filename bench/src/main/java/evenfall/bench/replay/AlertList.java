package evenfall.bench.replay;

import evenfall.bench.received.ReportedAlert;
import evenfall.judge.Alert;
import evenfall.monitor.Live;
import evenfall.monitor.Outputs;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/** Writes down every alert from rise to end. */
final class AlertList implements Outputs {
    private static final double US_PER_S = 1e6;

    private final List<ReportedAlert> alerts = new ArrayList<>();
    private final Map<Alert, Integer> places = new LinkedHashMap<>();
    private final Consumer<ReportedAlert> listener;

    /**
     * @param listener hears of each alert when it rises and, with its end filled in, when it clears
     */
    AlertList(Consumer<ReportedAlert> listener) {
        this.listener = listener;
    }

    @Override
    public void live(Live live) {
        // The digest holds what it said; nobody reads it here.
    }

    @Override
    public void raised(Alert alert) {
        ReportedAlert one = new ReportedAlert(
                alert.kind().word(),
                alert.place(),
                alert.sinceUs() / US_PER_S,
                alert.raisedUs() / US_PER_S,
                null,
                alert.value(),
                alert.limit(),
                alert.unit(),
                alert.why(),
                alert.act());
        places.put(alert, alerts.size());
        alerts.add(one);
        listener.accept(one);
    }

    @Override
    public void cleared(Alert alert, long clearedUs) {
        Integer place = places.remove(alert);
        if (place != null) {
            ReportedAlert one = alerts.get(place).cleared(clearedUs / US_PER_S);
            alerts.set(place, one);
            listener.accept(one);
        }
    }

    List<ReportedAlert> alerts() {
        return List.copyOf(alerts);
    }
}
