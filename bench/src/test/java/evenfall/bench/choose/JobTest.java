package evenfall.bench.choose;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.liquid.Liquids;
import evenfall.quantity.TradeUnits;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JobTest {
    private static final long SEED = 20261125;

    /**
     * L/min = L/ha · km/h · m / 600. First row: inputs of a case in an open agronomy manual after Boller and Raetano (2011), its result
     * computed again; the others are further cases of the same formula.
     */
    @ParameterizedTest
    @CsvSource({"190, 10, 0.5, 1.58333", "200, 8, 0.5, 1.33333", "150, 10, 0.5, 1.25"})
    void anOutletsFlowIsThatOfTheMetricIdentity(double lpha, double kmh, double spacingM, double lpm) {
        Job job =
                Asked.job(Asked.lpha(lpha, lpha), Asked.kmh(kmh, kmh), null, spacingM, Liquids.UAN_28, Asked.SD_10_CM);
        assertThat(job.outletFlowsM3ps().low() / TradeUnits.LPM_M3PS).isCloseTo(lpm, within(5e-6));
    }

    /**
     * gpm = gal/ac · mph · in / 5940 (Clemson University; Mesa County, Colorado; University of Florida IFAS EDIS WG013). The last row is
     * Albany County (Wyoming) Weed and Pest District: 3.75 gpm over 222 in at 5 mph, printed as 20 gal/ac.
     */
    @ParameterizedTest
    @CsvSource({"20, 6, 20, 0.404040, 1e-6", "12.375, 6, 20, 0.25, 1e-9", "20, 5, 222, 3.75, 0.02"})
    void anOutletsFlowIsThatOfTheUsIdentity(double galpac, double mph, double spacingIn, double gpm, double near) {
        Job job = Asked.job(
                Asked.galpac(galpac, galpac),
                Asked.mph(mph, mph),
                null,
                spacingIn * TradeUnits.INCH_M,
                Liquids.UAN_28,
                Asked.SD_10_CM);
        assertThat(job.outletFlowsM3ps().low() / TradeUnits.GPM_M3PS).isCloseTo(gpm, within(near));
    }

    @Test
    void theShareOfTheRangeIsWhatCountingManyPointsGives() {
        Random random = new Random(SEED);
        for (int n = 0; n < 40; n++) {
            double rate = 50 + 300 * random.nextDouble();
            double speed = 4 + 8 * random.nextDouble();
            Job job = Asked.job(
                    Asked.lpha(rate, rate * (1 + 2 * random.nextDouble())),
                    Asked.kmh(speed, speed * (1 + 2 * random.nextDouble())),
                    null);
            Span all = job.outletFlowsM3ps();
            double low = all.low() * (0.5 + 2 * random.nextDouble());
            Span flows = new Span(low, low * (1 + 2 * random.nextDouble()));
            assertThat(job.shareWithin(flows))
                    .as("seed %d, case %d", SEED, n)
                    .isCloseTo(counted(job, flows), within(0.004));
        }
    }

    @Test
    void aRangeOfOneRateOrOneSpeedIsMeasuredAlongTheOther() {
        Job oneRate = Asked.job(Asked.lpha(200, 200), Asked.kmh(8, 16), null);
        double at12 = oneRate.outletFlowM3ps(200 * TradeUnits.LPHA_M, 12 * TradeUnits.KMPH_MPS);
        assertThat(oneRate.shareWithin(new Span(0, at12))).isCloseTo(0.5, within(1e-9));
        Job oneSpeed = Asked.job(Asked.lpha(100, 300), Asked.kmh(10, 10), null);
        double at150 = oneSpeed.outletFlowM3ps(150 * TradeUnits.LPHA_M, 10 * TradeUnits.KMPH_MPS);
        assertThat(oneSpeed.shareWithin(new Span(0, at150))).isCloseTo(0.25, within(1e-9));
        Job point = Asked.job(Asked.lpha(200, 200), Asked.kmh(10, 10), null);
        assertThat(point.shareWithin(point.outletFlowsM3ps())).isEqualTo(1);
        assertThat(point.shareWithin(new Span(0, 1e-9))).isZero();
    }

    private static double counted(Job job, Span flows) {
        int side = 400;
        int hits = 0;
        for (int i = 0; i < side; i++) {
            for (int j = 0; j < side; j++) {
                double rate = job.ratesM().low()
                        + (i + 0.5) / side * (job.ratesM().high() - job.ratesM().low());
                double speed = job.speedsMps().low()
                        + (j + 0.5)
                                / side
                                * (job.speedsMps().high() - job.speedsMps().low());
                if (flows.contains(job.outletFlowM3ps(rate, speed))) {
                    hits++;
                }
            }
        }
        return (double) hits / side / side;
    }
}
