package evenfall.judge;

import static evenfall.quantity.FixedDecimals.text;

/** A port from which nothing good comes any more. */
final class SilenceWatch implements Watch {
    private final int port;
    private final String name;

    SilenceWatch(int port, String name) {
        this.port = port;
        this.name = name;
    }

    @Override
    public Verdict verdict(Situation now) {
        return now.ports().get(port).isSilent() ? Verdict.OVER : Verdict.WELL;
    }

    @Override
    public Finding finding(Situation now) {
        Situation.PortState state = now.ports().get(port);
        double silentS = state.silentUs() / 1e6;
        String why = state.unplugged()
                ? "The device of port " + name + " is not there."
                : "Nothing readable has come from port " + name + " for " + text(silentS, 1) + " s.";
        return new Finding(
                silentS,
                state.allowedUs() / 1e6,
                "s",
                why,
                "Look at the plug, the cable and the power of port " + name
                        + "; what it measures is not known until it speaks.");
    }
}
