package evenfall.judge;

import evenfall.sense.Quantity;
import evenfall.sense.Unknown;
import java.util.ArrayList;
import java.util.List;

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
        if (reason == Unknown.CROSSED) {
            return isFirstCrossed(now) ? Verdict.OVER : Verdict.UNKNOWN;
        }
        return reason == null ? Verdict.WELL : reason.isDoubt() ? Verdict.OVER : Verdict.UNKNOWN;
    }

    /** One cause, one alert: of the sensors that may be changed over the leftmost speaks for all. */
    private boolean isFirstCrossed(Situation now) {
        for (int i = 0; i < sensor; i++) {
            if (now.sensors().get(i).reading().unknown() == Unknown.CROSSED) {
                return false;
            }
        }
        return true;
    }

    @Override
    public Finding finding(Situation now) {
        Quantity reading = now.sensors().get(sensor).reading();
        if (reading.unknown() == Unknown.CROSSED) {
            return crossed(now);
        }
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

    private static Finding crossed(Situation now) {
        List<String> names = new ArrayList<>();
        for (Situation.SensorState any : now.sensors()) {
            if (any.reading().unknown() == Unknown.CROSSED) {
                names.add(any.name());
            }
        }
        String listed = String.join(", ", names);
        return new Finding(
                null,
                null,
                "1",
                "One side of the boom rises where the other is shown to: among " + listed
                        + " a left and a right sensor are changed over.",
                "Lift one tip by hand at a stand and see which height changes; until they are put right none of these is used.");
    }
}
