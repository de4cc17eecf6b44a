package evenfall.monitor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.judge.Alert;
import evenfall.judge.AlertKind;
import evenfall.liquid.Orifice;
import evenfall.quantity.TradeUnits;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.sense.Unknown;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Walks each alert of rate and plumbing up to its limit, past it, and back, on the paper machine: 72 outlets in 6 sections. */
class PlumbingTest {
    /** The transmitter of the simulator's ordinary machine scatters by 0.8 kPa. */
    private static final double SCATTER_PA = 800;

    private static final int EVERYTHING = 0x3F;

    private static HubScript running(double seconds) throws Exception {
        return running(RigFile.read(Path.of("docs", "example-rig.yaml")), seconds);
    }

    private static HubScript running(Rig rig, double seconds) {
        HubScript script = new HubScript(rig);
        script.scatterPa = SCATTER_PA;
        return script.run(seconds);
    }

    private static Alert last(HubScript script) {
        return script.raised.get(script.raised.size() - 1);
    }

    /** What was told of outlets; with a few sections on, pressures leave their window for good reason. */
    private static List<String> ofOutlets(HubScript script) {
        return script.story.stream().filter(line -> line.contains("outlet-")).toList();
    }

    private static List<String> words(HubScript script) {
        return script.raised.stream()
                .map(alert -> alert.why() + " " + alert.act())
                .toList();
    }

    @Test
    void oneBlockedOutletOfSeventyTwoIsToldWithinFiveSecondsAndTakenBackWhenItIsFree() throws Exception {
        HubScript script = running(20);
        script.outletsMore = -1;
        script.run(10);

        assertThat(script.story).containsExactly("+outlet-blocked/boom");
        Alert alert = last(script);
        assertThat(alert.raisedUs()).isBetween(20_000_000L, 25_000_000L);
        assertThat(alert.value()).isCloseTo(1, within(0.3));
        assertThat(alert.why()).contains("213 kPa").contains("of 72 outlets");
        assertThat(alert.act()).contains("a blocked outlet");
        script.outletsMore = 0;
        script.run(10);
        assertThat(script.story).containsExactly("+outlet-blocked/boom", "-outlet-blocked/boom");
    }

    @Test
    void aQuarterOfAnOutletIsLessThanTheSensorsRepeatTo() throws Exception {
        HubScript script = running(20);
        script.outletsMore = -0.25;
        script.run(120);

        assertThat(script.story).isEmpty();
    }

    /** Seconds from the step to the alert, mean of four; NaN where one of them is not found within 20 s. */
    private static double meanDelayS(double outletsMore, double scatterPa) throws Exception {
        double sum = 0;
        for (int i = 0; i < 4; i++) {
            HubScript script = new HubScript();
            script.scatterPa = scatterPa;
            script.run(15 + 0.15 * i);
            script.outletsMore = outletsMore;
            script.run(20);
            sum += script.raised.isEmpty() ? Double.NaN : last(script).raisedUs() / 1e6 - 15 - 0.15 * i;
        }
        return sum / 4;
    }

    @Test
    void stepsAreToldInTheTimesThatTheDocumentStates() throws Exception {
        List<String> rows = new ArrayList<>();
        for (double outlets : new double[] {-0.5, -1, -2, -12, 0.5, 1, 5}) {
            StringBuilder row =
                    new StringBuilder(String.format(Locale.ROOT, "| %+.1f (%+.1f %%)", outlets, outlets / 0.72));
            for (double scatterPa : new double[] {SCATTER_PA, 3 * SCATTER_PA}) {
                double delayS = meanDelayS(outlets, scatterPa);
                row.append(Double.isNaN(delayS) ? " | not sure" : String.format(Locale.ROOT, " | %.1f", delayS));
                // Those for which it is due must come within its ten seconds.
                assertThat(Math.abs(outlets) >= 2 && !(delayS <= 10))
                        .as("%s outlets", outlets)
                        .isFalse();
            }
            rows.add(row.append(" |").toString());
        }

        assertThat(Files.readString(Path.of("docs", "judgement.md")))
                .as("measured now:\n%s", String.join("\n", rows))
                .contains(rows);
    }

