package evenfall.sim.fault;

import evenfall.outlet.OutletCatalogue;
import evenfall.rig.BoomLayout;
import evenfall.sim.chance.Chance;
import evenfall.sim.plumbing.Plumbing;
import evenfall.sim.plumbing.PlumbingSpec;
import evenfall.sim.sensor.AirThermometer;
import evenfall.sim.sensor.EchoSensor;
import evenfall.sim.sensor.GnssReceiver;
import evenfall.sim.sensor.HubClock;
import evenfall.sim.sensor.PressureTransmitter;
import evenfall.sim.sensor.PulseMeter;
import evenfall.sim.sensor.Scene;
import evenfall.sim.sensor.SensorHub;
import evenfall.sim.wire.Uart;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Fifteen seconds of a machine without a field under it: 72 outlets in 6 sections, 150 L/ha of SG 1.28, a speed that swings between
 * 4.5 and 5.5 m/s in 8 s, heights that swing at each place in their own way, section 6 off from 6.5 to 7.5 s. Steps of 5 ms in the
 * order in which a world makes them. All invented.
 */
final class Bench implements Scene {
    static final double SECONDS = 15;
    static final FaultPlaces PLACES = new FaultPlaces(
            72,
            List.of("1", "2", "3", "4", "5", "6"),
            List.of("left-tip", "left-mid", "centre", "right-mid", "right-tip"),
            List.of("hub", "gnss"),
            List.of(Part.FLOW_METER, Part.PRESSURE, Part.AIR, Part.SWITCHES, Part.WHEEL, Part.GNSS));

    private static final long SEED = 7;
    private static final double[] HEIGHT_RIGHT_M = {-17, -9, 0, 9, 17};

    /** A sentence that arrived. */
    record Arrival(long timeUs, String text) {
        String kind() {
            return text.startsWith("$PEVF") ? text.substring(5, 6) : text.length() > 6 ? text.substring(3, 6) : "?";
        }

        String field(int i) {
            return text.substring(0, text.indexOf('*')).split(",", -1)[i];
        }

        long number(int i) {
            return Long.parseLong(field(i));
        }
    }

    /** What is true at one moment, and what has flowed in the 20 ms before it. */
    record Truth(long timeUs, double[] litres, double[] leakedL, double flowM3ps, double feedPa, double outlet14Pa) {}

    final List<Arrival> arrivals = new ArrayList<>();
    final List<Truth> truths = new ArrayList<>();
    final OutletMounts mounts = new OutletMounts(72);
    final Plumbing plumbing;
    final Map<String, Double> machine = new TreeMap<>();
    private final FaultParts parts;
    private final SensorHub hub;
    private final GnssReceiver gnss;
    private final PulseMeter flow = new PulseMeter(150_000, 0.01, 0, Chance.stream(SEED, "flow"));
    private final PulseMeter wheel = new PulseMeter(40, 0.01, 0, Chance.stream(SEED, "wheel"));
    private double timeS;
    private double xM;
    private long mask = 0b111111;
    /** What each was at the moment in the middle of the fault, for what is not sent. */
    double rightOf100 = Double.NaN;

    double backOf100 = Double.NaN;
    double lineLeakM3;

    Bench() {
        List<BoomLayout.Section> sections = new ArrayList<>();
        for (int s = 0; s < 6; s++) {
            sections.add(new BoomLayout.Section(Integer.toString(s + 1), 12 * s, 12));
        }
        plumbing = new Plumbing(
                PlumbingSpec.ordinary(),
                new BoomLayout(72, 0.508, 0.1905, 0.5, 6, sections),
                OutletCatalogue.builtIn("five-stream").fitted(0.508),
                1.28,
                150e-7,
                speedMps(),
                Chance.stream(SEED, "outlets"));
        Uart hubLine = new Uart("hub", 115_200, this::arrived);
        Uart gnssLine = new Uart("gnss", 115_200, this::arrived);
        List<SensorHub.Echo> echoes = new ArrayList<>();
        for (double rightM : HEIGHT_RIGHT_M) {
            echoes.add(new SensorHub.Echo(
                    rightM, new EchoSensor(EchoSensor.Spec.usual(), 0.1, Chance.stream(SEED, "height " + rightM))));
        }
        Optional<PressureTransmitter> pressure = Optional.of(new PressureTransmitter(
                new PressureTransmitter.Spec(0.004, 0.020, 0, 1_000_000, 0, 800), Chance.stream(SEED, "pressure")));
        Optional<AirThermometer> air =
                Optional.of(new AirThermometer(new AirThermometer.Spec(0, 0.05), Chance.stream(SEED, "air")));
        hub = new SensorHub(
                new SensorHub.Spec(new HubClock(2_000_000, 20), 1, 1, 300),
                hubLine,
                Optional.of(flow),
                Optional.of(wheel),
                echoes,
                pressure,
                air,
                Optional.empty(),
                true,
                Chance.stream(SEED, "hub"));
        gnss = new GnssReceiver(GnssReceiver.Spec.usual(), gnssLine, Chance.stream(SEED, "gnss"));
        parts = new FaultParts(
                plumbing.trouble(),
                mounts,
                hub.trouble(),
                Optional.of(flow),
                Optional.of(wheel),
                pressure,
                air,
                Optional.of(gnss),
                List.of(hubLine, gnssLine),
                machineTrouble());
    }

