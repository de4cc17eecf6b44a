package evenfall.sim.sensor;

import evenfall.sim.chance.Chance;
import evenfall.sim.wire.Fix;
import evenfall.sim.wire.GnssSentences;
import evenfall.sim.wire.Uart;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;

/**
 * A GNSS receiver on the cab's roof: RMC and VTG at its rate, GGA once a second, each epoch late by its computing time.
 *
 * <p>Positions come from a plane tangent to the WGS 84 ellipsoid at an invented origin; over one pass its error stays below a
 * centimetre.
 */
public final class GnssReceiver {
    /**
     * What the receiver does. Values of {@link #usual} are choices of ours.
     *
     * @param everyUs time between epochs, µs, a multiple of 5000
     * @param latencyUs from an epoch to the first byte about it, µs
     * @param speedNoiseMps standard deviation of a speed, m/s
     * @param courseNoiseDeg standard deviation of a course at 1 m/s, degrees; it falls with speed
     * @param driftM standard deviation of the slow wandering of positions, m
     * @param positionNoiseM standard deviation of one position beside that, m
     * @param antennaAheadM how far the antenna is ahead of the boom, m
     * @param latitudeDeg where the pass begins, north positive
     * @param longitudeDeg where the pass begins, east positive
     * @param headingDeg direction of the pass, from true north, clockwise
     * @param startUtcMs UTC at the start of the run, ms since 1970-01-01
     */
    public record Spec(
            long everyUs,
            long latencyUs,
            double speedNoiseMps,
            double courseNoiseDeg,
            double driftM,
            double positionNoiseM,
            double antennaAheadM,
            double latitudeDeg,
            double longitudeDeg,
            double headingDeg,
            long startUtcMs) {
        /** 10 Hz, 60 ms late, 0.03 m/s of noise; 2031-05-06 08:00 UTC at a place in the open Atlantic. Invented. */
        public static Spec usual() {
            return new Spec(100_000, 60_000, 0.03, 1.5, 0.4, 0.02, 5.0, 45.0, -30.0, 40, 1_935_820_800_000L);
        }
    }

    /** WGS 84: half axis and first eccentricity squared (NIMA TR8350.2). */
    private static final double HALF_AXIS_M = 6_378_137;

    private static final double ECCENTRICITY_SQUARED = 0.00669437999014;
    private static final double DRIFT_TIME_S = 60;

    /** Below this speed a receiver gives no course; a choice of ours. */
    private static final double LEAST_FOR_COURSE_MPS = 0.2;

    private final Spec spec;
    private final Uart line;
    private final Chance chance;
    private final GnssSentences sentences = new GnssSentences("GN");
    private final double sinHeading;
    private final double cosHeading;
    private final double northPerDegM;
    private final double eastPerDegM;
    private double driftNorthM;
    private double driftEastM;
    private double missShare;
    private @Nullable Chance missChance;
    private boolean fixLost;
    private double shakeMps;
    private @Nullable Chance shakeChance;
    private long lateUs;

    public GnssReceiver(Spec spec, Uart line, Chance chance) {
        this.spec = spec;
        this.line = line;
        this.chance = chance;
        double heading = StrictMath.toRadians(spec.headingDeg());
        sinHeading = StrictMath.sin(heading);
        cosHeading = StrictMath.cos(heading);
        double latitude = StrictMath.toRadians(spec.latitudeDeg());
        double sin = StrictMath.sin(latitude);
        double squeeze = 1 - ECCENTRICITY_SQUARED * sin * sin;
        double primeM = HALF_AXIS_M / Math.sqrt(squeeze);
        northPerDegM = StrictMath.toRadians(primeM * (1 - ECCENTRICITY_SQUARED) / squeeze);
        eastPerDegM = StrictMath.toRadians(primeM * StrictMath.cos(latitude));
        driftNorthM = spec.driftM() * chance.nextGaussian();
        driftEastM = spec.driftM() * chance.nextGaussian();
    }

