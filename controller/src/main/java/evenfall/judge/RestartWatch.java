package evenfall.judge;

import static evenfall.quantity.FixedDecimals.text;

/** A hub that has started anew: for a moment nothing was measured, and what it counted is gone. */
final class RestartWatch implements Watch {
    /** So long it is said. Our choice: long enough to be read, short enough not to stand beside what follows. */
    private static final long SAID_US = 5_000_000;

    private final int port;
    private final String name;

    RestartWatch(int port, String name) {
        this.port = port;
        this.name = name;
    }

    @Override
    public Verdict verdict(Situation now) {
        long sinceUs = now.ports().get(port).sinceRestartUs();
        return sinceUs >= 0 && sinceUs < SAID_US ? Verdict.OVER : Verdict.WELL;
    }

    @Override
    public Finding finding(Situation now) {
        double sinceS = now.ports().get(port).sinceRestartUs() / 1e6;
        return new Finding(
                sinceS,
                null,
                "s",
                "The sensor hub on port " + name + " started anew " + text(sinceS, 1)
                        + " s ago; until then it measured nothing.",
                "If it happens again, look at its power: the plug, the ground, the battery when the starter turns.");
    }
}
