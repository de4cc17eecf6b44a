package evenfall.pattern;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Landing lines side by side along the boom, sorted, with the outlet each came from. Reused; grows never.
 *
 * <p>From one moment to the next lines hardly change places. So each has a slot of its own, and the sort begins with the slots in the
 * order of the moment before; what the order comes out as does not depend on that, for lines at the same place go by their slots.
 */
final class Lines {
    private static final double NOT_LOOKED = -1;

    private final double[] atOfSlot;
    private final double[] quantityOfSlot;
    private final int[] outletOfSlot;

    /** The moment at which a slot was filled last; 0 for never. */
    private final int[] momentOfSlot;

    /** Counted from 2, so that no empty slot seems to be one of the moment before. */
    private int moment = 2;

    /** Slots in use, from left to right once they are sorted; those that were not in use at the moment before come last until then. */
    private final int[] slots;

    private int count;

    /** In the order along the boom: where each line lies, what falls on it, as much of it as is doubled. */
    private final double[] rightM;

    private final double[] quantity;
    private final double[] twice;
    private final int[] outlet;
    private boolean sorted;
    private double doubledWithinM = NOT_LOOKED;

    Lines(int capacity) {
        atOfSlot = new double[capacity];
        quantityOfSlot = new double[capacity];
        outletOfSlot = new int[capacity];
        momentOfSlot = new int[capacity];
        slots = new int[2 * capacity];
        rightM = new double[capacity];
        quantity = new double[capacity];
        twice = new double[capacity];
        outlet = new int[capacity];
    }

    void clear() {
        sort();
        moment++;
        sorted = false;
        doubledWithinM = NOT_LOOKED;
    }

    /**
     * Lets a line fall.
     *
     * @param slot the line's own from one moment to the next, below the capacity; no other falls there until {@link #clear}
     */
    void add(int slot, double atM, double flow, int fromOutlet) {
        atOfSlot[slot] = atM;
        quantityOfSlot[slot] = flow;
        outletOfSlot[slot] = fromOutlet;
        if (momentOfSlot[slot] != moment - 1) {
            slots[count++] = slot;
        }
        momentOfSlot[slot] = moment;
    }

    private void sort() {
        if (sorted) {
            return;
        }
        sorted = true;
        int n = 0;
        for (int k = 0; k < count; k++) {
            int slot = slots[k];
            if (momentOfSlot[slot] == moment) {
                insert(n++, slot);
            }
        }
        count = n;
        for (int i = 0; i < n; i++) {
            quantity[i] = quantityOfSlot[slots[i]];
            outlet[i] = outletOfSlot[slots[i]];
        }
    }

    /** Puts one more behind those that are sorted already, and moves it to its place among them. */
    private void insert(int end, int slot) {
        double atM = atOfSlot[slot];
        int i = end;
        while (i > 0 && (rightM[i - 1] > atM || (rightM[i - 1] == atM && slots[i - 1] > slot))) {
            rightM[i] = rightM[i - 1];
            slots[i] = slots[i - 1];
            i--;
        }
        rightM[i] = atM;
        slots[i] = slot;
    }

    /**
     * @param fromM left end of the stretch that is measured, m
     * @param toM its right end, m
     * @param nearM lines of different outlets closer than this are doubled, m
     * @return null where fewer than two lines fall in the stretch
     */
    @Nullable
    LineMeasures measure(double fromM, double toM, double nearM) {
        sort();
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
        Arrays.fill(twice, 0, count, 0);
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
