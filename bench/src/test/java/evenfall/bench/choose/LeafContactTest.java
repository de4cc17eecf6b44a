package evenfall.bench.choose;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.liquid.Liquids;
import evenfall.outlet.OutletCatalogue;
import evenfall.outlet.OutletType;
import evenfall.outlet.Stream;
import evenfall.quantity.TradeUnits;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class LeafContactTest {
    private static final double SIZE_M3PS = 2.5 * TradeUnits.LPM_M3PS;

    private static OutletType straightDown(int streams) {
        List<Stream> list = new ArrayList<>();
        for (int i = 0; i < streams; i++) {
            list.add(new Stream(1.0 / streams, 0.1 * i, 0, 0, 5));
        }
        return new OutletType("plain", "Plain", 200e3, SIZE_M3PS, 100e3, 400e3, list);
    }

    private static double wetted(OutletType type, double pressurePa) {
        return LeafContact.of(Asked.usual(), type, SIZE_M3PS, pressurePa).wettedMpM();
    }

    /** Common practice, no source; "fewer streams, less burn" (Ontario field crop team, 2014). */
    @Test
    void twiceTheStreamsFromTheSameOutletWetMore() {
        double before = 0;
        for (int streams = 1; streams <= 8; streams *= 2) {
            double now = wetted(straightDown(streams), 200e3);
            assertThat(now).isGreaterThan(before);
            before = now;
        }
    }

    /** Common practice, no source: more pressure, more burn. */
    @Test
    void morePressureOnTheSameOutletWetsMore() {
        for (String id : OutletCatalogue.ids()) {
            OutletType type = OutletCatalogue.builtIn(id).fitted(Asked.SPACING_M);
            assertThat(wetted(type, 400e3)).as(id).isGreaterThan(wetted(type, 100e3));
        }
    }

    /** "Differences small at correct height" (Ontario field crop team, 2014): within a factor of two or so. */
    @Test
    void typesLieCloseTogetherAtTheSetHeight() {
        double least = Double.MAX_VALUE;
        double most = 0;
        for (String id : OutletCatalogue.ids()) {
            double now = wetted(OutletCatalogue.builtIn(id).fitted(Asked.SPACING_M), 200e3);
            least = Math.min(least, now);
            most = Math.max(most, now);
        }
        assertThat(most / least).isBetween(1.2, 2.5);
    }

    /**
     * By hand: a stream of D = 3.26 mm that leaves downwards at 5 m/s over √1.2823 and falls 0.1 m, still whole, prints D · We^¼ wide
     * with We = 1280 u² D / 0.0688. From half a metre it comes partly as drops, 1.89 times as thick (Rayleigh, from memory).
     */
    @Test
    void oneStreamPrintsAsByHand() {
        OutletType one = straightDown(1);
        double nearM = LeafContact.of(at(0.1), one, SIZE_M3PS, 200e3).wettedMpM() * Asked.SPACING_M;
        assertThat(nearM).isCloseTo(byHandM(0.1), within(0.01 * nearM));
        double farM = wetted(one, 200e3) * Asked.SPACING_M;
        assertThat(farM).isBetween(1.05 * byHandM(0.5), Math.pow(1.89, 1.25) * byHandM(0.5));
    }

    private static double byHandM(double heightM) {
        double squared = 25.0 / 1.2823 + 2 * 9.80665 * heightM;
        double diameterM = Math.sqrt(4 * SIZE_M3PS / (Math.PI * 5));
        return diameterM * Math.pow(1280 * squared * diameterM / 0.0688, 0.25);
    }

    @Test
    void productAndWeatherStandBesideItAndAreUnknownWhereNotGiven() {
        BurnFactors plain = BurnFactors.of(Asked.usual());
        assertThat(plain.product()).isEqualTo(1);
        assertThat(plain.weather()).isNull();
        assertThat(plain.weatherWhy()).contains("not given");
        Job salty = job(0.15, 26.0);
        assertThat(BurnFactors.of(salty).product()).isCloseTo(1.5, within(1e-12));
        assertThat(BurnFactors.of(salty).weather()).isEqualTo(2.0);
        assertThat(BurnFactors.of(job(0, 10.0)).weather()).isEqualTo(1.0);
    }

    private static Job at(double heightM) {
        return job(0, 10, heightM);
    }

    private static Job job(double thiosulphateShare, double airC) {
        return job(thiosulphateShare, airC, 0.5);
    }

    private static Job job(double thiosulphateShare, double airC, double heightM) {
        Job job = Asked.usual();
        return new Job(
                job.outlets(),
                job.spacingM(),
                job.rowM(),
                job.ratesM(),
                job.speedsMps(),
                Liquids.UAN_28,
                thiosulphateShare,
                null,
                heightM,
                job.wander(),
                job.limitCv(),
                airC);
    }
}
