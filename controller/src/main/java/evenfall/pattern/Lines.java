package evenfall.pattern;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Landing lines side by side along the boom, sorted, with the outlet each came from. Reused; grows never. */
final class Lines {
    private final double[] rightM;

    /** For each place in that order the number of its line, in which they came: a sort moves no more than this. */
    private final int[] line;

    private final double[] quantityOfLine;
    private final int[] outletOfLine;

    /** In the order along the boom, once it is asked for: what falls on each line, and as much of it as is doubled. */
    private final double[] quantity;

    private final double[] twice;
    private final int[] outlet;
    private int count;
    private double doubledWithinM;

    Lines(int capacity) {
        rightM = new double[capacity];
        line = new int[capacity];
        quantityOfLine = new double[capacity];
        outletOfLine = new int[capacity];
        quantity = new double[capacity];
        twice = new double[capacity];
        outlet = new int[capacity];
    }

    void clear() {
        count = 0;
        doubledWithinM = -1;
    }

    /** Keeps the order by position; lines come nearly sorted, so the shift is short. */
    void add(double atM, double flow, int fromOutlet) {
        doubledWithinM = -1;
        int number = count++;
        quantityOfLine[number] = flow;
        outletOfLine[number] = fromOutlet;
        int i = number;
        while (i > 0 && rightM[i - 1] > atM) {
            rightM[i] = rightM[i - 1];
            line[i] = line[i - 1];
            i--;
        }
        rightM[i] = atM;
        line[i] = number;
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
        double all = quantity[from];
        double doubled = twice[from];
        for (int i = from + 1; i < to; i++) {
            double gapM = rightM[i] - rightM[i - 1];
            if (gapM > widest) {
                widest = gapM;
            }
            all += quantity[i];
            doubled += twice[i];
        }
        return all > 0 ? new LineMeasures(widest, doubled / all) : null;
    }

    /** Once for all stretches that are measured of the same lines. */
    private void findDoubled(double nearM) {
        if (doubledWithinM == nearM) {
            return;
        }
        doubledWithinM = nearM;
        for (int i = 0; i < count; i++) {
            quantity[i] = quantityOfLine[line[i]];
            outlet[i] = outletOfLine[line[i]];
            twice[i] = 0;
        }
        double limitM = nearM + 1e-9;
        for (int i = 0; i < count; i++) {
            for (int j = i + 1; j < count && rightM[j] - rightM[i] <= limitM; j++) {
                if (outlet[i] != outlet[j]) {
                    twice[i] = quantity[i];
                    twice[j] = quantity[j];
                }
            }
        }
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
