package evenfall.judge;

import evenfall.rig.Rig;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** All watches of a rig, looked at together in a fixed order. */
public final class Judge {
    /** Silence has its own waiting time built in; a word from the sensor must last a little before the alert goes. Our choice, s. */
    private static final double SPEAKS_AGAIN_S = 1;

    /** Who hears of changes. */
    public interface Listener {
        void raised(Alert alert);

        void cleared(Alert alert, long clearedUs);
    }

    private static final class Post {
        final Watch watch;
        final Latch latch;

        @Nullable
        Alert alert;

        Post(Watch watch, double holdS, double holdM) {
            this.watch = watch;
            this.latch = new Latch(holdS, holdM);
        }
    }

    private final List<Post> posts = new ArrayList<>();
    private final List<Alert> standing = new ArrayList<>();

    /**
     * Sets up what can be watched on this rig.
     *
     * @param rig the machine
     * @param ports names of the ports that situations will list, in that order
     * @param sensors the sensors that situations will list, in that order; their readings do not matter here
     * @param speedPort index of the receiver's port; -1 where there is none
     */
    public Judge(Rig rig, List<String> ports, List<Situation.SensorState> sensors, int speedPort) {
        Rig.Limits limits = rig.limits();
        for (int p = 0; p < ports.size(); p++) {
            posts.add(new Post(new SilenceWatch(p, ports.get(p)), SPEAKS_AGAIN_S, 0));
        }
        for (int s = 0; s < sensors.size(); s++) {
            Situation.SensorState sensor = sensors.get(s);
            posts.add(new Post(new SensorWatch(s, sensor.name(), sensor.port(), limits.silenceS()), SPEAKS_AGAIN_S, 0));
        }
        if (speedPort >= 0) {
            posts.add(new Post(new SpeedWatch(speedPort, ports.get(speedPort)), SPEAKS_AGAIN_S, 0));
        }
        addHeld(limits, new RateWatch(true, rig));
        addHeld(limits, new RateWatch(false, rig));
        for (boolean left : new boolean[] {true, false}) {
            addHeld(limits, new WingWatch(left, true, rig));
            addHeld(limits, new WingWatch(left, false, rig));
        }
        addHeld(limits, new BandsWatch(false, rig));
        addHeld(limits, new BandsWatch(true, rig));
    }

    private void addHeld(Rig.Limits limits, Watch watch) {
        posts.add(new Post(watch, limits.holdS(), limits.holdM()));
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

    private static Alert alertOf(Post post, Situation now) {
        Watch.Finding found = post.watch.finding(now);
        return new Alert(
                post.watch.kind(),
                post.watch.place(),
                post.latch.sinceUs(),
                now.nowUs(),
                found.value(),
                found.limit(),
                found.unit(),
                found.why(),
                found.act());
    }

    /** Alerts that stand, oldest first. */
    public List<Alert> standing() {
        return List.copyOf(standing);
    }
}
