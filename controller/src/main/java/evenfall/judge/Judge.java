package evenfall.judge;

import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** All watches of a rig, looked at together in a fixed order. */
public final class Judge {
    /** Silence has its own waiting time built in; a word from the sensor must last a little before the alert goes. Our choice, s. */
    private static final double SPEAKS_AGAIN_S = 1;

    /** Next to nothing flows for so long, s: a section that is switched on fills sooner. */
    private static final double NO_FLOW_S = 2;

    /** Liquid runs on for so long, s: a dribble is shorter. */
    private static final double RUNS_ON_S = 3;

    /** A step of the conductance has lasted already when it is told, and when it is taken back, s. */
    private static final double STEP_S = 0;

    private static final String BOOM = "boom";

    /** Who hears of changes. */
    public interface Listener {
        void raised(Alert alert);

        void cleared(Alert alert, long clearedUs);
    }

    private static final class Post {
        final AlertKind kind;
        final String place;
        final Watch watch;
        final Latch latch;

        @Nullable
        Alert alert;

        Post(AlertKind kind, String place, Watch watch, double holdS, double holdM) {
            this.kind = kind;
            this.place = place;
            this.watch = watch;
            this.latch = new Latch(holdS, holdM);
        }
    }

    private static final class TipPost {
        final String wing;
        final StrikeWatch watch;
        final Latch latch = new Latch(StrikeWatch.RAISE_S, 0, StrikeWatch.CLEAR_S, 0);

        @Nullable
        Alert alert;

        TipPost(String wing, Rig rig) {
            this.wing = wing;
            this.watch = new StrikeWatch(wing, rig);
        }
    }

    private final Conductance conductance;
    private final List<Post> posts = new ArrayList<>();
    private final List<TipPost> tipPosts;
    private final List<Alert> standing = new ArrayList<>();

    /**
     * Sets up what can be watched on this rig.
     *
     * @param rig the machine
     * @param ports names of the ports that situations will list, in that order
     * @param sensors the sensors that situations will list, in that order, a flow meter first and a tank's gauge last; their readings do
     *     not matter here
     * @param speedPort index of the receiver's port; -1 where there is none
     */
    public Judge(Rig rig, List<String> ports, List<Situation.SensorState> sensors, int speedPort) {
        conductance = new Conductance(rig);
        for (int p = 0; p < ports.size(); p++) {
            add(AlertKind.SENSOR_SILENT, ports.get(p), new SilenceWatch(p, ports.get(p)), SPEAKS_AGAIN_S, 0);
            add(AlertKind.HUB_RESTARTED, ports.get(p), new RestartWatch(p, ports.get(p)), 0, 0);
        }
        tipPosts = List.of(new TipPost("left", rig), new TipPost("right", rig));
        Rig.Limits limits = rig.limits();
        for (int s = 0; s < sensors.size(); s++) {
            Situation.SensorState sensor = sensors.get(s);
            Watch watch = new SensorWatch(s, sensor.name(), sensor.port(), limits.silenceS());
            add(AlertKind.SENSOR_SILENT, sensor.name(), watch, SPEAKS_AGAIN_S, 0);
            Watch doubt = doubtOf(s, sensors, rig);
            add(AlertKind.SENSOR_IMPLAUSIBLE, sensor.name(), doubt, SPEAKS_AGAIN_S, 0);
        }
        if (speedPort >= 0) {
            String port = ports.get(speedPort);
            add(AlertKind.SPEED_LOST, port, new SpeedWatch(speedPort, port), SPEAKS_AGAIN_S, 0);
        }
        addHeld(AlertKind.RATE_HIGH, BOOM, new RateWatch(true, rig), limits);
        addHeld(AlertKind.RATE_LOW, BOOM, new RateWatch(false, rig), limits);
        for (boolean left : new boolean[] {true, false}) {
            String wing = left ? "left" : "right";
            addHeld(AlertKind.WING_LOW, wing, new WingWatch(left, true, rig), limits);
            addHeld(AlertKind.WING_HIGH, wing, new WingWatch(left, false, rig), limits);
        }
        Bands bands = new Bands(rig);
        addHeld(AlertKind.BANDS_GAPPED, BOOM, new BandsWatch(false, bands, rig), limits);
        addHeld(AlertKind.BANDS_DOUBLED, BOOM, new BandsWatch(true, bands, rig), limits);
        addPlumbing(rig);
    }

    /** A meter says nothing about itself; where the tank tells, it is held against that. */
    private static Watch doubtOf(int s, List<Situation.SensorState> sensors, Rig rig) {
        Situation.SensorState sensor = sensors.get(s);
        int last = sensors.size() - 1;
        boolean isMeter = s == 0 && rig.sensors().flow().isPresent();
        return isMeter && rig.sensors().tank().isPresent()
                ? new TankWatch(s, last, sensor.port(), rig.sensors().tank().get(), rig.units())
                : new DoubtWatch(s, sensor.name(), sensor.port());
    }

