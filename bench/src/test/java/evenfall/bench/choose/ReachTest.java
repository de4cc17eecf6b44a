package evenfall.bench.choose;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.liquid.Liquid;
import evenfall.liquid.Liquids;
import evenfall.outlet.OutletCatalogue;
import evenfall.quantity.TradeUnits;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReachTest {
    private static final List<String> NOZZLES = List.of("three-stream", "five-stream", "six-stream", "seven-stream");

    /** Common practice, no source: one set of fixed tips cannot span 10 to 60 US gal/ac, at whatever usual pressures and speeds. */
    @Test
    void oneSetOfFixedTipsCannotSpanTenToSixtyGallons() {
        for (String outlet : NOZZLES) {
            for (double lowKPa = 70; lowKPa <= 200; lowKPa += 65) {
                for (double highKPa = 250; highKPa <= 400; highKPa += 75) {
                    for (double mph = 4; mph <= 12; mph += 2) {
                        Job job = Asked.job(Asked.galpac(10, 60), Asked.mph(mph, mph), Asked.kPa(lowKPa, highKPa));
                        Cover cover = Candidate.cover(job, OutletCatalogue.builtIn(outlet));
                        assertThat(cover == null || cover.sets() > 1)
                                .as("%s, %s to %s kPa, %s mph", outlet, lowKPa, highKPa, mph)
                                .isTrue();
                    }
                }
            }
        }
    }

    /** The same, when the driver may go slow at the high rate and fast at the low one: 5 to 10 mph, 100 to 400 kPa. */
    @Test
    void norWhenTheDriverMayChooseASpeedForEachRate() {
        Job job = Asked.job(Asked.galpac(10, 60), Asked.mph(5, 10), Asked.kPa(100, 400));
        for (String outlet : NOZZLES) {
            for (Reach reach : Asked.candidate(job, outlet).reaches()) {
                double leastM = reach.flowsM3ps().low() / (job.speedsMps().high() * job.spacingM());
                double mostM = reach.flowsM3ps().high() / (job.speedsMps().low() * job.spacingM());
                assertThat(leastM <= job.ratesM().low() && mostM >= job.ratesM().high())
                        .as(outlet)
                        .isFalse();
            }
        }
    }

    /** Common practice, no source: a bar with several metering sizes can. */
    @Test
    void oneSetOfBarsCanSpanTenToSixtyGallons() {
        Job job = Asked.job(Asked.galpac(10, 60), Asked.mph(5, 10), null);
        Cover cover = Asked.candidate(job, "streamer-bar").cover();
        assertThat(cover).isNotNull().isEqualTo(Candidate.cover(job, OutletCatalogue.builtIn("streamer-bar")));
        assertThat(cover.sets()).isEqualTo(1);
        assertThat(cover.steps()).hasSizeGreaterThan(1);
        assertThat(cover.changeovers()).noneMatch(Cover.Changeover::newSet);
    }

    /** Pressure goes with the square of the flow: open notes on sprayer calibration (Q2/Q1 = √(P2/P1)). */
    @Test
    void halfAsFastAgainTakesTwoAndAQuarterTimesThePressure() {
        Job job = Asked.job(Asked.lpha(150, 150), Asked.kmh(8, 12), null);
        List<Corner> corners = Asked.candidate(job, "five-stream").corners();
        assertThat(corners.get(1).step()).isEqualTo(corners.get(0).step());
        assertThat(corners.get(1).pressurePa() / corners.get(0).pressurePa()).isCloseTo(2.25, within(1e-9));
    }

    /**
     * A heavier product asks for a larger size by the printed factor: University of Nebraska-Lincoln CropWatch 2016 and P. E. Sumner,
     * University of Georgia ("Spraying Solutions Other Than Water"); pounds per US gallon, factor as printed, to its rounding.
     */
    @ParameterizedTest
    @CsvSource({
        "6.6, 0.89",
        "7.0, 0.92",
        "8.0, 0.98",
        "9.0, 1.04",
        "10.0, 1.10",
        "10.65, 1.13",
        "11.0, 1.15",
        "11.06, 1.15",
        "11.4, 1.17",
        "11.6, 1.18",
        "12.0, 1.20"
    })
    void sizesFollowTheConversionFactorsOfTheHandbook(double poundsPerGallon, double factor) {
        Liquid water = Liquids.WATER;
        Liquid heavy = new Liquid("heavy", "heavy", water.densityKgpM3() * poundsPerGallon / 8.34, 300, 0);
        Span rates = Asked.galpac(20, 20);
        Span speeds = Asked.mph(6, 6);
        Reach ofWater = widest(Asked.job(rates, speeds, null, 0.508, water, Asked.SD_10_CM));
        Reach ofHeavy = widest(Asked.job(rates, speeds, null, 0.508, heavy, Asked.SD_10_CM));
        double asPrinted = ofWater.flowsM3ps().low()
                / ofWater.sizeM3ps()
                * ofHeavy.sizeM3ps()
                / ofHeavy.flowsM3ps().low();
        assertThat(asPrinted).isCloseTo(factor, within(0.006));
    }

    private static Reach widest(Job job) {
        return Asked.candidate(job, "five-stream").reaches().get(0);
    }

    /** CropWatch, same page: 20 gal/ac of 28 % at 10.65 lb/US gal is chosen as 22.6 gal/ac of water. */
    @Test
    void twentyGallonsOfUanAreChosenAsTwentyTwoPointSixOfWater() {
        Liquid uan = Liquids.UAN_28.withDensity(10.65 * TradeUnits.POUND_KG / TradeUnits.US_GALLON_M3);
        Job asUan = Asked.job(Asked.galpac(20, 20), Asked.mph(6, 6), null, 0.508, uan, Asked.SD_10_CM);
        Job asWater = Asked.job(Asked.galpac(22.6, 22.6), Asked.mph(6, 6), null, 0.508, Liquids.WATER, Asked.SD_10_CM);
        Candidate one = Asked.candidate(asUan, "five-stream");
        Candidate other = Asked.candidate(asWater, "five-stream");
        assertThat(one.cover().steps().get(0).sizeM3ps())
                .isEqualTo(other.cover().steps().get(0).sizeM3ps());
        assertThat(one.corners().get(0).pressurePa())
                .isCloseTo(other.corners().get(0).pressurePa(), within(0.01 * 200e3));
    }

    @Test
    void everyCornerAndChangeoverLiesWithinTheWindowAndTheStepsJoin() {
        for (String outlet : OutletCatalogue.ids()) {
            for (double width = 1.2; width < 8; width *= 1.5) {
                Job job = Asked.job(Asked.lpha(80, 80 * width), Asked.kmh(7, 14), Asked.kPa(100, 400));
                Candidate candidate = Asked.candidate(job, outlet);
                Cover cover = candidate.cover();
                assertThat(cover).isNotNull();
                Span window = candidate.windowPa();
                double at = job.outletFlowsM3ps().low();
                for (Cover.Step step : cover.steps()) {
                    assertThat(step.usedM3ps().low()).isEqualTo(at);
                    at = step.usedM3ps().high();
                    assertThat(step.pressuresPa().low()).isGreaterThan(window.low() * (1 - 1e-9));
                    assertThat(step.pressuresPa().high()).isLessThan(window.high() * (1 + 1e-9));
                }
                assertThat(at).isEqualTo(job.outletFlowsM3ps().high());
                assertThat(candidate.corners())
                        .allMatch(corner -> corner.pressurePa() > window.low() * (1 - 1e-9)
                                && corner.pressurePa() < window.high() * (1 + 1e-9));
                for (Cover.Changeover change : cover.changeovers()) {
                    Double rateM = change.rateM(job, job.speedsMps().low());
                    if (rateM != null) {
                        assertThat(job.outletFlowM3ps(rateM, job.speedsMps().low()))
                                .isCloseTo(change.flowM3ps(), within(1e-15));
                    }
                }
            }
        }
    }

    @Test
    void whatCannotBeReachedHasAReasonAndNoInventedFigure() {
        Job narrow = Asked.job(Asked.lpha(100, 300), Asked.kmh(8, 14), Asked.kPa(200, 230));
        assertThat(Asked.candidate(narrow, "five-stream"))
                .returns(null, Candidate::cover)
                .returns(Candidate.Shortfall.GAPS, Candidate::shortfall)
                .returns(null, Candidate::contact)
                .satisfies(c -> assertThat(c.reachedShare()).isBetween(0.1, 0.9))
                .satisfies(c -> assertThat(c.corners()).allMatch(corner -> corner.pressurePa() == null));
        Job outside = Asked.job(Asked.lpha(100, 300), Asked.kmh(8, 14), Asked.kPa(500, 800));
        assertThat(Asked.candidate(outside, "five-stream").shortfall()).isEqualTo(Candidate.Shortfall.NO_PRESSURE);
        Job tooMuch = Asked.job(Asked.lpha(100, 5000), Asked.kmh(8, 60), null);
        assertThat(Asked.candidate(tooMuch, "five-stream").shortfall()).isEqualTo(Candidate.Shortfall.TOO_MUCH_ASKED);
        Job tooLittle = Asked.job(Asked.lpha(1, 300), Asked.kmh(2, 14), null);
        assertThat(Asked.candidate(tooLittle, "five-stream").shortfall())
                .isEqualTo(Candidate.Shortfall.TOO_LITTLE_ASKED);
    }

    /** ISO 3, from memory: ten numbers to a decade, each 1.26 times the one before but for rounding. */
    @Test
    void theSeriesGrowsByAQuarterFromSizeToSize() {
        List<Double> flows = MeteringSeries.flowsM3ps();
        for (int i = 1; i < flows.size(); i++) {
            assertThat(flows.get(i) / flows.get(i - 1)).isCloseTo(Math.pow(10, 0.1), within(0.03));
        }
        assertThat(flows.get(0) / TradeUnits.LPM_M3PS).isCloseTo(0.2, within(1e-9));
    }
}