    /**
     * Takes an epoch when it is due; what it says about it goes out when it is ready.
     *
     * @param timeUs µs of the run, a multiple of 5000
     */
    public void at(long timeUs, Scene scene) {
        if (timeUs % spec.everyUs() != 0) {
            return;
        }
        Fix fix = fix(timeUs, scene);
        boolean missed = missShare > 0 && missChance != null && missChance.nextDouble() < missShare;
        if (missed) {
            return;
        }
        long readyUs = timeUs + spec.latencyUs() + lateUs;
        line.send(readyUs, sentences.rmc(fix));
        line.send(readyUs, sentences.vtg(fix));
        if (timeUs % 1_000_000 == 0) {
            line.send(readyUs, sentences.gga(fix));
        }
    }

    private Fix fix(long timeUs, Scene scene) {
        double keep = StrictMath.exp(-spec.everyUs() * 1e-6 / DRIFT_TIME_S);
        double fresh = spec.driftM() * Math.sqrt(1 - keep * keep);
        driftNorthM = keep * driftNorthM + fresh * chance.nextGaussian();
        driftEastM = keep * driftEastM + fresh * chance.nextGaussian();
        double turnedRad = scene.headingRad();
        double aheadM = scene.aheadM() + spec.antennaAheadM() * StrictMath.cos(turnedRad);
        double asideM = scene.asideM() + spec.antennaAheadM() * StrictMath.sin(turnedRad);
        double northM =
                aheadM * cosHeading - asideM * sinHeading + driftNorthM + spec.positionNoiseM() * chance.nextGaussian();
        double eastM =
                aheadM * sinHeading + asideM * cosHeading + driftEastM + spec.positionNoiseM() * chance.nextGaussian();
        double speedMps = Math.abs(scene.speedMps() + spec.speedNoiseMps() * chance.nextGaussian());
        if (shakeMps > 0 && shakeChance != null) {
            speedMps = Math.abs(speedMps + shakeMps * shakeChance.nextGaussian());
        }
        double courseSpreadDeg = spec.courseNoiseDeg() / Math.max(speedMps, LEAST_FOR_COURSE_MPS);
        double courseDeg =
                spec.headingDeg() + StrictMath.toDegrees(turnedRad) + courseSpreadDeg * chance.nextGaussian();
        double turnsDeg = courseDeg - 360 * Math.floor(courseDeg / 360);
        if (fixLost) {
            return noFix(timeUs);
        }
        return new Fix(
                true,
                OptionalLong.of(spec.startUtcMs() + timeUs / 1000),
                OptionalDouble.of(spec.latitudeDeg() + northM / northPerDegM),
                OptionalDouble.of(spec.longitudeDeg() + eastM / eastPerDegM),
                OptionalDouble.of(speedMps),
                speedMps < LEAST_FOR_COURSE_MPS ? OptionalDouble.empty() : OptionalDouble.of(turnsDeg),
                'A',
                1,
                17,
                OptionalDouble.of(0.7),
                OptionalDouble.of(2.0),
                OptionalDouble.of(50.0));
    }

    private Fix noFix(long timeUs) {
        return new Fix(
                false,
                OptionalLong.of(spec.startUtcMs() + timeUs / 1000),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                'N',
                0,
                2,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    /**
     * Epochs that never come, as under trees.
     *
     * @param share of the epochs that are missing; 0 makes it whole
     */
    public void miss(double share, Chance luck) {
        missShare = share;
        missChance = luck;
    }

    /** It has no fix: it knows the time and nothing else. */
    public void loseFix(boolean on) {
        fixLost = on;
    }

    /**
     * Speeds that jump, as from signals by way of a wall or a wood.
     *
     * @param speedMps standard deviation, m/s; 0 makes it whole
     */
    public void shakeSpeed(double speedMps, Chance luck) {
        shakeMps = speedMps;
        shakeChance = luck;
    }

    /** @param moreUs how much later than before it speaks, µs; 0 makes it whole */
    public void delay(long moreUs) {
        lateUs = moreUs;
    }
}
