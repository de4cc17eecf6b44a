package evenfall.pattern;

/**
 * How lines divide among the rows: each among the row nearest to it and the two beside that. Many at once, in arrays that are filled
 * again with the next.
 *
 * <p>A line that is spread and of unsure place gives a row what it may expect: the hat of {@link Rows} averaged over an even band of both. With x the place
 * right of the nearest row, h half the band, both in row widths, and m the greater of h and |x|, the rows beside get {@code (|x| ∓ x)/2 + a}
 * and the nearest {@code 1 − |x| − 2a}, {@code a = (m − |x|)² / 4m}; the share of the nearest falls by {@code x/m} as the line moves on. Where the band does not
 * reach over the row's middle m is |x|, a is nothing, and that is the plain hat: one sum for both, without a question that a processor
 * would have to guess at for each line.
 */
final class Nearness {
    /** Half the width of an even band over its standard deviation. */
    private static final double HALF_OVER_SD = Math.sqrt(3);

    /** A band up to so many rows to either side of a line reaches three rows at most; a wider one is cut off there. */
    private static final double MOST_HALF = 0.5;

    /** Keeps a line whose place is sure and on a row's middle from a division of nothing by nothing, row widths. */
    private static final double LEAST_HALF = 1e-12;

    private final double perWidth;
    private final double phase;
    private final double[] nearest;

    /** How many lines there are; what arrays hold beyond means nothing. */
    int count;

    /** Row of the nearest, 0 for the one at the phase. */
    final int[] near;

    /** How far right of it, row widths. */
    final double[] right;

    /** What the rows beside get more than a line of sure place would give them, of 1. */
    final double[] aside;

    /** How the share of the nearest falls with the place, per row width; that of the rows beside grows by half of what is left of 1 to either side. */
    final double[] slope;

    /** How much farther right the line lands if all heights are greater by one standard deviation, row widths. */
    final double[] moves;

    /**
     * @param rowM row spacing, m
     * @param phase place of row 0 right of the centre line, in row spacings
     * @param most how many lines may be found at once
     */
    Nearness(double rowM, double phase, int most) {
        this.perWidth = 1 / rowM;
        this.phase = phase;
        nearest = new double[most];
        near = new int[most];
        right = new double[most];
        aside = new double[most];
        slope = new double[most];
        moves = new double[most];
    }

    /**
     * Works out lines of sure places, for {@link Rows#add(Nearness, double[])}.
     *
     * @param atM where they land, m right of the centre line
     * @param n how many there are: the first so many
     */
    void find(double[] atM, int n) {
        count = n;
        for (int i = 0; i < n; i++) {
            nearest[i] = Math.floor(atM[i] * perWidth - phase + 0.5);
        }
        for (int i = 0; i < n; i++) {
            right[i] = atM[i] * perWidth - phase - nearest[i];
        }
        for (int i = 0; i < n; i++) {
            near[i] = (int) nearest[i];
        }
    }

    /**
     * Works out lines that are spread and of unsure places, for {@link Rows#addUnsure}.
     *
     * @param atM where they land, m right of the centre line
     * @param sdM how much farther right each lands if all heights are greater by one standard deviation, m
     * @param spreadM how wide each lies about its middle, standard deviation, m
     * @param n how many there are: the first so many of all arrays
     */
    void find(double[] atM, double[] sdM, double[] spreadM, int n) {
        find(atM, n);
        for (int i = 0; i < n; i++) {
            moves[i] = sdM[i] * perWidth;
        }
        for (int i = 0; i < n; i++) {
            double away = Math.abs(right[i]);
            double spread = spreadM[i] * perWidth;
            double half = Math.min(MOST_HALF, Math.sqrt(moves[i] * moves[i] + spread * spread) * HALF_OVER_SD);
            double most = Math.max(LEAST_HALF, Math.max(half, away));
            double per = 1 / most;
            aside[i] = 0.25 * (most - away) * (most - away) * per;
            slope[i] = right[i] * per;
        }
    }
}
