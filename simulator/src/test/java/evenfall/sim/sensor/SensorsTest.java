package evenfall.sim.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.chance.Chance;
import evenfall.sim.wire.HubSentences;
import evenfall.sim.wire.Uart;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SensorsTest {
    private static final EchoSensor.Spec QUIET = new EchoSensor.Spec(0, 0.10, 3.0, 1, 0);

    /** 331.3 √(1 + T/273.15): 343.21 m/s at 20 °C, 325.18 at −10, 351.89 at 35; computed by hand. Echo at 0.600 m, 20 °C: 3.4964 ms. */
    @Test
    void echoTimesFollowTheSpeedOfSound() {
        assertThat(EchoSensor.soundMps(20)).isCloseTo(343.21, within(0.005));
        assertThat(EchoSensor.soundMps(-10)).isCloseTo(325.18, within(0.005));
        assertThat(EchoSensor.soundMps(35)).isCloseTo(351.89, within(0.005));
        EchoSensor sensor = new EchoSensor(QUIET, 0.10, Chance.stream(1, "echo"));
        assertThat(sensor.echoUs(0.50, 20)).isEqualTo(3496);
    }

    @Test
    void hearsNothingOutsideItsRange() {
        EchoSensor sensor = new EchoSensor(QUIET, 0.10, Chance.stream(1, "echo"));
        assertThat(sensor.echoUs(-0.05, 20)).isEqualTo(HubSentences.UNKNOWN);
        assertThat(sensor.echoUs(2.95, 20)).isEqualTo(HubSentences.UNKNOWN);
        assertThat(sensor.echoUs(0.02, 20)).isPositive();
    }

    @Test
    void noiseIsAsLargeAsItIsSaidToBe() {
        EchoSensor sensor = new EchoSensor(new EchoSensor.Spec(0.010, 0.1, 3, 1, 0), 0, Chance.stream(8, "echo"));
        double sum = 0;
        double squares = 0;
        int n = 4000;
        for (int i = 0; i < n; i++) {
            double d = sensor.echoUs(0.6, 20) * EchoSensor.soundMps(20) / 2e6;
            sum += d;
            squares += d * d;
        }
        double mean = sum / n;
        assertThat(mean).isCloseTo(0.6, within(0.001));
        assertThat(Math.sqrt(squares / n - mean * mean)).isCloseTo(0.010, within(0.0005));
    }

    @Test
    void aTransmitterIsLinearBetweenItsPointsAndKeepsWithinItsCurrents() {
        PressureTransmitter transmitter = new PressureTransmitter(
                new PressureTransmitter.Spec(0.004, 0.020, 0, 1_000_000, 0, 0), Chance.stream(1, "p"));
        assertThat(transmitter.currentUa(0)).isEqualTo(4000);
        assertThat(transmitter.currentUa(200_000)).isEqualTo(7200);
        assertThat(transmitter.currentUa(1_000_000)).isEqualTo(20_000);
        assertThat(transmitter.currentUa(9_000_000)).isEqualTo(20_500);
        assertThat(transmitter.currentUa(-50_000)).isEqualTo(3800);
    }

    @Test
    void theHubSendsEachKindAtItsRateAndReceiverAndHubAreReadable() {
        List<String> sent = new ArrayList<>();
        List<Long> times = new ArrayList<>();
        Uart line = new Uart("hub", 115_200, (timeUs, port, bytes) -> {
            sent.add(new String(bytes, StandardCharsets.US_ASCII));
            times.add(timeUs);
        });
        SensorHub hub = new SensorHub(
                new SensorHub.Spec(new HubClock(0, 0), 1, 1, 300),
                line,
                Optional.of(new PulseMeter(150_000, 0, 0, Chance.stream(1, "flow"))),
                List.of(new SensorHub.Echo(0, new EchoSensor(QUIET, 0.1, Chance.stream(1, "echo")))),
                Optional.of(new PressureTransmitter(
                        new PressureTransmitter.Spec(0.004, 0.020, 0, 1_000_000, 0, 0), Chance.stream(1, "p"))),
                Optional.of(new AirThermometer(new AirThermometer.Spec(0, 0), Chance.stream(1, "air"))),
                true,
                Chance.stream(1, "loop"));
        for (long timeUs = 0; timeUs < 10_000_000; timeUs += 5000) {
            hub.at(timeUs, scene());
        }
        assertThat(count(sent, "$PEVFH")).isEqualTo(200);
        assertThat(count(sent, "$PEVFQ")).isEqualTo(100);
        assertThat(count(sent, "$PEVFP")).isEqualTo(100);
        assertThat(count(sent, "$PEVFS")).isEqualTo(50);
        assertThat(count(sent, "$PEVFT")).isEqualTo(10);
        assertThat(count(sent, "$PEVFI")).isEqualTo(10);
        assertThat(times).isSorted();
        assertThat(sent.get(0)).startsWith("$PEVFH,0,");
        assertThat(sent).anyMatch(s -> s.startsWith("$PEVFS,30000,3F*"));
        assertThat(sent).anyMatch(s -> s.startsWith("$PEVFT,85000,1500*"));
        assertThat(sent).anyMatch(s -> s.startsWith("$PEVFP,65000,7200*"));
    }

    /** One degree of latitude at 45° on WGS 84 is 111,131.7 m, one of longitude 78,846.8 m (general tables, from memory). */
    @Test
    void aReceiverGoesWhereTheMachineGoes() {
        GnssReceiver.Spec exact = new GnssReceiver.Spec(
                100_000,
                60_000,
                0,
                0,
                0,
                0,
                0,
                45.0,
                -30.0,
                90,
                GnssReceiver.Spec.usual().startUtcMs());
        List<String> sent = new ArrayList<>();
        List<Long> times = new ArrayList<>();
        GnssReceiver receiver = new GnssReceiver(
                exact,
                new Uart("gnss", 115_200, (timeUs, port, bytes) -> {
                    sent.add(new String(bytes, StandardCharsets.US_ASCII));
                    times.add(timeUs);
                }),
                Chance.stream(1, "gnss"));
        for (long timeUs = 0; timeUs <= 1_000_000; timeUs += 5000) {
            receiver.at(timeUs, scene());
        }
        assertThat(count(sent, "$GNRMC")).isEqualTo(11);
        assertThat(count(sent, "$GNVTG")).isEqualTo(11);
        assertThat(count(sent, "$GNGGA")).isEqualTo(2);
        // 1000 m east of 30° W: 1000 / 78846.8 = 0.0126828°, that is 29° 59.23903' W. 5 m/s is 9.719 knots.
        assertThat(sent.get(0)).startsWith("$GNRMC,080000.00,A,4500.00000,N,02959.23903,W,9.719,90.00,060531,,,A*");
        assertThat(times.get(0)).as("60 ms late, then 72 characters of 86.8 µs").isBetween(66_000L, 67_000L);
    }

    /** What a hub sends in 5 s, as moment and text, with some of its sensors left out. */
    private static List<String> sentBy(boolean wheel, int heights, boolean air) {
        List<String> sent = new ArrayList<>();
        PulseMeter flow = new PulseMeter(150_000, 0.01, 0, Chance.stream(1, "flow"));
        PulseMeter wheels = new PulseMeter(40, 0.01, 0, Chance.stream(1, "wheel"));
        List<SensorHub.Echo> echoes = new ArrayList<>();
        for (int i = 0; i < heights; i++) {
            echoes.add(new SensorHub.Echo(
                    i, new EchoSensor(EchoSensor.Spec.usual(), 0.1, Chance.stream(1, "height " + i))));
        }
        SensorHub hub = new SensorHub(
                new SensorHub.Spec(new HubClock(0, 0), 1, 1, 300),
                new Uart(
                        "hub",
                        115_200,
                        (timeUs, port, bytes) -> sent.add(timeUs + " " + new String(bytes, StandardCharsets.US_ASCII))),
                Optional.of(flow),
                wheel ? Optional.of(wheels) : Optional.empty(),
                echoes,
                Optional.of(new PressureTransmitter(
                        new PressureTransmitter.Spec(0.004, 0.020, 0, 1_000_000, 0, 800), Chance.stream(1, "p"))),
                air
                        ? Optional.of(new AirThermometer(new AirThermometer.Spec(0, 0.05), Chance.stream(1, "air")))
                        : Optional.empty(),
                Optional.empty(),
                true,
                Chance.stream(1, "hub"));
        for (long timeUs = 0; timeUs < 5_000_000; timeUs += 5000) {
            flow.pass((double) timeUs, 5000, 1.5e-5);
            wheels.pass((double) timeUs, 5000, 0.025);
            hub.at(timeUs + 5000, scene());
        }
        return sent;
    }

    private static List<String> without(List<String> sent, String... kinds) {
        return sent.stream()
                .filter(s -> List.of(kinds).stream().noneMatch(s::contains))
                .toList();
    }

    @Test
    void aSensorMoreLeavesTheBytesAndMomentsOfTheOthersAlone() {
        List<String> bare = sentBy(false, 2, false);
        assertThat(without(sentBy(true, 2, false), "$PEVFW")).isEqualTo(bare);
        assertThat(without(sentBy(true, 2, true), "$PEVFW", "$PEVFT")).isEqualTo(bare);
        assertThat(without(sentBy(true, 4, true), "$PEVFW", "$PEVFT", "$PEVFH")).isEqualTo(without(bare, "$PEVFH"));
        List<String> four = sentBy(false, 4, false);
        for (int i = 0; i < four.size(); i++) {
            if (four.get(i).contains("$PEVFH")) {
                String[] all = four.get(i).substring(four.get(i).indexOf('$')).split("[,*]");
                String[] two = bare.get(i).substring(bare.get(i).indexOf('$')).split("[,*]");
                assertThat(all[2]).isEqualTo(two[2]);
                assertThat(all[3]).isEqualTo(two[3]);
            }
        }
    }

    @Test
    void aRadarIsRightAtAnyTemperatureInTheTimeOfSoundAtTwentyDegrees() {
        RadarSensor radar = new RadarSensor(new RadarSensor.Spec(0, 0, 0.1, 5, 1), 0.10, Chance.stream(1, "radar"));
        assertThat(radar.echoUs(0.50, -10)).isEqualTo(3496);
        assertThat(radar.echoUs(0.50, 35)).isEqualTo(3496);
        assertThat(radar.echoUs(4.95, 20)).isEqualTo(HubSentences.UNKNOWN);
    }

    /** 0.6 m at 15 °C in air of 25 °C: 2 · 0.6 / 346.12 s; 331.3 √(1 + 25/273.15) = 346.12 m/s, computed by hand. */
    @Test
    void warmerAirUnderASensorShortensItsEchoesAndSecondEchoesDoubleThem() {
        EchoSensor warm = new EchoSensor(new EchoSensor.Spec(0, 0.1, 3, 1, 0, 0, 10), 0.1, Chance.stream(1, "echo"));
        assertThat(warm.echoUs(0.5, 15)).isEqualTo(3467);
        EchoSensor second = new EchoSensor(new EchoSensor.Spec(0, 0.1, 3, 1, 0, 0.3, 0), 0.1, Chance.stream(1, "e"));
        int doubled = 0;
        for (int i = 0; i < 2000; i++) {
            long echo = second.echoUs(0.5, 20);
            assertThat(echo).isIn(3496L, 6993L);
            doubled += echo == 6993 ? 1 : 0;
        }
        assertThat(doubled / 2000.0).isCloseTo(0.3, within(0.03));
    }

    private static long count(List<String> sent, String start) {
        return sent.stream().filter(s -> s.startsWith(start)).count();
    }

    private static Scene scene() {
        return new Scene() {
            @Override
            public double heightAtM(double rightM) {
                return 0.5;
            }

            @Override
            public double pressurePa() {
                return 200_000;
            }

            @Override
            public long sectionMask() {
                return 0b111111;
            }

            @Override
            public double airC() {
                return 15;
            }

            @Override
            public double speedMps() {
                return 5;
            }

            @Override
            public double xM() {
                return 1000;
            }
        };
    }
}
