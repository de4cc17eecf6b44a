package evenfall.bench.sheet;

import evenfall.bench.score.GroundMap;

/**
 * A map over the mean of the ground that was sprayed: the cells in which most rows got something. Over the mean of all of it, turns with
 * the boom switched off would make the rest look overfed.
 */
final class Sprayed {
    /** A row that got less of the pass's mean than this got nothing to speak of. */
    private static final double NOTHING = 0.02;

    private final GroundMap ground;
    private final boolean[] sprayed;
    private final double mean;

    Sprayed(GroundMap ground) {
        this.ground = ground;
        sprayed = new boolean[ground.cells()];
        double sum = 0;
        int cells = 0;
        for (int cell = 0; cell < sprayed.length; cell++) {
            int fed = 0;
            double inCell = 0;
            for (int row = 0; row < ground.rows(); row++) {
                fed += ground.share(cell, row) > NOTHING ? 1 : 0;
                inCell += ground.share(cell, row);
            }
            sprayed[cell] = 2 * fed > ground.rows();
            if (sprayed[cell]) {
                sum += inCell / ground.rows();
                cells++;
            }
        }
        mean = cells == 0 ? 1 : sum / cells;
    }

    boolean isSprayed(int cell) {
        return sprayed[cell];
    }

    /** Over the mean of what was sprayed, a ratio. */
    double share(int cell, int row) {
        return ground.share(cell, row) / mean;
    }
}