    @Test
    void aLostOutletIsOpenWithItsLitres() throws Exception {
        HubScript script = running(20);
        script.outletsMore = 5;
        script.run(10);

        assertThat(script.story).containsExactly("+outlet-open/boom");
        // Five outlets' worth at the pressure that is left: 5/77 of 301.8 L/min × ... the target's flow stays what it
        // was.
        double targetLpm = 150e-7 * 5.5 * 36.576 / TradeUnits.LPM_M3PS;
        assertThat(last(script).value()).isCloseTo(5.0 / 77 * targetLpm, within(1.0));
        assertThat(last(script).unit()).isEqualTo("L/min");
        // Which outlets they are, nobody knows: rows are not said.
        assertThat(script.last().boom().unknown()).isEqualTo(Unknown.OUTLETS_UNLIKE);
    }

    @Test
    void whatWearsBesideWhatIsBlockedIsACauseOfItsOwnAndMoreOfItComesAnew() throws Exception {
        HubScript script = running(20);
        script.outletsMore = -1;
        script.run(15);
        script.outletsMore = -1 + 3;
        script.run(15);
        script.outletsMore = -1 + 3 + 5;
        script.run(15);

        assertThat(script.story)
                .containsExactly("+outlet-blocked/boom", "+outlet-open/boom", "-outlet-open/boom", "+outlet-open/boom");
        double pressurePa = script.last().pressurePa().get();
        double outletLpm = script.rig
                        .outlet()
                        .orifice()
                        .flowM3ps(pressurePa, script.rig.liquid().specificGravity())
                / TradeUnits.LPM_M3PS;
        assertThat(last(script).value()).isCloseTo(8 * outletLpm, within(0.6 * outletLpm));
    }

    @Test
    void aRatioThatIsOffFromTheStartNamesTheOtherSuspects() throws Exception {
        HubScript within = new HubScript();
        within.scatterPa = SCATTER_PA;
        within.meterTimes = 1.06;
        within.run(20);
        HubScript much = new HubScript();
        much.scatterPa = SCATTER_PA;
        much.meterTimes = 1.09;
        much.run(20);
        HubScript little = new HubScript();
        little.scatterPa = SCATTER_PA;
        little.meterTimes = 0.91;
        little.run(20);

        assertThat(within.story).isEmpty();
        assertThat(much.story).containsExactly("+outlet-open/boom");
        assertThat(last(much).why()).contains("9 % more").contains("tolerances explain 7 %");
        assertThat(last(much).act()).contains("K-factor", "density", "transmitter's zero");
        assertThat(much.last().boom().rows()).isNotNull();
        assertThat(little.story).containsExactly("+outlet-blocked/boom");
    }

    @Test
    void aSectionThatComesAndGoesWithItsSwitchIsThePlace() throws Exception {
        HubScript script = running(20);
        script.outletsMore = -4;
        script.run(10);
        assertThat(ofOutlets(script)).containsExactly("+outlet-blocked/boom");
        // With sections 1 to 3 off it is still there, so it is in 4 to 6; with 5 and 6 off as well, too.
        script.sectionMask = 0x38;
        script.run(12);
        assertThat(ofOutlets(script)).hasSize(1);
        script.sectionMask = 0x08;
        script.run(12);

        assertThat(ofOutlets(script))
                .containsExactly("+outlet-blocked/boom", "-outlet-blocked/boom", "+outlet-blocked/section-4");
        assertThat(last(script).act()).contains("in section 4");
        // Gone where section 4 is off, and still told: it stands until it is seen to be good.
        script.sectionMask = 0x37;
        script.outletsMore = 0;
        script.run(12);
        assertThat(ofOutlets(script)).hasSize(3);
        script.sectionMask = EVERYTHING;
        script.run(12);
        assertThat(ofOutlets(script).get(3)).isEqualTo("-outlet-blocked/section-4");
    }

    @Test
    void aSectionThatStaysShutAndOneThatRunsOnShowTheSameWay() throws Exception {
        HubScript shut = running(20);
        shut.sectionMask = 0x1F;
        shut.run(12);
        shut.sectionMask = EVERYTHING;
        shut.outletsMore = -12;
        shut.run(12);
        HubScript runsOn = running(20);
        runsOn.sectionMask = 0x3D;
        runsOn.outletsMore = 12;
        runsOn.run(12);

        assertThat(shut.story).containsExactly("+outlet-blocked/section-6");
        assertThat(last(shut).act()).contains("the valve in section 6 opens");
        // The rate controller on paper knows nothing of it, so the rate stays.
        assertThat(runsOn.story).containsExactly("+outlet-open/section-2");
        assertThat(last(runsOn).act()).contains("switched off");
        // Two seconds for its valve and two that it must last, not the five in which all settles.
        assertThat(last(runsOn).raisedUs() / 1e6).isBetween(23.8, 24.6);
    }

