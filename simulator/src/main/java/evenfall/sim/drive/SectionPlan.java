package evenfall.sim.drive;

import java.util.ArrayList;
import java.util.List;

/**
 * When sections are switched: bit 0 of a mask is the leftmost section.
 *
 * @param startMask what is on at the start
 * @param switches in the order in which they come; each waits for the one before
 */
public record SectionPlan(long startMask, List<Switch> switches) {

    /**
     * What is on from a moment and a place on, whichever comes later.
     *
     * @param atS moment, s from the start; 0 when it goes by place
     * @param atM distance along the path, m; 0 when it goes by time
     */
    public record Switch(double atS, double atM, long mask) {

        /** By hand at a moment. */
        public static Switch atS(double timeS, long mask) {
            return new Switch(timeS, 0, mask);
        }

        /** At a place along the path. */
        public static Switch atM(double distanceM, long mask) {
            return new Switch(0, distanceM, mask);
        }
    }

    public SectionPlan {
        switches = List.copyOf(switches);
    }

    /** All on, and switched as this list says. */
    public static SectionPlan of(int sections, List<Switch> switches) {
        return new SectionPlan(allOf(sections), switches);
    }

    /**
     * All off where a pass ends, all on where the next one begins, by the place of the machine's hanging
     * point.
     *
     * @param lateOffM how far behind the end of a pass they go off, m; below zero before it
     * @param lateOnM how far behind the beginning of a pass they go on, m; below zero before it
     */
    public static SectionPlan offInHeadland(Path path, int sections, double lateOffM, double lateOnM) {
        long all = allOf(sections);
        List<Switch> switches = new ArrayList<>();
        boolean leaving = true;
        for (double edge : path.passEdgesM()) {
            switches.add(leaving ? Switch.atM(edge + lateOffM, 0) : Switch.atM(edge + lateOnM, all));
            leaving = !leaving;
        }
        return new SectionPlan(path.onPass(0) ? all : 0, switches);
    }

    /** The mask with this many sections on, 1 to 64. */
    public static long allOf(int sections) {
        if (sections < 1 || sections > 64) {
            throw new IllegalArgumentException("sections must be 1 to 64, not " + sections);
        }
        return -1L >>> (64 - sections);
    }

    /** The hand on the switches during one drive; a class of its own, since it remembers how far it has come. */
    public static final class Hand {

        private final SectionPlan plan;
        private int next;
        private long mask;

        public Hand(SectionPlan plan) {
            this.plan = plan;
            this.mask = plan.startMask();
        }

        /** What is on now. To be asked as the drive goes on, never for an earlier moment. */
        public long maskAt(Drive drive) {
            while (next < plan.switches().size()) {
                Switch change = plan.switches().get(next);
                if (!drive.isReached(change.atS(), change.atM())) {
                    break;
                }
                mask = change.mask();
                next++;
            }
            return mask;
        }
    }
}
