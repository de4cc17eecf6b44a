package evenfall.sim.drive;

import evenfall.sim.vehicle.Pose;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The line that the machine's hanging point follows, by the distance along it. Begins at (0, 0) with heading
 * 0; behind its end it goes straight on.
 *
 * <p>Straights and arcs are closed forms; on a run-in the place is an integral of its direction, taken with
 * Gauss's five points on pieces that turn by a quarter of a radian at most (error below a nanometre).
 */
public final class Path {

    // Abscissas and weights of the Gauss-Legendre rule of five points on −1 … 1.
    private static final double[] GAUSS_AT = {
        -0.9061798459386640, -0.5384693101056831, 0.0, 0.5384693101056831, 0.9061798459386640
    };
    private static final double[] GAUSS_WEIGHT = {
        0.2369268850561891, 0.4786286704993665, 0.5688888888888889, 0.4786286704993665, 0.2369268850561891
    };

    private final List<Stretch> stretches;
    private final boolean[] pass;
    private final double[] startM;
    private final Pose[] start;

    private Path(List<Stretch> stretches, boolean[] pass) {
        int n = stretches.size();
        this.stretches = stretches;
        this.pass = pass;
        this.startM = new double[n];
        this.start = new Pose[n];
        start[0] = Pose.straight(0, 0);
        for (int i = 1; i < n; i++) {
            Stretch before = stretches.get(i - 1);
            startM[i] = startM[i - 1] + before.lengthM();
            start[i] = poseOn(i - 1, before.lengthM());
        }
    }

    /** Straight ahead for ever. */
    public static Path straight() {
        return new Builder().straight(Double.POSITIVE_INFINITY).build();
    }

    /**
     * Passes back and forth with headland turns between them.
     *
     * @param passes how many, at least 1
     * @param passM length of each from headland to headland, m, above 0
     * @param widthM distance between the lines of neighbouring passes, m, above 0
     * @param rightFirst whether the second pass is to the right of the first
     */
    public static Path backAndForth(int passes, double passM, double widthM, boolean rightFirst, Headland headland) {
        if (passes < 1) {
            throw new IllegalArgumentException("passes must be at least 1, not " + passes);
        }
        Builder builder = new Builder();
        boolean right = rightFirst;
        for (int i = 0; i < passes; i++) {
            if (i > 0) {
                for (Stretch stretch : headland.turn(widthM, right)) {
                    builder.add(stretch, false);
                }
                right = !right;
            }
            builder.straight(passM);
        }
        return builder.build();
    }

    /** Builds a path of any straights and bends, one after the other. */
    public static final class Builder {

        private final List<Stretch> stretches = new ArrayList<>();
        private final List<Boolean> pass = new ArrayList<>();

        /** A straight that is worked: part of a pass. */
        public Builder straight(double lengthM) {
            if (!(lengthM > 0)) {
                throw new IllegalArgumentException("length of a straight, m, must be above 0, not " + lengthM);
            }
            return add(Stretch.straight(lengthM), true);
        }

        /**
         * A bend.
         *
         * @param turnRad how far to turn, rad, positive to the right
         * @param radiusM smallest radius, m, above 0
         * @param runInM length over which the steering goes from straight to that radius, m, 0 or above
         * @param worked whether sections that go by position stay on
         */
        public Builder bend(double turnRad, double radiusM, double runInM, boolean worked) {
            for (Stretch stretch : Headland.bend(turnRad, radiusM, runInM)) {
                add(stretch, worked);
            }
            return this;
        }

        Builder add(Stretch stretch, boolean worked) {
            if (!stretches.isEmpty() && stretches.get(stretches.size() - 1).lengthM() == Double.POSITIVE_INFINITY) {
                throw new IllegalArgumentException("nothing comes after a straight without end");
            }
            stretches.add(stretch);
            pass.add(worked);
            return this;
        }