    @Test
    void aSectionThatIsSlowToShutIsNotOneThatRunsOn() throws Exception {
        // Two outlets' worth of a section drain for longer than its valve takes; as much is told as a step once all has
        // settled.
        HubScript slow = running(20);
        slow.sectionMask = 0x3D;
        for (int i = 0; i < 35; i++) {
            slow.outletsMore = Math.min(12, 0.04 * (35 - i) * (35 - i));
            slow.run(0.1);
        }
        slow.outletsMore = 0;
        slow.run(15);

        assertThat(ofOutlets(slow)).isEmpty();
    }

    @Test
    void switchesManoeuvresAndAirAreNoFaults() throws Exception {
        HubScript script = running(20);
        long[] masks = {0x1F, 0x0F, 0x3F, 0x3E, 0, 0x3F};
        for (int round = 0; round < 10; round++) {
            script.sectionMask = masks[round % masks.length];
            // A line that fills and drains for two seconds.
            script.outletsMore = round % 2 == 0 ? 8 : -8;
            script.run(2);
            script.outletsMore = 0;
            script.run(10);
        }
        script.sectionMask = EVERYTHING;
        script.run(10);
        for (int i = 0; i < 60; i++) {
            script.speedMps += i % 40 < 20 ? -0.1 : 0.1;
            script.run(0.25);
        }
        script.speedMps = 5.5;
        script.run(5);
        // Slugs of 0.6 s with a third of air: the meter counts √1.5 of the flow.
        for (int i = 0; i < 60; i++) {
            script.meterTimes = i % 2 == 0 ? Math.sqrt(1.5) : 1;
            script.run(0.6);
        }
        script.meterTimes = 1;
        script.run(10);

        assertThat(script.story).noneMatch(line -> line.contains("outlet"));
    }

    @Test
    void withoutFlowOrPressureNothingIsToldOfOutlets() throws Exception {
        HubScript script = running(20);
        script.outletsMore = -3;
        script.run(10);
        script.currentA = 0;
        script.run(5);
        assertThat(script.story)
                .containsExactlyInAnyOrder("+outlet-blocked/boom", "-outlet-blocked/boom", "+sensor-silent/pressure");
        script.currentA = Double.NaN;
        script.run(15);
        assertThat(script.story).endsWith("+outlet-blocked/boom");
    }

    @Test
    void travelWithoutFlowIsOneAlertAndNotALowRateToo() throws Exception {
        HubScript script = running(10);
        script.flowM3ps = 0;
        script.run(8);

        assertThat(script.story).containsExactly("+travel-without-flow/boom");
        Alert alert = last(script);
        assertThat(alert.raisedUs() / 1e6).isCloseTo(10 + 2, within(0.9));
        assertThat(alert.limit()).isCloseTo(0.1 * 150e-7 * 5.5 * 36.576 / TradeUnits.LPM_M3PS, within(0.1));
        assertThat(alert.why()).contains("19.8 km/h").contains("0 L/min flow where 181 L/min");
        script.flowM3ps = Double.NaN;
        script.run(8);
        assertThat(script.story).containsExactly("+travel-without-flow/boom", "-travel-without-flow/boom");
    }

    @Test
    void aFifthOfTheFlowIsALowRateAndNotNoFlow() throws Exception {
        HubScript script = running(10);
        script.rateShare = 0.2;
        script.run(8);

        assertThat(script.story).contains("+rate-low/boom").doesNotContain("+travel-without-flow/boom");
    }

