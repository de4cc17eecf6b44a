package evenfall.sim.sensor;

import evenfall.sim.chance.Chance;
import evenfall.sim.wire.HubSentences;
import evenfall.sim.wire.Uart;
import java.util.List;
import java.util.Optional;

/**
 * The sensor hub: reads its sensors at fixed times and sends what they give.
 *
 * <p>Heights go out 20 times a second, flow and pressure 10 times, switches 5 times, air temperature and the hub's own state once;
 * their moments lie apart, so that no two sentences meet on the line.
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
    public record Echo(double rightM, EchoSensor sensor) {}

    private static final Moments HEIGHTS = new Moments(50_000, 0);
    private static final Moments HUB = new Moments(1_000_000, 5_000);
    private static final Moments FLOW = new Moments(100_000, 15_000);
    private static final Moments SECTIONS = new Moments(200_000, 30_000);
    private static final Moments PRESSURE = new Moments(100_000, 65_000);
    private static final Moments AIR = new Moments(1_000_000, 85_000);

    private final Spec spec;
    private final Uart line;
    private final Optional<PulseMeter> flow;
    private final List<Echo> echoes;
    private final Optional<PressureTransmitter> pressure;
    private final Optional<AirThermometer> air;
    private final boolean switches;
    private final Chance chance;
    private final HubSentences sentences = new HubSentences();
    private final long[] echoUs;

    private record Moments(long everyUs, long phaseUs) {
        boolean due(long timeUs) {
            return timeUs % everyUs == phaseUs;
        }
    }

    /**
     * @param line to the controller
     * @param flow the meter, when there is one
     * @param echoes height sensors from the left; none is allowed
     * @param pressure the transmitter, when there is one
     * @param air the thermometer, when there is one
     * @param switches whether the section switches are wired to the hub
     * @param chance for the loop's jitter
     */
    public SensorHub(
            Spec spec,
            Uart line,
            Optional<PulseMeter> flow,
            List<Echo> echoes,
            Optional<PressureTransmitter> pressure,
            Optional<AirThermometer> air,
            boolean switches,
            Chance chance) {
        this.spec = spec;
        this.line = line;
        this.flow = flow;
        this.echoes = List.copyOf(echoes);
        this.pressure = pressure;
        this.air = air;
        this.switches = switches;
        this.chance = chance;
        this.echoUs = new long[echoes.size()];
    }

    /**
     * Sends what is due.
     *
     * @param timeUs µs of the run, a multiple of 5000
     */
    public void at(long timeUs, Scene scene) {
        long tick = spec.clock().tick((double) timeUs);
        if (HEIGHTS.due(timeUs) && echoUs.length > 0) {
            for (int i = 0; i < echoUs.length; i++) {
                Echo echo = echoes.get(i);
                echoUs[i] = echo.sensor().echoUs(scene.heightAtM(echo.rightM()), scene.airC());
            }
            send(timeUs, sentences.heights(tick, echoUs));
        }
        if (HUB.due(timeUs)) {
            send(timeUs, sentences.hub(tick, spec.boots(), spec.firmware()));
        }
        if (FLOW.due(timeUs) && flow.isPresent()) {
            PulseMeter meter = flow.get();
            long edge = meter.hasEdge() ? spec.clock().tick(meter.lastEdgeUs()) : HubSentences.UNKNOWN;
            send(timeUs, sentences.flow(tick, meter.count(), edge));
        }
        if (SECTIONS.due(timeUs) && switches) {
            send(timeUs, sentences.sections(tick, scene.sectionMask()));
        }
        if (PRESSURE.due(timeUs) && pressure.isPresent()) {
            send(timeUs, sentences.pressure(tick, pressure.get().currentUa(scene.pressurePa())));
        }
        if (AIR.due(timeUs) && air.isPresent()) {
            send(timeUs, sentences.air(tick, air.get().centiDegC(scene.airC())));
        }
    }

    private void send(long timeUs, byte[] sentence) {
        line.send(timeUs + (spec.loopJitterUs() > 0 ? chance.nextInt(spec.loopJitterUs()) : 0), sentence);
    }
}
