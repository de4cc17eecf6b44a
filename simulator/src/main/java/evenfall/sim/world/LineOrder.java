package evenfall.sim.world;

import evenfall.sim.jet.Landings;

/**
 * The lines of a moment from left to right. From one moment to the next they hardly change places, so the order is kept and only
 * mended.
 */
final class LineOrder {
    /** Lines of different outlets are doubled within this part of a row spacing. */
    private static final double NEAR_ROWS = 0.25;

    /** Keeps lines that are near by design, and to the last digit, on one side. */
    private static final double SLACK_M = 1e-9;

    private final double nearM;
    private double[] rightM = {};
    private double[] m3ps = {};
    private int outlets = 1;
    private int[] order = {};

    LineOrder(double rowM) {
        nearM = NEAR_ROWS * rowM + SLACK_M;
    }

    /** Takes the lines of a step; each counts for what it would bring in a second. */
    void take(Landings lines, double stepsPerSecond) {
        outlets = lines.outlets();
        int all = lines.streams() * outlets;
        if (order.length != all) {
            rightM = new double[all];
            m3ps = new double[all];
            order = new int[all];
            for (int n = 0; n < all; n++) {
                // Outlet by outlet, which is nearly the order on the ground.
                order[n] = n % lines.streams() * outlets + n / lines.streams();
            }
        }
        for (int k = 0; k < lines.streams(); k++) {
            System.arraycopy(lines.rightM()[k], 0, rightM, k * outlets, outlets);
            for (int i = 0; i < outlets; i++) {
                m3ps[k * outlets + i] = lines.quantity()[k][i] * stepsPerSecond;
            }
        }
        sort();
    }

    private void sort() {
        for (int n = 1; n < order.length; n++) {
            int line = order[n];
            double atM = rightM[line];
            int to = n;
            while (to > 0 && rightM[order[to - 1]] > atM) {
                order[to] = order[to - 1];
                to--;
            }
            order[to] = line;
        }
    }

    /** Those lines of the stretch from one place up to another, m right of the centre line, that bring anything. */
    LineFigures between(double fromM, double toM) {
        int count = 0;
        double widestM = 0;
        double beforeM = 0;
        double flow = 0;
        double doubled = 0;
        for (int n = 0; n < order.length; n++) {
            int line = order[n];
            double atM = rightM[line];
            if (atM < fromM || atM >= toM || !(m3ps[line] > 0)) {
                continue;
            }
            if (count > 0) {
                widestM = Math.max(widestM, atM - beforeM);
            }
            beforeM = atM;
            count++;
            flow += m3ps[line];
            doubled += isDoubled(n) ? m3ps[line] : 0;
        }
        return new LineFigures(count, widestM, flow, doubled);
    }

    private boolean isDoubled(int n) {
        return meets(n, -1) || meets(n, 1);
    }

    private boolean meets(int n, int step) {
        int line = order[n];
        for (int other = n + step; other >= 0 && other < order.length; other += step) {
            if (Math.abs(rightM[order[other]] - rightM[line]) > nearM) {
                return false;
            }
            if (order[other] % outlets != line % outlets && m3ps[order[other]] > 0) {
                return true;
            }
        }
        return false;
    }
}
