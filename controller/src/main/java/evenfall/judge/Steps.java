package evenfall.judge;

/**
 * The changes of conductance that stand, each in outlets' worth (what one good outlet lets through), and the sections that it may lie in.
 *
 * <p>A step back of the same size takes a change away; any other step is a cause of its own, so that a blocked outlet and a worn one do
 * not make each other good. Which sections a change may lie in narrows as it comes and goes with their switches.
 */
final class Steps {
    private static final int MOST = 6;

    private final double[] outlets = new double[MOST];
    private final double[] doubt = new double[MOST];
    private final long[] where = new long[MOST];
    private final boolean[] runsOn = new boolean[MOST];
    private int count;
    private int best;
    private int fitting;

    void clear() {
        count = 0;
    }

    boolean isEmpty() {
        return count == 0;
    }

    /**
     * @param change outlets' worth, positive where more flows
     * @param within it is known to so much, outlets' worth
     * @param mask sections that it may lie in
     * @param off it lies in one of these because it is switched off and runs on
     */
    void add(double change, double within, long mask, boolean off) {
        int i = count < MOST ? count++ : MOST - 1;
        boolean more = i == MOST - 1 && outlets[i] * change > 0;
        outlets[i] = more ? outlets[i] + change : change;
        doubt[i] = more ? doubt[i] + within : within;
        where[i] = more ? where[i] | mask : mask;
        runsOn[i] = off;
    }

    /** Whether a step takes back one of those that stand, or all of the other sign; then they stand no more. */
    boolean takeBack(double change, double within) {
        double opposite = 0;
        double oppositeDoubt = 0;
        for (int i = 0; i < count; i++) {
            if (outlets[i] * change >= 0) {
                continue;
            }
            if (Math.abs(outlets[i] + change) <= doubt[i] + within) {
                remove(i);
                return true;
            }
            opposite += outlets[i];
            oppositeDoubt += doubt[i];
        }
        if (opposite != 0 && Math.abs(opposite + change) <= oppositeDoubt + within) {
            for (int i = count - 1; i >= 0; i--) {
                if (outlets[i] * change < 0) {
                    remove(i);
                }
            }
            return true;
        }
        return false;
    }

    private void remove(int i) {
        for (int j = i + 1; j < count; j++) {
            outlets[j - 1] = outlets[j];
            doubt[j - 1] = doubt[j];
            where[j - 1] = where[j];
            runsOn[j - 1] = runsOn[j];
        }
        count--;
    }

    /**
     * Explains what is seen with other sections on by which of the changes are there and which are not, narrows down where they lie, and
     * takes away those that should be there and are not.
     *
     * @param seen outlets' worth more than a healthy machine with these sections
     * @param within it is known to so much
     * @param mask sections that are on
     * @return what is left unexplained, outlets' worth; nothing where the best explanation is within what is known
     */
    double explain(double seen, double within, long mask) {
        double left = unexplained(seen, within, mask);
        if (fitting <= 1) {
            narrow(best, mask, fitting == 1);
        }
        return left;
    }

    /** What {@link #explain} would leave, without drawing any conclusion about what stands. */
    double unexplained(double seen, double within, long mask) {
        best = 0;
        fitting = 0;
        double bestOff = Double.MAX_VALUE;
        for (int choice = 0; choice < 1 << count; choice++) {
            double sum = 0;
            double allowed = within;
            boolean possible = true;
            for (int i = 0; i < count; i++) {
                boolean there = (choice >> i & 1) == 1;
                possible &= !there || mayBeThere(i, mask);
                sum += there ? outlets[i] : 0;
                allowed += there ? doubt[i] : 0;
            }
            if (!possible) {
                continue;
            }
            double off = Math.abs(seen - sum);
            fitting += off <= allowed ? 1 : 0;
            if (off < bestOff) {
                best = choice;
                bestOff = off;
            }
        }
        double left = seen;
        for (int i = 0; i < count; i++) {
            left -= (best >> i & 1) == 1 ? outlets[i] : 0;
        }
        return fitting >= 1 ? 0 : left;
    }

    private void narrow(int choice, long mask, boolean sure) {
        for (int i = count - 1; i >= 0; i--) {
            boolean there = (choice >> i & 1) == 1;
            long shows = runsOn[i] ? ~mask : mask;
            long left = where[i] & (there ? shows : ~shows);
            if (!sure) {
                // Something new covers it: what should mostly show and does not is gone, the rest stays as it was.
                boolean shouldShow = 2 * Long.bitCount(where[i] & shows) > Long.bitCount(where[i]);
                if (!there && shouldShow) {
                    remove(i);
                }
                continue;
            }
            if (left == 0) {
                remove(i);
            } else {
                where[i] = left;
            }
        }
    }

    private boolean mayBeThere(int i, long mask) {
        return (where[i] & (runsOn[i] ? ~mask : mask)) != 0;
    }

    /** Outlets' worth that stand, above 0. */
    double sum(boolean more, int section) {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += isAt(i, more, section) ? Math.abs(outlets[i]) : 0;
        }
        return sum;
    }

    /** How well {@link #sum} is known. */
    double doubt(boolean more, int section) {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += isAt(i, more, section) ? doubt[i] : 0;
        }
        return sum;
    }

    /** Whether one of them is a section that runs although it is switched off. */
    boolean runsOn(int section) {
        for (int i = 0; i < count; i++) {
            if (isAt(i, true, section) && runsOn[i]) {
                return true;
            }
        }
        return false;
    }

    private boolean isAt(int i, boolean more, int section) {
        return outlets[i] > 0 == more && place(i) == section;
    }

    private int place(int i) {
        return Long.bitCount(where[i]) == 1 ? Long.numberOfTrailingZeros(where[i]) : Conductance.BOOM;
    }
}