    private void addPlumbing(Rig rig) {
        addHeld(AlertKind.PRESSURE_OUTSIDE, BOOM, new PressureWatch(rig), rig.limits());
        add(AlertKind.TRAVEL_WITHOUT_FLOW, BOOM, new NoFlowWatch(rig), NO_FLOW_S, 0);
        add(AlertKind.FLOW_WITHOUT_TRAVEL, BOOM, new RunsOnWatch(rig), RUNS_ON_S, 0);
        List<BoomLayout.Section> sections = rig.boom().sections();
        boolean told = rig.sensors().sectionsPort().isPresent() && sections.size() > 1;
        for (int s = Conductance.BOOM; s < (told ? sections.size() : 0); s++) {
            String place =
                    s == Conductance.BOOM ? BOOM : "section-" + sections.get(s).name();
            add(AlertKind.OUTLET_BLOCKED, place, new OutletWatch(false, s, conductance, rig), STEP_S, 0);
            add(AlertKind.OUTLET_OPEN, place, new OutletWatch(true, s, conductance, rig), STEP_S, 0);
        }
    }

    private void addHeld(AlertKind kind, String place, Watch watch, Rig.Limits limits) {
        add(kind, place, watch, limits.holdS(), limits.holdM());
    }

    private void add(AlertKind kind, String place, Watch watch, double holdS, double holdM) {
        posts.add(new Post(kind, place, watch, holdS, holdM));
    }

    /** Looks at the moment and tells of what has changed. */
    public void look(Situation now, Listener listener) {
        for (Post post : posts) {
            Latch.Change change = post.latch.look(now.nowUs(), now.stepS(), now.stepM(), post.watch.verdict(now));
            if (change == Latch.Change.RAISED) {
                Alert alert = alertOf(post, now);
                post.alert = alert;
                standing.add(alert);
                listener.raised(alert);
            } else if (change == Latch.Change.CLEARED && post.alert != null) {
                Alert alert = post.alert;
                post.alert = null;
                standing.remove(alert);
                listener.cleared(alert, now.nowUs());
            }
        }
    }

    /**
     * Looks at the tips alone, between the moments in which it looks at all.
     *
     * @param nowUs event time, µs
     * @param stepS time since it looked at them last, s
     */
    public void lookAhead(long nowUs, double stepS, Tip left, Tip right, Listener listener) {
        lookAhead(tipPosts.get(0), nowUs, stepS, left, listener);
        lookAhead(tipPosts.get(1), nowUs, stepS, right, listener);
    }

    private void lookAhead(TipPost post, long nowUs, double stepS, Tip tip, Listener listener) {
        Latch.Change change = post.latch.look(nowUs, stepS, 0, post.watch.verdict(tip));
        if (change == Latch.Change.RAISED) {
            Watch.Finding found = post.watch.finding(tip);
            Alert alert = alert(AlertKind.STRIKE_AHEAD, post.wing, post.latch.sinceUs(), nowUs, found);
            post.alert = alert;
            standing.add(alert);
            listener.raised(alert);
        } else if (change == Latch.Change.CLEARED && post.alert != null) {
            Alert alert = post.alert;
            post.alert = null;
            standing.remove(alert);
            listener.cleared(alert, nowUs);
        }
    }

    private static Alert alertOf(Post post, Situation now) {
        return alert(post.kind, post.place, post.latch.sinceUs(), now.nowUs(), post.watch.finding(now));
    }

    private static Alert alert(AlertKind kind, String place, long sinceUs, long raisedUs, Watch.Finding found) {
        return new Alert(
                kind, place, sinceUs, raisedUs, found.value(), found.limit(), found.unit(), found.why(), found.act());
    }

    /**
     * Whether some open outlets may give less or more than others: an alert says that they do, or what has been seen so far speaks for it. Then
     * nobody knows which rows lack it or have it. More flow from the start on is no such sign: a wrong constant in the rig file gives it as well, to
     * all.
     */
    public boolean outletsMayDiffer() {
        for (Alert alert : standing) {
            boolean open = alert.kind() == AlertKind.OUTLET_OPEN
                    && !conductance.steps().isEmpty();
            if (open || alert.kind() == AlertKind.OUTLET_BLOCKED) {
                return true;
            }
        }
        return conductance.mayLack();
    }

    /** Alerts that stand, oldest first. */
    public List<Alert> standing() {
        return standing.isEmpty() ? List.of() : List.copyOf(standing);
    }
}
