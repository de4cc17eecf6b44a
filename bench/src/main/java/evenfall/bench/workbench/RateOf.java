package evenfall.bench.workbench;

import java.util.ArrayDeque;
import org.jspecify.annotations.Nullable;

/** How fast a count goes now: over about the last second and a half of looks at it. For show only; no result rests on it. */
final class RateOf {
    private static final double WINDOW_S = 1.5;
    private static final double LEAST_S = 0.3;

    private final ArrayDeque<double[]> looks = new ArrayDeque<>();

    /**
     * @param timeS never falls, s
     * @return null before two looks are far enough apart
     */
    @Nullable
    Double perS(double timeS, double amount) {
        looks.addLast(new double[] {timeS, amount});
        while (looks.size() > 2 && timeS - looks.getFirst()[0] > WINDOW_S) {
            looks.removeFirst();
        }
        double[] first = looks.getFirst();
        double seconds = timeS - first[0];
        return seconds < LEAST_S ? null : (Double) ((amount - first[1]) / seconds);
    }
}