        public Path build() {
            if (stretches.isEmpty()) {
                throw new IllegalArgumentException("a path needs at least one stretch");
            }
            boolean[] worked = new boolean[pass.size()];
            for (int i = 0; i < worked.length; i++) {
                worked[i] = pass.get(i);
            }
            return new Path(List.copyOf(stretches), worked);
        }
    }

    /** Length, m; infinite when its last straight has no end. */
    public double lengthM() {
        int last = stretches.size() - 1;
        return startM[last] + stretches.get(last).lengthM();
    }

    /** The pose at this distance along it, m, 0 or above. */
    public Pose poseAt(double distanceM) {
        int i = stretchAt(distanceM);
        return poseOn(i, distanceM - startM[i]);
    }

    /** Curvature at this distance along it, 1/m, positive to the right; 0 behind its end. */
    public double curvaturePerM(double distanceM) {
        int i = stretchAt(distanceM);
        double along = distanceM - startM[i];
        Stretch stretch = stretches.get(i);
        return along < 0 || along > stretch.lengthM() ? 0 : stretch.curvaturePerM(along);
    }

    /** Whether this distance lies on a pass, not in a headland turn nor behind the end. */
    public boolean onPass(double distanceM) {
        int i = stretchAt(distanceM);
        return pass[i] && distanceM - startM[i] <= stretches.get(i).lengthM();
    }

    /** Where the path changes between pass and headland, m along it, in order; its beginning is not one. */
    public List<Double> passEdgesM() {
        List<Double> edges = new ArrayList<>();
        for (int i = 1; i < pass.length; i++) {
            if (pass[i] != pass[i - 1]) {
                edges.add(startM[i]);
            }
        }
        if (pass[pass.length - 1] && lengthM() < Double.POSITIVE_INFINITY) {
            edges.add(lengthM());
        }
        return edges;
    }

    private int stretchAt(double distanceM) {
        int found = Arrays.binarySearch(startM, distanceM);
        return Math.max(0, found >= 0 ? found : -found - 2);
    }

    private Pose poseOn(int i, double alongM) {
        Stretch stretch = stretches.get(i);
        if (alongM > stretch.lengthM()) {
            return ahead(poseOn(i, stretch.lengthM()), alongM - stretch.lengthM());
        }
        Pose from = start[i];
        double curvature = stretch.fromPerM();
        if (curvature == 0 && stretch.toPerM() == 0) {
            return ahead(from, alongM);
        }
        double heading = from.headingRad();
        double turned = heading + stretch.turnedRad(alongM);
        if (curvature == stretch.toPerM()) {
            Pose turnedOnly = Pose.of(0, 0, turned);
            double x = from.xM() + (turnedOnly.sin() - from.sin()) / curvature;
            double y = from.yM() + (from.cos() - turnedOnly.cos()) / curvature;
            return new Pose(x, y, turned, turnedOnly.cos(), turnedOnly.sin());
        }
        double sharpest = Math.max(Math.abs(curvature), Math.abs(stretch.toPerM()));
        int pieces = 1 + (int) Math.floor(4 * alongM * sharpest);
        double half = 0.5 * alongM / pieces;
        double x = from.xM();
        double y = from.yM();
        for (int piece = 0; piece < pieces; piece++) {
            double middle = (2 * piece + 1) * half;
            for (int k = 0; k < GAUSS_AT.length; k++) {
                double direction = heading + stretch.turnedRad(middle + half * GAUSS_AT[k]);
                x += half * GAUSS_WEIGHT[k] * StrictMath.cos(direction);
                y += half * GAUSS_WEIGHT[k] * StrictMath.sin(direction);
            }
        }
        return Pose.of(x, y, turned);
    }

    private static Pose ahead(Pose from, double alongM) {
        return new Pose(from.groundX(alongM, 0), from.groundY(alongM, 0), from.headingRad(), from.cos(), from.sin());
    }
}
