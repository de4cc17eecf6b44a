package evenfall.judge;

import evenfall.sense.Quantity;
import evenfall.sense.Unknown;

/** A sensor that speaks but is not believed. */
final class DoubtWatch implements Watch {
    private final int sensor;
    private final String name;
    private final int port;

    DoubtWatch(int sensor, String name, int port) {
        this.sensor = sensor;
        this.name = name;
        this.port = port;
    }

    @Override
    public Verdict verdict(Situation now) {
        if (now.ports().get(port).isSilent()) {
            return Verdict.UNKNOWN;
        }
        Unknown reason = now.sensors().get(sensor).reading().unknown();
        return reason == null ? Verdict.WELL : reason.isDoubt() ? Verdict.OVER : Verdict.UNKNOWN;
    }

    @Override
    public Finding finding(Situation now) {
        Quantity reading = now.sensors().get(sensor).reading();
        boolean stuck = reading.unknown() == Unknown.STUCK;
        String why = stuck
                ? "The " + name + " sensor gives the same reading again and again while the others' change."
                : "The " + name + " sensor's readings jump about far more than the others'.";
        String act = stuck
                ? "Wipe the " + name + " sensor and look for foam or dirt; until it moves it is not used."
                : "Look at the " + name
                        + " sensor's bracket and at what else is under it; until it calms down it is not used.";
        return new Finding(null, null, "1", why, act);
    }
}
