package evenfall.sim.drive;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoublePredicate;

/**
 * How the machine turns round at the field's end, from one pass to the next and back to back with it.
 *
 * <p>A next pass that is just as far as the turning circle is wide gets a half circle; one that is further
 * gets two quarter circles with a straight between them; one that is nearer gets a widening: away from it
 * by an angle α, round by π + 2α, and back by α. With plain arcs cos α = (D + 2R)/(4R) for a next pass at D.
 *
 * @param radiusM smallest radius that the hanging point turns on, m, above 0
 * @param runInM length over which the steering goes from straight to that radius, m, 0 or above; with 0 the
 *     turn begins at once, which throws a long boom about more than any driver does
 */
public record Headland(double radiusM, double runInM) {

    /** Two lengths that differ by less are the same, m. */
    private static final double SAME_M = 1e-7;

    public Headland {
        if (!(radiusM > 0 && radiusM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("turning radius, m, must be above 0, not " + radiusM);
        }
        if (!(runInM >= 0 && runInM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("run-in of a turn, m, must be 0 or above, not " + runInM);
        }
    }

    /** The turn to a next pass this far away, which ends on it, abreast of where the turn began. */
    List<Stretch> turn(double widthM, boolean right) {
        if (!(widthM > 0 && widthM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("width of a pass, m, must be above 0, not " + widthM);
        }
        double side = right ? 1 : -1;
        List<Stretch> quarter = bend(side * StrictMath.PI / 2, radiusM, runInM);
        double quarters = 2 * acrossM(quarter, side);
        if (widthM >= quarters - SAME_M) {
            List<Stretch> turn = new ArrayList<>(quarter);
            if (widthM > quarters + SAME_M) {
                turn.add(Stretch.straight(widthM - quarters));
            }
            turn.addAll(quarter);
            return turn;
        }
        // Run-ins between quarter circles make them wider than a half circle of that radius.
        if (widthM >= acrossM(halfCircle(side, radiusM), side)) {
            double radius = bisect(radiusM, widthM, r -> acrossM(halfCircle(side, r), side) < widthM);
            return halfCircle(side, radius);
        }
        double swing = bisect(0, StrictMath.PI / 2, a -> acrossM(widened(a, side), side) > widthM);
        return widened(swing, side);
    }

    /** Where the answer changes from yes to no. */
    private static double bisect(double yes, double no, DoublePredicate question) {
        double least = yes;
        double most = no;
        for (int i = 0; i < 60; i++) {
            double middle = 0.5 * (least + most);
            if (question.test(middle)) {
                least = middle;
            } else {
                most = middle;
            }
        }
        return 0.5 * (least + most);
    }

    private List<Stretch> halfCircle(double side, double radius) {
        return bend(side * StrictMath.PI, radius, runInM);
    }

    private List<Stretch> widened(double swingRad, double side) {
        List<Stretch> turn = new ArrayList<>(bend(-side * swingRad, radiusM, runInM));
        turn.addAll(bend(side * (StrictMath.PI + 2 * swingRad), radiusM, runInM));
        turn.addAll(bend(-side * swingRad, radiusM, runInM));
        return turn;
    }

    /** How far across, towards the next pass, these end, m. */
    private static double acrossM(List<Stretch> stretches, double side) {
        Path.Builder builder = new Path.Builder();
        double length = 0;
        for (Stretch stretch : stretches) {
            builder.add(stretch, false);
            length += stretch.lengthM();
        }
        return builder.build().poseAt(length).yM() * side;
    }

    /** A bend, with run-ins at both ends; one that is too short for them is less sharp instead. */
    static List<Stretch> bend(double turnRad, double radiusM, double runInM) {
        Headland limits = new Headland(radiusM, runInM);
        if (!(Math.abs(turnRad) < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("turn must be a number of radians, not " + turnRad);
        }
        double angle = Math.abs(turnRad);
        double side = turnRad < 0 ? -1 : 1;
        double radius = limits.radiusM();
        double runIn = limits.runInM();
        List<Stretch> stretches = new ArrayList<>();
        if (angle == 0) {
            return stretches;
        }
        double curvature = 1 / radius;
        if (angle < runIn * curvature) {
            // As fast into the steering, but only so far that both run-ins make the angle.
            double part = Math.sqrt(angle * radius / runIn);
            curvature *= part;
            runIn *= part;
        }
        double arc = angle / curvature - runIn;
        if (runIn > 0) {
            stretches.add(new Stretch(runIn, 0, side * curvature));
        }
        if (arc > 1e-9) {
            stretches.add(new Stretch(arc, side * curvature, side * curvature));
        }
        if (runIn > 0) {
            stretches.add(new Stretch(runIn, side * curvature, 0));
        }
        return stretches;
    }
}