    @Test
    void flowWithoutTravelIsToldAndADribbleIsNot() throws Exception {
        double fullM3ps = 150e-7 * 10 / 3.6 * 36.576;
        HubScript dribble = running(10);
        dribble.sectionMask = 0;
        for (int i = 0; i < 100; i++) {
            // It halves every second: 2 % of the machine's flow are passed after more than five.
            dribble.flowM3ps = fullM3ps * Math.pow(0.5, i * 0.1);
            dribble.run(0.1);
        }
        HubScript little = running(10);
        little.sectionMask = 0;
        little.flowM3ps = 0.018 * fullM3ps;
        little.run(20);
        HubScript open = running(10);
        open.sectionMask = 0;
        open.flowM3ps = 0.1 * fullM3ps;
        open.run(8);
        HubScript stands = running(10);
        stands.speedMps = 0;
        stands.flowM3ps = 0.5 * fullM3ps;
        stands.run(8);
        stands.flowM3ps = 0;
        stands.run(8);

        assertThat(dribble.story).isEmpty();
        assertThat(little.story).isEmpty();
        assertThat(open.story).containsExactly("+flow-without-travel/boom");
        assertThat(last(open).why()).contains("all sections are off");
        assertThat(last(open).limit()).isCloseTo(0.02 * fullM3ps / TradeUnits.LPM_M3PS, within(1e-6));
        assertThat(stands.story).containsExactly("+flow-without-travel/boom", "-flow-without-travel/boom");
        assertThat(stands.raised.get(0).why()).contains("while the machine stands");
    }

    @Test
    void pressureOutsideNamesTheSpeedThatBringsItBack() throws Exception {
        HubScript script = running(10);
        script.speedMps = 3.5;
        script.run(6);

        assertThat(script.story).containsExactly("+pressure-outside/boom");
        // By the orifice law, 100 kPa of UAN 28 % through 2.8 L/min outlets at 150 L/ha and 0.508 m.
        Orifice orifice = Orifice.ratedAt(2.8 * TradeUnits.LPM_M3PS, 200_000);
        double edgeMps = orifice.flowM3ps(100_000, 1280 / 998.2) / (150e-7 * 0.508);
        assertThat(last(script).act())
                .isEqualTo("Drive faster than " + Units.METRIC.speed(edgeMps) + ", or fit a smaller metering size.");
        assertThat(last(script).limit()).isEqualTo(100);
        script.speedMps = 5.5;
        script.run(6);
        assertThat(script.story).containsExactly("+pressure-outside/boom", "-pressure-outside/boom");
    }

    @Test
    void pressureOutsideAtTheRightSpeedIsForThePlumbing() throws Exception {
        HubScript script = running(10);
        script.rateShare = 0.6;
        script.run(6);

        assertThat(script.raised)
                .filteredOn(alert -> alert.kind() == AlertKind.PRESSURE_OUTSIDE)
                .singleElement()
                .satisfies(alert -> assertThat(alert.act())
                        .startsWith("Look at pump, strainer and regulating valve")
                        .contains("150 L/ha at 19.8 km/h needs 207 kPa"));
    }

    @Test
    void aBiasBelowTheLimitStaysSilentAndOneWildReadingToo() throws Exception {
        HubScript script = running(10);
        script.rateShare = 1.09;
        script.run(300);
        script.rateShare = 1;
        script.run(5);
        for (int i = 0; i < 20; i++) {
            // One reading of the receiver in fifty is off by a third.
            script.speedMps = 5.5 * 0.67;
            script.run(0.1);
            script.speedMps = 5.5;
            script.run(4.9);
        }

        assertThat(script.raised).noneMatch(alert -> alert.kind() == AlertKind.RATE_HIGH);
    }

    @Test
    void aBiasPastTheLimitIsToldSinceItBegan() throws Exception {
        HubScript script = running(10);
        script.rateShare = 1.11;
        script.run(6);

        assertThat(script.story).containsExactly("+rate-high/boom");
        assertThat(last(script).sinceUs() / 1e6).isCloseTo(10.4, within(0.4));
        assertThat(last(script).raisedUs() / 1e6).isBetween(11.0, 12.5);
    }

    @Test
    void everyFindingSpeaksTheUnitsOfTheRig() throws Exception {
        Rig rig = RigFile.read(Path.of("docs", "example-rig.yaml")).withUnits(Units.US);
        HubScript script = running(rig, 20);
        script.outletsMore = 5;
        script.run(10);
        script.flowM3ps = 0;
        script.run(5);
        script.flowM3ps = 1e-3;
        script.sectionMask = 0;
        script.run(6);

        assertThat(script.raised)
                .extracting(Alert::kind)
                .contains(AlertKind.OUTLET_OPEN, AlertKind.FLOW_WITHOUT_TRAVEL);
        assertThat(words(script))
                .noneMatch(text -> text.contains("kPa") || text.contains("L/") || text.contains("km/h"));
    }
}
