package evenfall.bench.replay;

import evenfall.trace.TraceEvent;
import evenfall.wire.Rmc;
import evenfall.wire.SentenceHandler;
import evenfall.wire.SentenceStream;
import java.time.Instant;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Listens along and sums up the receivers' fixes, whatever port they are on. */
final class GnssTally implements SentenceHandler {
    private final Map<String, SentenceStream> streams = new TreeMap<>();
    private long fixes;
    private @Nullable Instant firstUtc;
    private @Nullable Instant lastUtc;
    private long speeds;
    private double speedSumMps;
    private double maxSpeedMps;

    void hear(TraceEvent event) {
        if (event instanceof TraceEvent.Bytes chunk) {
            stream(chunk.port()).accept(chunk.bytes(), 0, chunk.bytes().length);
        } else if (event instanceof TraceEvent.PortLost lost) {
            stream(lost.port()).cut();
        } else if (event instanceof TraceEvent.Dropped dropped) {
            stream(dropped.port()).cut();
        }
    }

    private SentenceStream stream(String port) {
        return streams.computeIfAbsent(port, p -> new SentenceStream(this));
    }

    @Override
    public void onRmc(Rmc rmc) {
        if (!rmc.hasFix()) {
            return;
        }
        fixes++;
        if (rmc.hasUtc()) {
            lastUtc = Instant.ofEpochMilli(rmc.utcEpochMs());
            if (firstUtc == null) {
                firstUtc = lastUtc;
            }
        }
        if (rmc.hasSpeed()) {
            speeds++;
            speedSumMps += rmc.speedMps();
            maxSpeedMps = Math.max(maxSpeedMps, rmc.speedMps());
        }
    }

    GnssSummary summary() {
        boolean known = speeds > 0;
        return new GnssSummary(
                fixes, firstUtc, lastUtc, known ? speedSumMps / speeds : null, known ? maxSpeedMps : null);
    }
}
