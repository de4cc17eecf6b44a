package evenfall.sense;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A meter of 150 pulses per litre, its sentences ten times a second. Between edges the pulse train is exactly periodic, so the
 * frequency must come out to the resolution of the hub's tick (1 µs), whatever the sentences' phase.
 */
class FlowSenseTest {
    private static final long SILENCE_US = 1_000_000;
    private static final long RANGE = 1L << 32;

    private final FlowSense sense = new FlowSense(150_000);

    /** Sends sentences for some seconds at a steady pulse rate; returns the time of the last. */
    private long run(double hz, double seconds, long tickOffset, long countOffset) {
        long timeUs = 0;
        for (long us = 100_000; us <= seconds * 1e6; us += 100_000) {
            long pulses = (long) Math.floor(hz * us / 1e6);
            long edgeUs = Math.round(pulses / hz * 1e6);
            timeUs = us;
            sense.onPulses(
                    us, (us + tickOffset) % RANGE, (pulses + countOffset) % RANGE, (edgeUs + tickOffset) % RANGE);
        }
        return timeUs;
    }

    @ParameterizedTest
    @ValueSource(doubles = {7.3, 33.3, 453, 2999.7})
    void aSteadyFlowComesOutToTheTicksResolution(double hz) {
        long now = run(hz, 3, 0, 0);

        Quantity flow = sense.flowM3ps(now, SILENCE_US);
        assertThat(flow.get() * 150_000 / hz).isCloseTo(1, within(6e-6));
    }

    @Test
    void ticksAndCountsMayWrap() {
        long now = run(453, 3, RANGE - 1_500_000, RANGE - 700);

        assertThat(sense.flowM3ps(now, SILENCE_US).get() * 150_000).isCloseTo(453, within(0.01));
    }

    @Test
    void lostSentencesCostNoVolume() {
        long seed = 5;
        Random random = new Random(seed);
        long now = 0;
        for (long us = 100_000; us <= 5_000_000; us += 100_000) {
            long pulses = 453 * us / 1_000_000;
            if (us % 1_000_000 == 0 || random.nextDouble() < 0.4) {
                sense.onPulses(us, us, pulses, Math.round(pulses / 453.0 * 1e6));
                now = us;
            }
        }
        assertThat(sense.flowM3ps(now, SILENCE_US).get() * 150_000)
                .as("seed %d", seed)
                .isCloseTo(453, within(0.01));
    }

    @Test
    void whenPulsesStopTheFlowSinksByTheTimeSinceTheLastEdge() {
        long now = run(453, 2, 0, 0);
        long lastEdge = Math.round(906 / 453.0 * 1e6);
        double before = sense.flowM3ps(now, SILENCE_US).get();
        for (long us = now + 100_000; us <= now + 2_500_000; us += 100_000) {
            sense.onPulses(us, us, 906, lastEdge);
            double flow = sense.flowM3ps(us, SILENCE_US).get();
            assertThat(flow).isLessThanOrEqualTo(1e6 / (us - lastEdge) / 150_000 + 1e-15);
            assertThat(flow).isLessThan(before);
        }
        assertThat(sense.flowM3ps(now + 2_500_000, SILENCE_US).get()).isZero();
    }

    @Test
    void aHubThatStartsAnewIsNotAFlow() {
        long now = run(453, 2, 50_000_000, 1_000_000);
        sense.onPulses(now + 100_000, 40_000, 3, 35_000);

        Quantity flow = sense.flowM3ps(now + 100_000, SILENCE_US);
        assertThat(flow.isKnown()).isFalse();
        assertThat(flow.unknown()).isEqualTo(Unknown.HUB_RESTARTED);
        sense.onPulses(now + 200_000, 136_000, 48, 134_338);
        assertThat(sense.flowM3ps(now + 200_000, SILENCE_US).get() * 150_000).isCloseTo(453, within(0.1));
    }

    @Test
    void silenceIsNotZero() {
        assertThat(sense.flowM3ps(0, SILENCE_US).unknown()).isEqualTo(Unknown.NOT_YET);
        long now = run(453, 2, 0, 0);
        assertThat(sense.flowM3ps(now + SILENCE_US + 1, SILENCE_US).unknown()).isEqualTo(Unknown.SILENT);
        assertThat(sense.flowM3ps(now + SILENCE_US, SILENCE_US).ageUs()).isEqualTo(SILENCE_US);
    }

    @Test
    void noPulseSinceTheStartIsNoFlow() {
        sense.onNoPulseYet(100_000, 100_000);

        assertThat(sense.flowM3ps(100_000, SILENCE_US).get()).isZero();
    }

    @Test
    void anEdgeFromBeforeAStandstillSaysNothingAboutNow() {
        long now = run(453, 2, 0, 0);
        long later = now + 10_000_000;
        sense.onPulses(later, later, 907, later - 10);

        assertThat(sense.flowM3ps(later, SILENCE_US).unknown()).isEqualTo(Unknown.TOO_FEW_PULSES);
    }

    @Test
    void theVarianceIsThatOfTwoEdges() {
        // Each edge errs by 2 % of a period, as it is taken to: the scatter of the flow must be the stated one.
        long seed = 6;
        Random random = new Random(seed);
        double ratio = 0;
        int n = 0;
        for (long us = 100_000; us <= 60_000_000; us += 100_000) {
            long pulses = 453 * us / 1_000_000;
            double edgeUs = (pulses + 0.02 * random.nextGaussian()) / 453.0 * 1e6;
            sense.onPulses(us, us, pulses, Math.min(us, Math.round(edgeUs)));
            if (us > 1_000_000) {
                Quantity flow = sense.flowM3ps(us, SILENCE_US);
                double off = flow.get() - 453 / 150_000.0;
                ratio += off * off / flow.variance();
                n++;
            }
        }
        assertThat(ratio / n).as("seed %d", seed).isBetween(0.7, 1.3);
    }

    @Test
    void volumeGoesOnAcrossLossesWrapsAndRestarts() {
        run(453, 3, RANGE - 1_500_000, RANGE - 700);
        // From the first sentence at 0.1 s: 45 pulses then, 1359 at 3 s.
        assertThat(sense.volumeM3() * 150_000).isCloseTo(1359 - 45, within(1e-6));
        sense.onRestart();
        sense.onPulses(4_000_000, 40_000, 18, 39_000);
        sense.onPulses(4_500_000, 540_000, 244, 538_000);

        assertThat(sense.volumeM3() * 150_000).isCloseTo(1359 - 45 + 244, within(1e-6));
        assertThat(sense.flowM3ps(4_500_000, SILENCE_US).get() * 150_000).isCloseTo(453, within(1.0));
    }
}