    private void arrived(long timeUs, String port, byte[] bytes) {
        arrivals.add(new Arrival(timeUs, new String(bytes, StandardCharsets.ISO_8859_1)));
    }

    private MachineTrouble machineTrouble() {
        return new MachineTrouble() {
            @Override
            public void slowWing(boolean left, double lost) {
                machine.put("wing " + (left ? "left" : "right"), lost);
            }

            @Override
            public void slowControl(double lost) {
                machine.put("slow", lost);
            }

            @Override
            public void stopControl(boolean on) {
                machine.put("dead", on ? 1.0 : 0);
            }

            @Override
            public void setWrong(double wrongM) {
                machine.put("set", wrongM);
            }

            @Override
            public void softenTyre(int at, double sunkM) {
                machine.put("tyre " + at, sunkM);
            }
        };
    }

    static Bench run(ScriptedFault... faults) {
        Bench bench = new Bench();
        FaultScript script = new FaultScript(List.of(faults), SEED);
        script.apply(0, bench.parts);
        for (long timeUs = 0; timeUs < Math.round(SECONDS * 1e6); ) {
            double speed = bench.speedMps();
            bench.plumbing.step(0.005, speed);
            bench.flow.pass((double) timeUs, 5000, bench.plumbing.meteredM3ps() * 0.005);
            bench.wheel.pass((double) timeUs, 5000, speed * 0.005);
            timeUs += 5000;
            bench.timeS = timeUs * 1e-6;
            bench.xM += speed * 0.005;
            script.apply(timeUs, bench.parts);
            if (timeUs % 20_000 == 0) {
                bench.note(timeUs);
            }
            bench.hub.at(timeUs, bench);
            bench.gnss.at(timeUs, bench);
        }
        return bench;
    }

    private void note(long timeUs) {
        double[] litres = plumbing.drain().clone();
        double[] leaked = new double[72];
        for (int i = 0; i < 72; i++) {
            litres[i] *= 1000;
            leaked[i] = 1000 * plumbing.leakedM3(i);
        }
        truths.add(new Truth(
                timeUs,
                litres,
                leaked,
                plumbing.outletsFlowM3ps(),
                plumbing.feedPressurePa(),
                plumbing.outletPressurePa(14)));
        if (timeUs == 6_500_000) {
            mask = 0b011111;
            plumbing.switchSections(mask);
        } else if (timeUs == 7_500_000) {
            mask = 0b111111;
            plumbing.switchSections(mask);
        } else if (timeUs == 6_000_000) {
            rightOf100 = mounts.rightM(16, 0.1, 0);
            backOf100 = mounts.backM(16, 0.1, 0);
        } else if (timeUs == 10_000_000) {
            lineLeakM3 = plumbing.lineLeakM3();
        }
    }

    List<Arrival> of(String kind, double fromS, double toS) {
        return arrivals.stream()
                .filter(a -> a.kind().equals(kind) && a.timeUs() >= fromS * 1e6 && a.timeUs() < toS * 1e6)
                .toList();
    }

    double litres(int outlet, double fromS, double toS) {
        return truths.stream()
                .filter(t -> t.timeUs() > fromS * 1e6 && t.timeUs() <= toS * 1e6)
                .mapToDouble(t -> t.litres()[outlet])
                .sum();
    }

    double leaked(int outlet, double fromS, double toS) {
        return truths.stream()
                .filter(t -> t.timeUs() > fromS * 1e6 && t.timeUs() <= toS * 1e6)
                .mapToDouble(t -> t.leakedL()[outlet])
                .sum();
    }

    double allLitres(double fromS, double toS) {
        double sum = 0;
        for (int i = 0; i < 72; i++) {
            sum += litres(i, fromS, toS);
        }
        return sum;
    }

    Truth at(double seconds) {
        return truths.get((int) Math.round(seconds * 50) - 1);
    }

    /** Pulses of a counter between two moments. */
    double pulses(String kind, double fromS, double toS) {
        List<Arrival> all = of(kind, fromS, toS);
        return all.get(all.size() - 1).number(2) - all.get(0).number(2);
    }

    @Override
    public double heightAtM(double rightM) {
        return 0.5 + 0.1 * StrictMath.sin(1.3 * timeS + 0.4 * rightM);
    }

    @Override
    public double pressurePa() {
        return plumbing.feedPressurePa();
    }

    @Override
    public long sectionMask() {
        return mask;
    }

    @Override
    public double airC() {
        return 15;
    }

    @Override
    public double speedMps() {
        return 5 + 0.5 * StrictMath.sin(2 * StrictMath.PI / 8 * timeS);
    }

    @Override
    public double xM() {
        return xM;
    }
}
