package evenfall.sim.sensor;

import evenfall.sim.chance.Chance;
import evenfall.sim.wire.HubSentences;
import evenfall.sim.wire.Uart;
import java.util.List;
import java.util.Optional;

/**
 * The sensor hub: reads its sensors at fixed times and sends what they give.
 *
 * <p>Heights go out 20 times a second, flow and pressure 10 times, switches and tank level 5 times, air temperature and the hub's own state once;
 * wheel pulses, where there are any, 10 times. Their moments lie apart, so that no two sentences meet on the line. After a restart
 * they stay where they were, by the time of the run; a hub would count them from its start.
 */
public final class SensorHub {
    /**
     * @param clock its microseconds
     * @param boots how often it has started, as it says itself
     * @param firmware version number
     * @param loopJitterUs a sentence goes out up to so many µs after its moment: the hub's loop has other work too
     */
    public record Spec(HubClock clock, long boots, long firmware, int loopJitterUs) {}

    /** A height sensor and where it looks down from, m right of the centre line. */
    public record Echo(double rightM, HeightSensor sensor) {}

    private static final long MASK = 0xffffffffL;

    private static final Moments HEIGHTS = new Moments(50_000, 0, 0);
    private static final Moments HUB = new Moments(1_000_000, 5_000, 1);
    private static final Moments FLOW = new Moments(100_000, 15_000, 2);
    private static final Moments SECTIONS = new Moments(200_000, 30_000, 3);
    private static final Moments WHEEL = new Moments(100_000, 45_000, 4);
    private static final Moments PRESSURE = new Moments(100_000, 65_000, 5);
    private static final Moments AIR = new Moments(1_000_000, 85_000, 6);
    private static final Moments LEVEL = new Moments(200_000, 95_000, 7);

    private final Spec spec;
    private final Uart line;
    private final Optional<PulseMeter> flow;
    private final Optional<PulseMeter> wheel;
    private final HeightChannel[] heights;
    private final Optional<PressureTransmitter> pressure;
    private final Optional<AirThermometer> air;
    private final Optional<TankGauge> tank;
    private final boolean switches;
    private final Chance[] jitter = new Chance[8];
    private final HubSentences sentences = new HubSentences();
    private final HubTrouble trouble = new Hands();
    private final long[] echoUs;
    private HubClock clock;
    private long boots;
    private long bootUs;
    private long flowBase;
    private long wheelBase;
    private long deadSwitches;
    private boolean swapped;
    private final boolean[] pairSwapped;
    private boolean hung;
    private boolean dark;
    private boolean starts;

    private record Moments(long everyUs, long phaseUs, int kind) {
        boolean due(long timeUs) {
            return timeUs % everyUs == phaseUs;
        }
    }

    /** A hub without a wheel sensor and without a gauge in the tank. */
    public SensorHub(
            Spec spec,
            Uart line,
            Optional<PulseMeter> flow,
            List<Echo> echoes,
            Optional<PressureTransmitter> pressure,
            Optional<AirThermometer> air,
            boolean switches,
            Chance chance) {
        this(spec, line, flow, Optional.empty(), echoes, pressure, air, Optional.empty(), switches, chance);
    }

    /**
     * @param line to the controller
     * @param flow the meter, when there is one
     * @param wheel the wheel sensor, when there is one
     * @param echoes height sensors from the left; none is allowed
     * @param pressure the transmitter, when there is one
     * @param air the thermometer, when there is one
     * @param tank the gauge in the tank, when there is one
     * @param switches whether the section switches are wired to the hub
     * @param chance for the loop's jitter
     */
    public SensorHub(
            Spec spec,
            Uart line,
            Optional<PulseMeter> flow,
            Optional<PulseMeter> wheel,
            List<Echo> echoes,
            Optional<PressureTransmitter> pressure,
            Optional<AirThermometer> air,
            Optional<TankGauge> tank,
            boolean switches,
            Chance chance) {
        this.spec = spec;
        this.line = line;
        this.flow = flow;
        this.wheel = wheel;
        this.pressure = pressure;
        this.air = air;
        this.tank = tank;
        this.switches = switches;
        // A stream for each kind of sentence: a sensor more leaves the moments of the others alone.
        long seed = chance.nextLong();
        for (int kind = 0; kind < jitter.length; kind++) {
            jitter[kind] = Chance.stream(seed, "sentences of kind " + kind);
        }
        this.clock = spec.clock();
        this.boots = spec.boots();
        this.heights = new HeightChannel[echoes.size()];
        for (int i = 0; i < heights.length; i++) {
            heights[i] = new HeightChannel(echoes.get(i).rightM(), echoes.get(i).sensor());
        }
        this.echoUs = new long[heights.length];
        this.pairSwapped = new boolean[heights.length];
    }

