package evenfall.monitor;

import evenfall.judge.Alert;
import evenfall.wire.Acknowledgement;
import evenfall.wire.SentenceHandler;
import evenfall.wire.SentenceStream;
import evenfall.wire.WireCounts;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;

/** Which of the alerts that stand somebody has seen. Each is told of once; a new alert at the same place is new. */
final class Acknowledgements implements SentenceHandler {
    private final SentenceStream stream = new SentenceStream(this);
    private final Supplier<List<Alert>> standing;
    private final Consumer<Alert> listener;
    private final List<Alert> seen = new ArrayList<>();

    /**
     * @param standing the alerts that stand now
     * @param listener is told of each that is acknowledged for the first time
     */
    Acknowledgements(Supplier<List<Alert>> standing, Consumer<Alert> listener) {
        this.standing = standing;
        this.listener = listener;
    }

    void bytes(byte[] bytes) {
        stream.accept(bytes, 0, bytes.length);
    }

    /** Bytes are missing: what stands half read must not be joined to what comes. */
    void cut() {
        stream.cut();
    }

    WireCounts counts() {
        return stream.counts();
    }

    @Override
    public void onAcknowledgement(Acknowledgement acknowledgement) {
        for (Alert alert : standing.get()) {
            boolean meant = alert.kind().word().equals(acknowledgement.kind())
                    && alert.place().equals(acknowledgement.place());
            if (meant && !seen.contains(alert)) {
                seen.add(alert);
                listener.accept(alert);
            }
        }
    }

    void cleared(Alert alert) {
        seen.remove(alert);
    }
}
