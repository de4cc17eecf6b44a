package evenfall.monitor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.judge.Alert;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.sense.Unknown;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class MonitorTest {
    private static Rig rigWith(String outlet) throws Exception {
        String text =
                Files.readString(Path.of("docs", "example-rig.yaml")).replace("type: five-stream", "type: " + outlet);
        return RigFile.parse("rig.yaml", text, Path.of("."));
    }

    @Test
    void steadyWorkIsSeenAsItIsAndRaisesNothing() throws Exception {
        HubScript script = new HubScript().run(10);

        Live live = script.last();
        assertThat(script.story).isEmpty();
        assertThat(live.speedMps().get()).isCloseTo(5.5, within(0.001));
        assertThat(live.rateM().get() / 150e-7).isCloseTo(1, within(0.001));
        assertThat(live.rateError().get()).isCloseTo(0, within(0.001));
        // 150 L/ha at 5.5 m/s through 2.8 L/min (water, 200 kPa) outlets under UAN 28 %: by the orifice law 206.9 kPa.
        assertThat(live.pressurePa().get()).isCloseTo(206_900, within(500.0));
        assertThat(live.widthM().get()).isCloseTo(36.576, within(1e-9));
        assertThat(live.boom().heightM().get()).isCloseTo(0.5, within(0.001));
        assertThat(live.boom().rows().rowCv()).isLessThan(0.06);
        assertThat(live.segments()).extracting(Live.Segment::name).containsExactly("left", "centre", "right");
    }

    @Test
    void livesComeFiveTimesASecondOnTheGrid() throws Exception {
        HubScript script = new HubScript().run(4);

        assertThat(script.lives).hasSize(20);
        assertThat(script.lives.get(0).timeUs()).isEqualTo(200_000);
        assertThat(script.last().timeUs()).isEqualTo(4_000_000);
    }

    @Test
    void rateErrorIsUnknownAtStandstill() throws Exception {
        HubScript script = new HubScript();
        script.speedMps = 0;
        script.run(3);

        assertThat(script.last().rateError().unknown()).isEqualTo(Unknown.STANDING);
        assertThat(script.last().boom().unknown()).isEqualTo(Unknown.STANDING);
        assertThat(script.story).isEmpty();
    }

    @Test
    void tooMuchIsRaisedOnceAndClearedWhenItIsRight() throws Exception {
        HubScript script = new HubScript().run(5);
        script.rateShare = 1.2;
        script.run(10);
        script.rateShare = 1;
        script.run(10);

        assertThat(script.story).containsExactly("+rate-high/boom", "-rate-high/boom");
        Alert alert = script.raised.get(0);
        assertThat(alert.why()).contains("180 L/ha").contains("150").contains("+20 %");
        assertThat(alert.act()).isNotBlank();
        assertThat(alert.value()).isCloseTo(20, within(1.0));
        // The step is at 5 s; half a second of averaging, then 1 s and 5 m of holding.
        assertThat(alert.raisedUs()).isBetween(6_000_000L, 7_200_000L);
    }

    @Test
    void slowingDownAtAnEvenRateIsNotTooMuch() throws Exception {
        HubScript script = new HubScript().run(5);
        int before = script.lives.size();
        // 1 m/s² from 5.5 to 2.5 m/s; the paper machine meters without lag, so the true error is none.
        for (int i = 0; i < 60; i++) {
            script.speedMps -= 0.05;
            script.run(0.05);
        }
        for (Live live : script.lives.subList(before, script.lives.size())) {
            assertThat(live.rateError().get()).isCloseTo(0, within(0.04));
        }
    }

    @Test
    void tooLittleIsRateLow() throws Exception {
        HubScript script = new HubScript().run(3);
        script.rateShare = 0.85;
        script.run(5);

        assertThat(script.story).containsExactly("+rate-low/boom");
        assertThat(script.raised.get(0).value()).isNegative();
    }

    @Test
    void aDivingWingIsOneAlertThatNamesWindowAndRemedy() throws Exception {
        HubScript script = new HubScript(rigWith("three-stream")).run(3);
        script.heightM = new double[] {0.25, 0.38, 0.5, 0.5, 0.5};
        script.run(4);

        assertThat(script.story).containsExactly("+wing-low/left");
        assertThat(script.raised.get(0).why())
                .contains("left wing")
                .contains("three-stream")
                .contains("kPa");
        assertThat(script.raised.get(0).act()).contains("Raise the left wing to 0.50 m");
        Arrays.fill(script.heightM, 0.5);
        script.run(4);
        assertThat(script.story).containsExactly("+wing-low/left", "-wing-low/left");
    }

    @Test
    void whatHurtsThreeStreamsDoesNotHurtABar() throws Exception {
        HubScript script = new HubScript(rigWith("streamer-bar")).run(3);
        script.heightM = new double[] {0.25, 0.38, 0.5, 0.6, 0.75};
        script.run(4);

        assertThat(script.story).isEmpty();
    }

    @Test
    void aLiftedWingIsWingHigh() throws Exception {
        HubScript script = new HubScript(rigWith("three-stream")).run(3);
        script.heightM = new double[] {0.5, 0.5, 0.5, 0.65, 0.9};
        script.run(4);

        assertThat(script.story).containsExactly("+wing-high/right");
        assertThat(script.raised.get(0).act()).contains("Lower the right wing");
    }

    @Test
    void aBoomSetTooLowLeavesGapsUnderItsMiddle() throws Exception {
        HubScript script = new HubScript(rigWith("three-stream")).run(3);
        Arrays.fill(script.heightM, 0.3);
        script.run(4);

        assertThat(script.story).containsExactlyInAnyOrder("+wing-low/left", "+wing-low/right", "+bands-gapped/boom");
    }

    @Test
    void lowPressureNarrowsThePatternAndTheRemedyIsPressure() throws Exception {
        HubScript script = new HubScript(rigWith("seven-stream")).run(3);
        script.currentA = 0.004 + 0.016 * 0.005;
        script.run(4);

        assertThat(script.story).containsExactly("+bands-gapped/boom", "+pressure-outside/boom");
        assertThat(script.raised.get(0).act()).contains("Raise the pressure");
    }

    @Test
    void streamsThatRunIntoTheirNeighboursAreDoubledBands() throws Exception {
        HubScript script = new HubScript(rigWith("three-stream")).run(3);
        Arrays.fill(script.heightM, 0.75);
        script.run(4);

        assertThat(script.story)
                .containsExactlyInAnyOrder("+wing-high/left", "+wing-high/right", "+bands-doubled/boom");
        assertThat(script.raised).anySatisfy(alert -> {
            assertThat(alert.why()).contains("run into their neighbours'");
            assertThat(alert.act()).isEqualTo("Lower the boom to 0.50 m (it is at 0.75 m).");
        });
    }

    @Test
    void alertsSpeakTheUnitsOfTheRig() throws Exception {
        HubScript script = new HubScript(rigWith("three-stream").withUnits(Units.US)).run(3);
        Arrays.fill(script.heightM, 0.75);
        script.run(4);

        // 0.75 m is 29.53 in; that is a jump that no boom makes, and filters may be 2 mm off yet.
        assertThat(script.raised)
                .extracting(Alert::act)
                .anyMatch(act -> act.matches("Lower the boom to 19\\.7 in \\(it is at 29\\.[45] in\\)\\."));
        assertThat(script.raised).extracting(Alert::why).noneMatch(why -> why.contains(" m ") || why.contains("kPa"));
    }

    @Test
    void aDeadHubIsOneAlertAndEverythingOnItIsUnknown() throws Exception {
        HubScript script = new HubScript().run(3);
        script.hubSpeaks = false;
        script.run(5);

        assertThat(script.story).containsExactly("+sensor-silent/hub");
        assertThat(script.last().flowM3ps().unknown()).isEqualTo(Unknown.SILENT);
        assertThat(script.last().rateError().unknown()).isEqualTo(Unknown.NEEDS_FLOW);
        assertThat(script.last().boom().rows()).isNull();
        assertThat(script.last().sensorHeightM().get(0).unknown()).isEqualTo(Unknown.SILENT);
        script.hubSpeaks = true;
        script.run(5);
        assertThat(script.story).containsExactly("+sensor-silent/hub", "-sensor-silent/hub");
    }

    @Test
    void anUnpluggedPortIsSaidToBeGone() throws Exception {
        HubScript script = new HubScript().run(3);
        script.hubSpeaks = false;
        script.lose("hub");
        script.run(4);

        assertThat(script.raised).hasSize(1);
        assertThat(script.raised.get(0).why()).contains("hub is not there");
    }

    @Test
    void aDeafHeightSensorIsNamedAndItsWingIsUnknown() throws Exception {
        HubScript script = new HubScript().run(3);
        script.echo[0] = false;
        script.run(5);

        assertThat(script.story).containsExactly("+sensor-silent/left-tip");
        assertThat(script.raised.get(0).why()).contains("left-tip").contains("no echo");
        assertThat(script.last().segments().get(0).unknown()).isEqualTo(Unknown.NEEDS_HEIGHT);
        assertThat(script.last().segments().get(2).rows()).isNotNull();
    }

    @Test
    void aBrokenPressureLoopLeavesThePatternToTheFlow() throws Exception {
        HubScript script = new HubScript().run(3);
        double before = script.last().boom().rows().rowCv();
        script.currentA = 0;
        script.run(5);

        assertThat(script.story).containsExactly("+sensor-silent/pressure");
        assertThat(script.last().boom().rows().rowCv()).isCloseTo(before, within(0.002));
    }

    @Test
    void aLostFixIsSpeedLostAndASilentReceiverIsSilent() throws Exception {
        HubScript lost = new HubScript().run(3);
        lost.fix = false;
        lost.run(5);
        HubScript silent = new HubScript().run(3);
        silent.receiverSpeaks = false;
        silent.run(6);

        assertThat(lost.story).containsExactly("+speed-lost/gnss");
        assertThat(lost.last().rateError().unknown()).isEqualTo(Unknown.NEEDS_SPEED);
        assertThat(silent.story).containsExactly("+sensor-silent/gnss");
    }

    @Test
    void aReceiverThatHasNotSpokenYetHasNotLostItsSpeed() throws Exception {
        HubScript script = new HubScript();
        script.receiverSpeaks = false;
        script.run(6);

        assertThat(script.story).containsExactly("+sensor-silent/gnss");
    }

    @Test
    void aReceiverThatSpeaksOfSatellitesOnlyHasNoSpeedToGive() throws Exception {
        HubScript script = new HubScript();
        script.receiverSpeaks = false;
        for (int i = 0; i < 60; i++) {
            script.say("gnss", "GPGSA,A,1,,,,,,,,,,,,,,,");
            script.run(0.1);
        }

        assertThat(script.story).containsExactly("+speed-lost/gnss");
    }

    @Test
    void noiseOnTheWireIsCountedAndSurvived() throws Exception {
        HubScript script = new HubScript().run(3);
        script.say("hub", "PEVFQ,zero,one,two");
        script.say("nowhere", "PEVFX,1");
        script.run(2);

        assertThat(script.last().wire().rejectedMalformed()).isEqualTo(1);
        assertThat(script.last().wire().ignored()).isEqualTo(1);
        assertThat(script.story).isEmpty();
    }

    @Test
    void askingForTheTimeMoreOftenChangesNothing() throws Exception {
        HubScript plain = new HubScript();
        HubScript restless = new HubScript();
        for (int i = 0; i < 100; i++) {
            plain.run(0.05);
            restless.run(0.05);
            restless.monitor.advanceTo(0);
        }

        assertThat(restless.lives).isEqualTo(plain.lives);
    }

    @Test
    void aTipThatFallsIsWarnedOfBeforeItTouches() throws Exception {
        HubScript script = new HubScript().run(3);
        double raisedAtM = Double.NaN;
        for (double heightM = 0.5; heightM > 0; heightM -= 0.05 * 0.7) {
            script.heightM[0] = heightM;
            script.run(0.05);
            if (script.story.contains("+strike-ahead/left") && Double.isNaN(raisedAtM)) {
                raisedAtM = heightM;
            }
        }
        assertThat(raisedAtM).as("at 0.7 m/s there was this much left").isGreaterThan(0.2);
        assertThat(script.raised.get(0).why())
                .matches("The left tip is at 0\\.[2-5]\\d* m and will be at about 0\\.\\d+ m in 0\\.\\d s\\.");
        assertThat(script.raised.get(0).act()).isEqualTo("Raise the left wing now, and slow down.");
        script.heightM[0] = 0.5;
        script.run(6);
        assertThat(script.story).startsWith("+strike-ahead/left").contains("-strike-ahead/left");
    }

    @Test
    void aBoomThatSwingsOrSinksSlowlyStrikesNothing() throws Exception {
        HubScript script = new HubScript().run(3);
        for (int i = 0; i < 400; i++) {
            double phase = 2 * Math.PI * 0.5 * i * 0.05;
            script.heightM[0] = 0.5 + 0.1 * Math.sin(phase);
            script.heightM[4] = 0.5 - 0.005 * i * 0.05;
            script.run(0.05);
        }
        assertThat(script.story).isEmpty();
    }

    @Test
    void aSensorInFoamIsOneAlertAndNoWingIsLow() throws Exception {
        HubScript script = new HubScript(rigWith("three-stream"));
        script.scatterM = 0.004;
        script.run(30);
        script.stuckSensor = 0;
        script.run(6);

        assertThat(script.story).containsExactly("+sensor-implausible/left-tip");
        assertThat(script.last().sensorHeightM().get(0).unknown()).isEqualTo(Unknown.STUCK);
        assertThat(script.last().segments().get(0).rows()).isNull();
        assertThat(script.last().segments().get(2).rows()).isNotNull();
        script.stuckSensor = -1;
        script.run(4);
        assertThat(script.story).containsExactly("+sensor-implausible/left-tip", "-sensor-implausible/left-tip");
    }

    @Test
    void aHubThatStartsAnewIsSaidOnceAndTheRateStaysRight() throws Exception {
        HubScript script = new HubScript().run(20.3);
        int before = script.lives.size();
        script.restartHub();
        script.run(12);

        assertThat(script.story).containsExactly("+hub-restarted/hub", "-hub-restarted/hub");
        assertThat(script.raised.get(0).why()).contains("started anew");
        for (Live live : script.lives.subList(before, script.lives.size())) {
            if (live.rateError().isKnown()) {
                assertThat(live.rateError().get()).isCloseTo(0, within(0.01));
            }
        }
        assertThat(script.last().rateError().isKnown()).isTrue();
    }

    @Test
    void aReceiverWhoseRmcHasNoSpeedIsHeardByItsVtg() throws Exception {
        HubScript script = new HubScript();
        script.receiverSpeaks = false;
        for (int i = 0; i < 50; i++) {
            script.say("gnss", "GPRMC,120000.00,A,5200.0000,N,00100.0000,E,,90.0,100326,,,A");
            script.say("gnss", "GPVTG,90.0,T,,M,10.691,N,19.800,K,A");
            script.run(0.1);
        }

        assertThat(script.last().speedMps().get()).isCloseTo(5.5, within(0.001));
        assertThat(script.story).isEmpty();
    }

    @Test
    void everyKnownQuantitySaysHowWellItIsKnown() throws Exception {
        HubScript script = new HubScript();
        script.scatterM = 0.004;
        script.run(10);

        Live live = script.last();
        assertThat(live.flowM3ps().sd() / live.flowM3ps().get()).isBetween(1e-5, 1e-2);
        assertThat(live.pressurePa().sd()).isCloseTo(2887, within(300.0));
        assertThat(live.rateError().sd()).isBetween(1e-4, 0.05);
        assertThat(live.boom().heightM().sd()).isBetween(0.005, 0.05);
        assertThat(live.sensorRateMps())
                .allSatisfy(rate -> assertThat(rate.get()).isCloseTo(0, within(4 * rate.sd())));
    }
}