    /**
     * Sends what is due. Its sensors are read, and its loop takes its time, also while nothing is sent: their random streams go on as
     * if nothing were.
     *
     * @param timeUs µs of the run, a multiple of 5000
     */
    public void at(long timeUs, Scene scene) {
        if (starts && !dark) {
            start(timeUs);
        }
        long tick = clock.tick((double) (timeUs - bootUs));
        if (HEIGHTS.due(timeUs) && heights.length > 0) {
            for (int i = 0; i < heights.length; i++) {
                echoUs[swapped != pairSwapped[i] ? heights.length - 1 - i : i] = heights[i].echoUs(scene);
            }
            send(HEIGHTS, timeUs, sentences.heights(tick, echoUs));
        }
        if (HUB.due(timeUs)) {
            send(HUB, timeUs, sentences.hub(tick, boots, spec.firmware()));
        }
        if (FLOW.due(timeUs) && flow.isPresent()) {
            send(FLOW, timeUs, sentences.flow(tick, flow.get().count() - flowBase & MASK, edgeTick(flow.get())));
        }
        if (SECTIONS.due(timeUs) && switches) {
            send(SECTIONS, timeUs, sentences.sections(tick, scene.sectionMask() & ~deadSwitches));
        }
        if (WHEEL.due(timeUs) && wheel.isPresent()) {
            send(WHEEL, timeUs, sentences.wheel(tick, wheel.get().count() - wheelBase & MASK, edgeTick(wheel.get())));
        }
        if (PRESSURE.due(timeUs) && pressure.isPresent()) {
            send(PRESSURE, timeUs, sentences.pressure(tick, pressure.get().currentUa(scene.pressurePa())));
        }
        if (AIR.due(timeUs) && air.isPresent()) {
            send(AIR, timeUs, sentences.air(tick, air.get().centiDegC(scene.airC())));
        }
        if (LEVEL.due(timeUs) && tank.isPresent()) {
            send(LEVEL, timeUs, sentences.level(tick, tank.get().counts(scene.tankGoneM3())));
        }
    }

    private long edgeTick(PulseMeter meter) {
        return meter.hasEdge() && meter.lastEdgeUs() >= bootUs
                ? clock.tick(meter.lastEdgeUs() - bootUs)
                : HubSentences.UNKNOWN;
    }

    private void start(long timeUs) {
        starts = false;
        boots++;
        bootUs = timeUs;
        clock = new HubClock(0, clock.driftPpm());
        flowBase = flow.isPresent() ? flow.get().count() : 0;
        wheelBase = wheel.isPresent() ? wheel.get().count() : 0;
    }

    private void send(Moments moments, long timeUs, byte[] sentence) {
        Chance chance = jitter[moments.kind()];
        long readyUs = timeUs + (spec.loopJitterUs() > 0 ? chance.nextInt(spec.loopJitterUs()) : 0);
        if (!hung && !dark) {
            line.send(readyUs, sentence);
        }
    }

    /** What can go wrong with it and with what is wired to it. */
    public HubTrouble trouble() {
        return trouble;
    }

    private final class Hands implements HubTrouble {
        @Override
        public void foam(int height, boolean on) {
            heights[height].foam(on);
        }

        @Override
        public void deafen(int height, boolean on) {
            heights[height].deafen(on);
        }

        @Override
        public void stick(int height, boolean on) {
            heights[height].stick(on);
        }

        @Override
        public void shake(int height, double shakeM, Chance luck) {
            heights[height].shake(shakeM, luck);
        }

        @Override
        public void doubleEcho(int height, double share, Chance luck) {
            heights[height].doubleEcho(share, luck);
        }

        @Override
        public void move(int height, double asideM) {
            heights[height].move(asideM);
        }

        @Override
        public void raise(int height, double raisedM) {
            heights[height].raise(raisedM);
        }

        @Override
        public void canopy(int height, double canopyM) {
            heights[height].canopy(canopyM);
        }

        @Override
        public void swap(boolean on) {
            swapped = on;
        }

        @Override
        public void swapPair(int height, boolean on) {
            pairSwapped[height] = on;
            pairSwapped[heights.length - 1 - height] = on;
        }

        @Override
        public void switchDead(int section, boolean on) {
            deadSwitches = on ? deadSwitches | 1L << section : deadSwitches & ~(1L << section);
        }

        @Override
        public void hang(boolean on) {
            hung = on;
        }

        @Override
        public void darken(boolean on) {
            dark = on;
            starts = true;
        }
    }
}
