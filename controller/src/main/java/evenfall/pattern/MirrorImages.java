package evenfall.pattern;

import evenfall.rig.BoomLayout;

/** The lines near an end of the boom, and where the same lines of an adjoining pass lie that mirrors this one. */
final class MirrorImages {
    private final double halfWidthM;
    private final double rowM;
    private final int outlets;

    /** So many outlets from either end throw lines that may come near it, from twice the target height too. */
    private final int nearAnEnd;

    /** How many there are; what arrays hold beyond means nothing. */
    int count;

    /** Place of each in the arrays that were looked at. */
    final int[] of;

    /** Where the image lies, m right of the centre line. */
    final double[] atM;

    /** How much it brings, as its line does. */
    final double[] share;

    /**
     * @param reachM how far from its outlet a line may land at target height, m
     * @param most how many lines there may be
     */
    MirrorImages(BoomLayout boom, double reachM, int most) {
        halfWidthM = 0.5 * boom.widthM();
        rowM = boom.rowM();
        outlets = boom.outlets();
        nearAnEnd = (int) Math.min(outlets, Math.ceil((Math.max(Fall.BESIDE_M, 2 * reachM) + rowM) / boom.spacingM()));
        of = new int[most];
        atM = new double[most];
        share = new double[most];
    }

    /**
     * Looks at lines.
     *
     * @param linesM where they lie, m right of the centre line
     * @param shares how much each brings
     * @param n how many there are; where it is all of the boom's, they stand as {@link Landings#land} fills them
     */
    void find(double[] linesM, double[] shares, int n) {
        count = 0;
        if (n < linesM.length || 2 * nearAnEnd >= outlets) {
            look(linesM, shares, 0, n);
            return;
        }
        for (int from = 0; from < n; from += outlets) {
            look(linesM, shares, from, from + nearAnEnd);
            look(linesM, shares, from + outlets - nearAnEnd, from + outlets);
        }
    }

    private void look(double[] linesM, double[] shares, int from, int to) {
        for (int i = from; i < to; i++) {
            // A hat reaches one row to either side.
            if (halfWidthM - Math.abs(linesM[i]) < rowM) {
                of[count] = i;
                atM[count] = Math.copySign(2 * halfWidthM, linesM[i]) - linesM[i];
                share[count++] = shares[i];
            }
        }
    }
}
