package evenfall.pattern;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Landing lines side by side along the boom, sorted, with the outlet each came from. Reused; grows never. */
final class Lines {
    private final double[] rightM;
    private final double[] quantity;
    private final int[] outlet;
    private final boolean[] doubled;
    private int count;
    private double doubledWithinM;

    Lines(int capacity) {
        rightM = new double[capacity];
        quantity = new double[capacity];
        outlet = new int[capacity];
        doubled = new boolean[capacity];
    }

    void clear() {
        count = 0;
        doubledWithinM = -1;
    }

    /** Keeps the order by position; lines come nearly sorted, so the shift is short. */
    void add(double atM, double flow, int fromOutlet) {
        doubledWithinM = -1;
        int i = count++;
        while (i > 0 && rightM[i - 1] > atM) {
            rightM[i] = rightM[i - 1];
            quantity[i] = quantity[i - 1];
            outlet[i] = outlet[i - 1];
            i--;
        }
        rightM[i] = atM;
        quantity[i] = flow;
        outlet[i] = fromOutlet;
    }

    /**
     * @param fromM left end of the stretch that is measured, m
     * @param toM its right end, m
     * @param nearM lines of different outlets closer than this are doubled, m
     * @return null where fewer than two lines fall in the stretch
     */
    @Nullable
    LineMeasures measure(double fromM, double toM, double nearM) {
        int from = lowerBound(fromM);
        int to = lowerBound(toM + 1e-9);
        if (to - from < 2) {
            return null;
        }
        findDoubled(nearM);
        double widest = 0;
        double all = 0;
        double twice = 0;
        for (int i = from; i < to; i++) {
            if (i > from) {
                widest = Math.max(widest, rightM[i] - rightM[i - 1]);
            }
            all += quantity[i];
            if (doubled[i]) {
                twice += quantity[i];
            }
        }
        return all > 0 ? new LineMeasures(widest, twice / all) : null;
    }

    /** Once for all stretches that are measured of the same lines. */
    private void findDoubled(double nearM) {
        if (doubledWithinM != nearM) {
            doubledWithinM = nearM;
            for (int i = 0; i < count; i++) {
                doubled[i] = hasStranger(i, nearM);
            }
        }
    }

    private boolean hasStranger(int line, double nearM) {
        double limitM = nearM + 1e-9;
        for (int i = line - 1; i >= 0 && rightM[line] - rightM[i] <= limitM; i--) {
            if (outlet[i] != outlet[line]) {
                return true;
            }
        }
        for (int i = line + 1; i < count && rightM[i] - rightM[line] <= limitM; i++) {
            if (outlet[i] != outlet[line]) {
                return true;
            }
        }
        return false;
    }

    private int lowerBound(double atM) {
        int found = Arrays.binarySearch(rightM, 0, count, atM);
        int i = found >= 0 ? found : -found - 1;
        while (i > 0 && rightM[i - 1] >= atM) {
            i--;
        }
        return i;
    }
}
