package evenfall.bench.compare;

/**
 * Colours for what a row got: pale where it is the mean, towards orange where it got less, towards blue where it got more. Orange and
 * blue differ for every common kind of colour blindness, and lightness falls evenly to both sides, so the picture also reads in grey.
 */
final class ShareColour {
    /** Nothing, and the mean, and twice the mean; between them colours are mixed. Chosen by us. */
    private static final int[] NOTHING = {166, 66, 0};

    private static final int[] MEAN = {246, 246, 242};
    private static final int[] TWICE = {0, 64, 140};

    private ShareColour() {}

    /**
     * The colour of a share.
     *
     * @param share over the mean, 0 or more; above 2 it counts as 2
     * @return 0xRRGGBB
     */
    static int rgb(double share) {
        double away = Math.min(1, Math.abs(share - 1));
        int[] end = share < 1 ? NOTHING : TWICE;
        int rgb = 0;
        for (int i = 0; i < 3; i++) {
            rgb = rgb << 8 | (int) Math.round(MEAN[i] + away * (end[i] - MEAN[i]));
        }
        return rgb;
    }
}
