package evenfall.sim.sensor;

import evenfall.sim.chance.Chance;
import evenfall.sim.wire.HubSentences;

/**
 * An ultrasonic sensor that looks straight down and gives the time of its echo.
 *
 * <p>{@code t = 2 d / c}, {@code c = 331.3 √(1 + T/273.15)} m/s at the true temperature of the air under it (speed of sound in dry
 * air as an ideal gas; the form is in general use). The face is at the height of the outlets there plus its mounting.
 */
public final class EchoSensor implements HeightSensor {
    /**
     * What such a sensor gets wrong. Values of {@link #usual} are choices of ours.
     *
     * @param noiseM standard deviation of one reading, m
     * @param nearestM nearer than this it hears nothing, m
     * @param farthestM beyond this it hears nothing, m
     * @param averaging weight of the newest echo in what it gives, above 0 to 1
     * @param spikeChance chance that a reading is some other place in its range
     * @param doubleChance chance that a reading is the second echo: ground, boom, ground, face, twice the time
     * @param warmerC how much warmer the air under it is than where the temperature is measured, °C: over dark soil in the sun
     */
    public record Spec(
            double noiseM,
            double nearestM,
            double farthestM,
            double averaging,
            double spikeChance,
            double doubleChance,
            double warmerC) {
        /** One without second echoes, in air that is as warm as it is measured. */
        public Spec(double noiseM, double nearestM, double farthestM, double averaging, double spikeChance) {
            this(noiseM, nearestM, farthestM, averaging, spikeChance, 0, 0);
        }

        /** An ordinary one: 4 mm of noise, hears from 0.10 to 3 m, no spikes. Invented. */
        public static Spec usual() {
            return new Spec(0.004, 0.10, 3.0, 0.6, 0);
        }
    }

    private final Spec spec;
    private final double aboveOutletM;
    private final Chance chance;
    private double averageM;
    private boolean heard;

    /**
     * @param aboveOutletM how far its face really is above the outlets, m
     */
    public EchoSensor(Spec spec, double aboveOutletM, Chance chance) {
        this.spec = spec;
        this.aboveOutletM = aboveOutletM;
        this.chance = chance;
    }

    @Override
    public long echoUs(double heightM, double airC) {
        double noiseM = spec.noiseM() * chance.nextGaussian();
        double luck = chance.nextDouble();
        double elsewhere = chance.nextDouble();
        double distanceM = heightM + aboveOutletM;
        if (!(distanceM >= spec.nearestM() && distanceM <= spec.farthestM())) {
            heard = false;
            return HubSentences.UNKNOWN;
        }
        averageM = heard ? averageM + spec.averaging() * (distanceM - averageM) : distanceM;
        heard = true;
        double saysM = averageM + noiseM;
        if (luck < spec.spikeChance()) {
            saysM = spec.nearestM() + elsewhere * (spec.farthestM() - spec.nearestM());
        } else if (luck < spec.spikeChance() + spec.doubleChance()) {
            saysM *= 2;
        }
        return Math.round(2e6 * saysM / soundMps(airC + spec.warmerC()));
    }

    @Override
    public double echoUsOf(double distanceM, double airC) {
        return 2e6 * distanceM / soundMps(airC + spec.warmerC());
    }

    /** Speed of sound in air, m/s. */
    static double soundMps(double airC) {
        return 331.3 * Math.sqrt(1 + airC / 273.15);
    }
}
