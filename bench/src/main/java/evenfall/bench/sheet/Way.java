package evenfall.bench.sheet;

import evenfall.bench.page.Point;
import evenfall.bench.score.Course;
import java.util.ArrayList;
import java.util.List;

/** Where the machine was when. */
final class Way {
    /** Points of a line that the eye can tell apart on a page. */
    private static final int MOST_POINTS = 900;

    private final List<Course.Moment> moments;

    Way(Course course) {
        moments = course.moments();
    }

    /** Distance driven at a time, m, on a straight line between two moments; at the ends as there. */
    double atM(double atS) {
        if (moments.isEmpty()) {
            return 0;
        }
        int low = 0;
        int high = moments.size() - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (moments.get(middle).atS() < atS) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        Course.Moment after = moments.get(low);
        Course.Moment before = moments.get(Math.max(0, low - 1));
        double overS = after.atS() - before.atS();
        if (!(overS > 0) || atS >= after.atS()) {
            return after.atM();
        }
        double part = Math.max(0, (atS - before.atS()) / overS);
        return before.atM() + part * (after.atM() - before.atM());
    }

    /** At most so many points: of each stretch the lowest and the highest stay, so that no dive and no break goes lost. */
    static List<Point> thinned(List<Point> points) {
        int stretch = (points.size() + MOST_POINTS / 2 - 1) / (MOST_POINTS / 2);
        if (stretch <= 2) {
            return points;
        }
        List<Point> kept = new ArrayList<>();
        for (int from = 0; from < points.size(); from += stretch) {
            int least = -1;
            int most = -1;
            int gap = -1;
            for (int i = from; i < Math.min(points.size(), from + stretch); i++) {
                Double y = points.get(i).y();
                if (y == null) {
                    gap = gap < 0 ? i : gap;
                    continue;
                }
                least = least < 0 || y < known(points, least) ? i : least;
                most = most < 0 || y > known(points, most) ? i : most;
            }
            if (least >= 0) {
                kept.add(points.get(Math.min(least, most)));
            }
            if (most != least) {
                kept.add(points.get(Math.max(least, most)));
            }
            if (gap >= 0) {
                kept.add(points.get(gap));
            }
        }
        return kept;
    }

    /**
     * At most so many points of a band, point for point: of each stretch the narrowest that is known; not known where any of it is not.
     *
     * @param highest whether the upper edge is wanted, of which the lowest stays
     */
    static List<Point> edge(List<Point> points, boolean highest) {
        int stretch = (points.size() + MOST_POINTS / 2 - 1) / (MOST_POINTS / 2);
        List<Point> kept = new ArrayList<>();
        for (int from = 0; from < points.size(); from += Math.max(1, stretch)) {
            Double edge = points.get(from).y();
            for (int i = from; i < Math.min(points.size(), from + stretch) && edge != null; i++) {
                Double y = points.get(i).y();
                edge = y == null ? null : Double.valueOf(highest ? Math.min(edge, y) : Math.max(edge, y));
            }
            kept.add(new Point(points.get(from).x(), edge));
        }
        return kept;
    }

    private static double known(List<Point> points, int i) {
        Double y = points.get(i).y();
        return y == null ? Double.NaN : y;
    }
}
