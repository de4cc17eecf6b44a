package evenfall.monitor;

import evenfall.judge.Alert;
import evenfall.judge.Judge;
import evenfall.judge.Situation;
import evenfall.rig.Rig;
import evenfall.trace.TraceEvent;
import evenfall.wire.WireCounts;
import java.util.ArrayList;
import java.util.List;

/**
 * The core. Takes events in the order of their time and gives outputs; the same events give the same outputs.
 *
 * <p>Judgement happens on a grid of event time, five times a second. A grid moment is served before the first event at or after
 * it, so the outputs do not depend on how often {@link #advanceTo} is called between events. The tips of the boom are looked at on a
 * finer grid. One thread feeds it.
 */
public final class Monitor {
    /** Distance of the grid moments, µs. */
    public static final long GRID_US = 200_000;

    /** Distance of the moments at which tips are looked at, µs: as often as a hub sends heights. */
    static final long TIP_GRID_US = 50_000;

    private final Outputs outputs;
    private final Inputs inputs;
    private final Assessment assessment;
    private final Tips tips;
    private final Judge judge;
    private final GroundAccount ground;
    private final Judge.Listener listener;
    private final Acknowledgements acknowledgements;
    private long nowUs;
    private long nextGridUs;
    private long nextTipUs;
    private long droppedBytes;

    /** A monitor that begins with time itself. */
    public Monitor(Rig rig, Outputs outputs) {
        this(rig, outputs, 0);
    }

    /**
     * @param startUs event time at which it begins to watch, µs: nothing that was before counts as silence
     */
    public Monitor(Rig rig, Outputs outputs, long startUs) {
        this.outputs = outputs;
        this.nowUs = startUs;
        this.nextGridUs = startUs - startUs % GRID_US + GRID_US;
        this.nextTipUs = startUs - startUs % TIP_GRID_US + TIP_GRID_US;
        this.inputs = new Inputs(rig, startUs);
        this.assessment = new Assessment(rig, inputs);
        this.tips = new Tips(rig, inputs);
        this.judge = new Judge(rig, inputs.portNames(), inputs.sensorStates(startUs), inputs.speedPort());
        this.ground = new GroundAccount(rig, inputs, outputs, startUs);
        this.acknowledgements = new Acknowledgements(judge::standing, alert -> outputs.acknowledged(alert, nowUs));
        this.listener = new Judge.Listener() {
            @Override
            public void raised(Alert alert) {
                outputs.raised(alert);
            }

            @Override
            public void cleared(Alert alert, long clearedUs) {
                acknowledgements.cleared(alert);
                outputs.cleared(alert, clearedUs);
            }
        };
    }

    /**
     * Takes one event. An event from before the latest one counts as happening now: time does not run backwards here.
     */
    public void accept(TraceEvent event) {
        advanceTo(event.timeUs());
        if (event instanceof TraceEvent.Bytes bytes && bytes.port().equals(Rig.CAB_PORT)) {
            acknowledgements.bytes(bytes.bytes());
        } else if (event instanceof TraceEvent.Bytes bytes) {
            inputs.bytes(nowUs, bytes.port(), bytes.bytes());
        } else if (event instanceof TraceEvent.PortLost lost) {
            inputs.portLost(lost.port());
        } else if (event instanceof TraceEvent.PortFound found) {
            inputs.portFound(found.port());
        } else if (event instanceof TraceEvent.Dropped dropped) {
            if (dropped.port().equals(Rig.CAB_PORT)) {
                acknowledgements.cut();
            }
            inputs.cut(dropped.port());
            droppedBytes += dropped.bytes();
        } else if (event instanceof TraceEvent.End) {
            ground.end();
        }
    }

    /** Lets time pass without an event, so that what has fallen silent is noticed. */
    public void advanceTo(long timeUs) {
        // The grid's moments are moments of the tips' too.
        while (nextTipUs <= timeUs) {
            nowUs = nextTipUs;
            nextTipUs += TIP_GRID_US;
            serveTips();
            if (nowUs == nextGridUs) {
                nextGridUs += GRID_US;
                serveGrid();
            }
        }
        nowUs = Math.max(nowUs, timeUs);
    }

    private void serveTips() {
        tips.look(nowUs);
        judge.lookAhead(nowUs, 1e-6 * TIP_GRID_US, tips.left(), tips.right(), listener);
    }

    private void serveGrid() {
        assessment.assess(nowUs);
        Situation situation = assessment.situation();
        judge.look(situation, listener);
        Live live = assessment.live(judge.standing(), judge.outletsMayDiffer(), wire(), droppedBytes);
        outputs.live(live);
        ground.take(live, assessment.fall());
    }

    /** What the decoders of all ports have counted. */
    public WireCounts wire() {
        return inputs.wire().plus(acknowledgements.counts());
    }

    /** Alerts that stand now, oldest first. */
    public List<Alert> standing() {
        return new ArrayList<>(judge.standing());
    }
}
