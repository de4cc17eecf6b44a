package evenfall.sim.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.chance.Chance;
import org.junit.jupiter.api.Test;

class PulseMeterTest {
    /** 90 L/min through a meter of 150 pulses per litre: 225 Hz. */
    private static final double FLOW_M3PS = 90e-3 / 60;

    private static final double PULSES_PER_M3 = 150_000;

    @Test
    void pulsesAreVolumeTimesFactorWithinOne() {
        long seed = 5;
        Chance chance = Chance.stream(seed, "flows");
        PulseMeter meter = new PulseMeter(PULSES_PER_M3, 0.01, 0, Chance.stream(seed, "meter"));
        double volume = 0;
        for (int step = 0; step < 20_000; step++) {
            double amount = FLOW_M3PS * 2 * chance.nextDouble() * 0.005;
            volume += amount;
            meter.pass(step * 5000.0, 5000, amount);
            assertThat((double) meter.count())
                    .as("seed %d step %d", seed, step)
                    .isCloseTo(volume * PULSES_PER_M3, within(1.0));
        }
    }

    /** Reciprocal counting: counts between two edges over the time between them give the frequency exactly. */
    @Test
    void theLastEdgesMomentGivesTheExactFrequency() {
        PulseMeter meter = new PulseMeter(PULSES_PER_M3, 0, 0, Chance.stream(1, "meter"));
        double firstUs = 0;
        long firstCount = 0;
        for (int step = 0; step < 200; step++) {
            meter.pass(step * 5000.0, 5000, FLOW_M3PS * 0.005);
            if (step == 20) {
                firstUs = meter.lastEdgeUs();
                firstCount = meter.count();
            }
        }
        double hertz = (meter.count() - firstCount) / (meter.lastEdgeUs() - firstUs) * 1e6;
        assertThat(hertz).isCloseTo(225.0, within(1e-9));
    }

    @Test
    void edgesNeverGoBackAndNeverComeFromTheFuture() {
        PulseMeter meter = new PulseMeter(PULSES_PER_M3, 0.3, 0, Chance.stream(2, "meter"));
        double before = 0;
        for (int step = 0; step < 5000; step++) {
            meter.pass(step * 5000.0, 5000, FLOW_M3PS * 0.005);
            if (meter.hasEdge()) {
                assertThat(meter.lastEdgeUs()).isBetween(before, (step + 1) * 5000.0);
                before = meter.lastEdgeUs();
            }
        }
    }

    @Test
    void nothingPassesAndNoEdgeIsKnown() {
        PulseMeter meter = new PulseMeter(PULSES_PER_M3, 0, 7, Chance.stream(3, "meter"));
        meter.pass(0, 5000, 0);
        assertThat(meter.hasEdge()).isFalse();
        assertThat(meter.count()).isEqualTo(7);
    }

    @Test
    void countAndTickRunOverAtThirtyTwoBits() {
        PulseMeter meter = new PulseMeter(1, 0, 0xffffffffL, Chance.stream(4, "meter"));
        meter.pass(0, 1000, 2);
        assertThat(meter.count()).isIn(1L, 2L);
        HubClock clock = new HubClock(4_294_967_000L, 50);
        assertThat(clock.tick(0)).isEqualTo(4_294_967_000L);
        assertThat(clock.tick(1_000_000)).isEqualTo(4_294_967_000L + 1_000_050 - 4_294_967_296L);
    }

    /** 1 − (q0/q)²: at twice the least flow three quarters of the pulses, at ten times 99 %. */
    @Test
    void aTurbineTurnsTooSlowlyWhereLittleFlows() {
        double least = FLOW_M3PS / 10;
        for (double[] each : new double[][] {{0.9, 0}, {2, 0.75}, {10, 0.99}}) {
            PulseMeter meter = new PulseMeter(PULSES_PER_M3, 0, 0, least, Chance.stream(6, "meter"));
            for (int step = 0; step < 20_000; step++) {
                meter.pass(step * 5000.0, 5000, each[0] * least * 0.005);
            }
            double wanted = each[1] * each[0] * least * 100 * PULSES_PER_M3;
            assertThat((double) meter.count()).isCloseTo(wanted, within(1.0));
        }
    }
}
