package evenfall.sim.sensor;

import evenfall.sim.chance.Chance;
import evenfall.sim.wire.HubSentences;

/**
 * A radar that looks straight down and gives its distance as the echo time of sound at 20 °C, so that it can stand in for an
 * ultrasonic sensor. It is right at any temperature; whoever corrects its times by the air's temperature makes them wrong.
 *
 * <p>It sees through a thin canopy to a part: the more canopy, the higher the ground seems.
 */
public final class RadarSensor implements HeightSensor {
    private static final double NOMINAL_C = 20;

    /**
     * What such a sensor gets wrong. Values of {@link #usual} are choices of ours.
     *
     * @param noiseM standard deviation of one reading, m
     * @param offsetM how much too far it reads, m
     * @param nearestM nearer than this it sees nothing, m
     * @param farthestM beyond this it sees nothing, m
     * @param averaging weight of the newest reading in what it gives, above 0 to 1
     */
    public record Spec(double noiseM, double offsetM, double nearestM, double farthestM, double averaging) {
        /** 8 mm of noise, sees from 0.10 to 5 m. Invented. */
        public static Spec usual() {
            return new Spec(0.008, 0, 0.10, 5.0, 0.4);
        }
    }

    private final Spec spec;
    private final double aboveOutletM;
    private final Chance chance;
    private double averageM;
    private boolean seen;

    /**
     * @param aboveOutletM how far its face really is above the outlets, m
     */
    public RadarSensor(Spec spec, double aboveOutletM, Chance chance) {
        this.spec = spec;
        this.aboveOutletM = aboveOutletM;
        this.chance = chance;
    }

    @Override
    public long echoUs(double heightM, double airC) {
        double noiseM = spec.noiseM() * chance.nextGaussian();
        double distanceM = heightM + aboveOutletM;
        if (!(distanceM >= spec.nearestM() && distanceM <= spec.farthestM())) {
            seen = false;
            return HubSentences.UNKNOWN;
        }
        averageM = seen ? averageM + spec.averaging() * (distanceM - averageM) : distanceM;
        seen = true;
        return Math.round(echoUsOf(Math.max(0, averageM + noiseM + spec.offsetM()), airC));
    }

    @Override
    public double echoUsOf(double distanceM, double airC) {
        return 2e6 * distanceM / EchoSensor.soundMps(NOMINAL_C);
    }
}
