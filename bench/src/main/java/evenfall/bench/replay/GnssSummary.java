package evenfall.bench.replay;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What the receiver said.
 *
 * @param fixes accepted RMC sentences with status A
 * @param firstUtc time of the first of them that has date and time; null where none has
 * @param lastUtc time of the last
 * @param meanSpeedMps over the fixes that have a speed, m/s; null where none has
 * @param maxSpeedMps the highest, m/s; null where none has
 */
public record GnssSummary(
        long fixes,
        @Nullable Instant firstUtc,
        @Nullable Instant lastUtc,
        @Nullable Double meanSpeedMps,
        @Nullable Double maxSpeedMps) {

    /** Why something is not known; null where everything is. */
    public @Nullable String why() {
        if (fixes == 0) {
            return "no fix";
        }
        String time = firstUtc == null ? "no fix has a date and a time" : "";
        String speed = meanSpeedMps == null ? "no fix has a speed" : "";
        String both = time.isEmpty() || speed.isEmpty() ? time + speed : time + ", and " + speed;
        return both.isEmpty() ? null : both;
    }
}
