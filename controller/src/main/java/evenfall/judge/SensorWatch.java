package evenfall.judge;

import static evenfall.quantity.FixedDecimals.text;

import evenfall.sense.Quantity;
import evenfall.sense.Unknown;

/** A sensor that gives nothing although its port speaks. */
final class SensorWatch implements Watch {
    private final int sensor;
    private final String name;
    private final int port;
    private final double allowedS;

    SensorWatch(int sensor, String name, int port, double allowedS) {
        this.sensor = sensor;
        this.name = name;
        this.port = port;
        this.allowedS = allowedS;
    }

    @Override
    public Verdict verdict(Situation now) {
        if (now.ports().get(port).isSilent()) {
            return Verdict.UNKNOWN;
        }
        Quantity reading = now.sensors().get(sensor).reading();
        Unknown reason = reading.unknown();
        // A sensor that speaks but is not believed has an alert of its own.
        if (reason == null || reason.isDoubt()) {
            return Verdict.WELL;
        }
        // Counting anew after a restart of the hub is not silence; its own alert will say so.
        return reason == Unknown.HUB_RESTARTED || reason == Unknown.TOO_FEW_PULSES ? Verdict.BETWEEN : Verdict.OVER;
    }

    @Override
    public Finding finding(Situation now) {
        Quantity reading = now.sensors().get(sensor).reading();
        Unknown reason = reading.unknown();
        String why = "The " + name + " sensor gives no value: " + (reason == null ? "" : reason.words()) + ".";
        Double silentS = reading.ageUs() < 0 ? null : reading.ageUs() / 1e6;
        String shown = silentS == null ? "" : " (" + text(silentS, 1) + " s)";
        return new Finding(
                silentS,
                allowedS,
                "s",
                why,
                "Wipe the " + name + " sensor, look at its cable" + shown + "; what rests on it is not known.");
    }
}
