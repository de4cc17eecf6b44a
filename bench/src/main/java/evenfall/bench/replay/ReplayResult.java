package evenfall.bench.replay;

import evenfall.bench.received.ReportedAlert;
import evenfall.trace.TraceEnd;
import evenfall.wire.WireCounts;
import java.util.List;

/**
 * What a recording led to.
 *
 * @param file its name
 * @param raw whether it is a receiver's raw log rather than a trace
 * @param lengthS how long it lasted, s
 * @param wire what the decoders counted, all ports together
 * @param gnss what the receiver said
 * @param alerts in the order in which they rose
 * @param messages how many messages the core published
 * @param digest SHA-256 of all of them
 * @param end how the recording ended
 */
public record ReplayResult(
        String file,
        boolean raw,
        double lengthS,
        WireCounts wire,
        GnssSummary gnss,
        List<ReportedAlert> alerts,
        long messages,
        String digest,
        TraceEnd end) {

    public ReplayResult {
        alerts = List.copyOf(alerts);
    }
}
