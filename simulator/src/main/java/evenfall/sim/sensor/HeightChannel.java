package evenfall.sim.sensor;

import evenfall.sim.chance.Chance;
import evenfall.sim.wire.HubSentences;
import org.jspecify.annotations.Nullable;

/**
 * A height sensor on its bracket and its cable to the hub, with all that can go wrong there. The sensor itself goes on as if nothing
 * were, so that its own random stream does not notice.
 */
final class HeightChannel {
    /** Foam or dirt on the face echoes from here, m; a choice of ours: just beyond what a sensor is blind to. */
    private static final double FOAM_M = 0.11;

    /** A field of the sentence has six digits. */
    private static final long LONGEST_US = 999_999;

    private final double rightM;
    private final HeightSensor sensor;
    private double asideM;
    private double raisedM;
    private double canopyM;
    private boolean foam;
    private boolean deaf;
    private boolean stuck;
    private double shakeM;
    private double doubleShare;
    private @Nullable Chance shakeChance;
    private @Nullable Chance doubleChance;
    private long lastUs = HubSentences.UNKNOWN;

    HeightChannel(double rightM, HeightSensor sensor) {
        this.rightM = rightM;
        this.sensor = sensor;
    }

    void move(double asideM) {
        this.asideM = asideM;
    }

    void raise(double raisedM) {
        this.raisedM = raisedM;
    }

    void canopy(double canopyM) {
        this.canopyM = canopyM;
    }

    void foam(boolean on) {
        foam = on;
    }

    void deafen(boolean on) {
        deaf = on;
    }

    void stick(boolean on) {
        stuck = on;
    }

    void shake(double shakeM, Chance chance) {
        this.shakeM = shakeM;
        shakeChance = chance;
    }

    void doubleEcho(double share, Chance chance) {
        doubleShare = share;
        doubleChance = chance;
    }

    long echoUs(Scene scene) {
        double airC = scene.airC();
        double heightM = scene.heightAtM(rightM + asideM) + raisedM - canopyM;
        long echoUs = sensor.echoUs(heightM, airC);
        if (stuck) {
            return lastUs;
        }
        if (doubleShare > 0 && doubleChance != null) {
            boolean twice = doubleChance.nextDouble() < doubleShare;
            echoUs = twice && echoUs != HubSentences.UNKNOWN ? 2 * echoUs : echoUs;
        }
        if (shakeM > 0 && shakeChance != null) {
            double shakenM = shakeM * shakeChance.nextGaussian();
            echoUs = echoUs == HubSentences.UNKNOWN
                    ? echoUs
                    : Math.max(0, echoUs + Math.round(sensor.echoUsOf(shakenM, airC)));
        }
        if (foam) {
            echoUs = Math.round(sensor.echoUsOf(FOAM_M, airC));
        }
        if (deaf || echoUs > LONGEST_US) {
            echoUs = HubSentences.UNKNOWN;
        }
        lastUs = echoUs;
        return echoUs;
    }
}
