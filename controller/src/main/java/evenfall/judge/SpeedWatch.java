package evenfall.judge;

import static evenfall.quantity.FixedDecimals.text;

import evenfall.sense.Unknown;

/** Ground speed lost while the receiver still speaks. */
final class SpeedWatch implements Watch {
    private final int port;
    private final String name;

    SpeedWatch(int port, String name) {
        this.port = port;
        this.name = name;
    }

    @Override
    public Verdict verdict(Situation now) {
        if (now.ports().get(port).isSilent()) {
            return Verdict.UNKNOWN;
        }
        if (now.speedMps().isKnown()) {
            return Verdict.WELL;
        }
        // Before the receiver's first word it is not speed that was lost; if no word comes, the port is silent.
        return now.ports().get(port).hasSpoken() ? Verdict.OVER : Verdict.BETWEEN;
    }

    @Override
    public Finding finding(Situation now) {
        Unknown reason = now.speedMps().unknown();
        return new Finding(
                null,
                null,
                "s",
                "Ground speed is not known: " + (reason == null ? "" : reason.words()) + " (port " + name + ", heard "
                        + text(Math.max(0, now.speedMps().ageUs()) / 1e6, 1) + " s ago).",
                "Hold an even speed and pressure, and get the receiver into the open; rate is not known until it has a fix.");
    }
}
