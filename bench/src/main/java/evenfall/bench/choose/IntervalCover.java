package evenfall.bench.choose;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The fewest pieces that cover a whole without a gap, exactly. Of all such choices the one with the most room: the smallest
 * overlap between neighbours, or over an end of the whole, is as large as it can be (as a ratio).
 */
final class IntervalCover {
    /** Ends that meet but for rounding do meet. */
    private static final double ROUNDING = 1 - 1e-12;

    private IntervalCover() {}

    /**
     * @param pieces with low ends and high ends rising, all above 0
     * @param whole what shall be covered, above 0
     * @return indices, rising; null where the pieces leave a gap
     */
    static int @Nullable [] fewest(List<Span> pieces, Span whole) {
        int n = pieces.size();
        double[] room = new double[n];
        int[][] before = new int[n + 1][n];
        for (int j = 0; j < n; j++) {
            room[j] = touching(whole.low() / pieces.get(j).low());
            before[1][j] = -1;
        }
        for (int count = 1; count <= n; count++) {
            int last = best(pieces, whole, room);
            if (last >= 0) {
                return trace(before, count, last);
            }
            if (count < n) {
                room = oneMore(pieces, room, before[count + 1]);
            }
        }
        return null;
    }

    /** 0 where there is a gap, else the overlap as a ratio. */
    private static double touching(double ratio) {
        return ratio >= ROUNDING ? ratio : 0;
    }

    private static int best(List<Span> pieces, Span whole, double[] room) {
        int best = -1;
        double most = 0;
        for (int j = 0; j < room.length; j++) {
            double all = Math.min(room[j], touching(pieces.get(j).high() / whole.high()));
            if (all > most) {
                most = all;
                best = j;
            }
        }
        return best;
    }

    private static double[] oneMore(List<Span> pieces, double[] room, int[] before) {
        double[] next = new double[room.length];
        for (int j = 0; j < room.length; j++) {
            before[j] = -1;
            for (int i = 0; i < j; i++) {
                double all = Math.min(
                        room[i], touching(pieces.get(i).high() / pieces.get(j).low()));
                if (all > next[j]) {
                    next[j] = all;
                    before[j] = i;
                }
            }
        }
        return next;
    }

    private static int[] trace(int[][] before, int count, int last) {
        int[] chosen = new int[count];
        int at = last;
        for (int k = count; k >= 1; k--) {
            chosen[k - 1] = at;
            at = before[k][at];
        }
        return chosen;
    }
}
