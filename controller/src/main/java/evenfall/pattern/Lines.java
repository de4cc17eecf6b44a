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

    /** In the place of a moment: a line that falls until it is said that it does not. */
    private static final int ALWAYS = Integer.MAX_VALUE;

    /** So many of the first slots fall always. */
    private int whole;

    /** Counted from 2, so that no empty slot seems to be one of the moment before. */
    private int moment = 2;

    /** Slots in use, from left to right once they are sorted; those that were not in use at the moment before come last until then. */
    private final int[] slots;

    private int count;

    /** In the order along the boom: where each line lies, and how much falls on those up to it. */
    private final double[] rightM;

    private final double[] quantityUpTo;

    /** Of that what is doubled. */
    private final double[] doubledUpTo;

    /** 1 for a line that is known to be doubled while they are gone through, else 0; all 0 in between. */
    private final int[] twice;

    private boolean sorted;
    private double doubledWithinM = NOT_LOOKED;

    Lines(int capacity) {
        atOfSlot = new double[capacity];
        quantityOfSlot = new double[capacity];
        outletOfSlot = new int[capacity];
        momentOfSlot = new int[capacity];
        slots = new int[2 * capacity];
        rightM = new double[capacity + 2];
        quantityUpTo = new double[capacity + 1];
        doubledUpTo = new double[capacity + 1];
        twice = new int[capacity + 2];
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

    /**
     * Lets lines fall in the first slots, each of them in its own: all of them, as at most moments, so that none needs to be looked at.
     *
     * @param atM where they land
     * @param flow what each brings; the same from one moment to the next
     * @param outlets how many there are: those of the first stream of each come first, then those of the second, and so on
     */
    void addWhole(double[] atM, double[] flow, int outlets) {
        int n = flow.length;
        System.arraycopy(atM, 0, atOfSlot, 0, n);
        if (whole == n) {
            return;
        }
        for (int slot = 0; slot < n; slot++) {
            if (momentOfSlot[slot] != moment - 1) {
                slots[count++] = slot;
            }
            momentOfSlot[slot] = ALWAYS;
            quantityOfSlot[slot] = flow[slot];
            outletOfSlot[slot] = slot % outlets;
        }
        whole = n;
    }

    /** From this moment on each line of {@link #addWhole} is let fall on its own, or is not. */
    void addEach() {
        for (int slot = 0; slot < whole; slot++) {
            momentOfSlot[slot] = moment - 1;
        }
        whole = 0;
    }

    /** Where a line fell, m; NaN where it did not. */
    double atM(int slot) {
        return fell(slot) ? atOfSlot[slot] : Double.NaN;
    }

    private boolean fell(int slot) {
        return momentOfSlot[slot] == moment || momentOfSlot[slot] == ALWAYS;
    }

    private void sort() {
        if (sorted) {
            return;
        }
        sorted = true;
        int n = 0;
        for (int k = 0; k < count; k++) {
            int slot = slots[k];
            if (fell(slot)) {
                insert(n++, slot);
            }
        }
        count = n;
        // Behind the last no line is near.
        rightM[n] = Double.POSITIVE_INFINITY;
        rightM[n + 1] = Double.POSITIVE_INFINITY;
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
        for (int i = from + 1; i < to; i++) {
            double gapM = rightM[i] - rightM[i - 1];
            if (gapM > widest) {
                widest = gapM;
            }
        }
        double all = quantityUpTo[to] - quantityUpTo[from];
        return all > 0 ? new LineMeasures(widest, (doubledUpTo[to] - doubledUpTo[from]) / all) : null;
    }

    /** Once for all stretches that are measured of the same lines. */
    private void findDoubled(double nearM) {
        if (doubledWithinM == nearM) {
            return;
        }
        doubledWithinM = nearM;
        double limitM = nearM + 1e-9;
        double all = 0;
        double doubled = 0;
        for (int i = 0; i < count; i++) {
            int outlet = outletOfSlot[slots[i]];
            // Most lines have one neighbour so near or none, in no order that a processor could foresee: so signs are
            // read off, not asked for.
            int near = (int) (Double.doubleToRawLongBits(rightM[i + 1] - rightM[i] - limitM) >>> 63);
            int apart = outletOfSlot[slots[i + 1]] - outlet;
            int both = near & ((apart | -apart) >>> 31);
            twice[i + 1] |= both;
            int is = twice[i] | both;
            for (int j = i + 2; rightM[j] - rightM[i] <= limitM; j++) {
                int other = outletOfSlot[slots[j]] == outlet ? 0 : 1;
                twice[j] |= other;
                is |= other;
            }
            twice[i] = 0;
            double quantity = quantityOfSlot[slots[i]];
            all += quantity;
            doubled += is * quantity;
            quantityUpTo[i + 1] = all;
            doubledUpTo[i + 1] = doubled;
        }
        twice[count] = 0;
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
