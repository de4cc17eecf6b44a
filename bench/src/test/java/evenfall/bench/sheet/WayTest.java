package evenfall.bench.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.bench.page.Point;
import evenfall.bench.score.Course;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class WayTest {
    private static Course.Moment at(double atS, double atM) {
        return new Course.Moment(atS, atM, 5, 0.5, 0.5, 0.5, 0.3, 0.7, 0.0, 0.05);
    }

    @Test
    void betweenTwoMomentsItIsOnAStraightLine() {
        Way way = new Way(new Course(List.of(at(1, 10), at(2, 20), at(4, 24))));
        assertThat(way.atM(1.5)).isCloseTo(15, within(1e-12));
        assertThat(way.atM(3)).isCloseTo(22, within(1e-12));
        assertThat(way.atM(0)).isEqualTo(10);
        assertThat(way.atM(9)).isEqualTo(24);
        assertThat(new Way(new Course(List.of())).atM(3)).isZero();
    }

    @Test
    void thinningKeepsTheLowestTheHighestAndTheBreaks() {
        SplittableRandom random = new SplittableRandom(11);
        List<Point> points = new ArrayList<>();
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < 18_000; i++) {
            double y = random.nextGaussian();
            points.add(new Point(i, i == 7_003 ? null : Double.valueOf(y)));
            lowest = i == 7_003 ? lowest : Math.min(lowest, y);
            highest = i == 7_003 ? highest : Math.max(highest, y);
        }
        List<Point> thin = Way.thinned(points);
        assertThat(thin).hasSizeLessThan(1_400).isSubsetOf(points);
        assertThat(thin).anyMatch(point -> point.y() == null);
        double least = lowest;
        double most = highest;
        assertThat(thin).anyMatch(point -> point.y() != null && point.y() == least);
        assertThat(thin).anyMatch(point -> point.y() != null && point.y() == most);
    }
}
