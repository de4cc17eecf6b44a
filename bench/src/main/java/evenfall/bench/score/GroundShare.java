package evenfall.bench.score;

import evenfall.sim.world.RowLedger;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the ground really got, by rows and cells of two metres along the pass; complete cells only. True, whatever was reported.
 *
 * @param below80Share share of all row cells that got less than 80 % of their cell's mean, a ratio; null where nothing fell
 * @param above120Share share of those that got more than 120 %; null where nothing fell
 * @param rowCvByCell row CV of each cell along the pass, a ratio
 * @param map what each row got in each cell
 */
public record GroundShare(
        @Nullable Double below80Share, @Nullable Double above120Share, List<Double> rowCvByCell, GroundMap map) {
    static final GroundShare NOTHING = new GroundShare(null, null, List.of(), GroundMap.NONE);

    private static final double LITTLE = 0.8;
    private static final double MUCH = 1.2;

    public GroundShare {
        rowCvByCell = List.copyOf(rowCvByCell);
    }

    static GroundShare of(RowLedger ledger) {
        long below = 0;
        long above = 0;
        long all = 0;
        List<Double> rowCv = new ArrayList<>();
        for (int cell = 0; cell < ledger.cells(); cell++) {
            double sumL = 0;
            for (int row = 0; row < ledger.rows(); row++) {
                sumL += ledger.litres(cell, row);
            }
            if (!ledger.isComplete(cell) || !(sumL > 0)) {
                continue;
            }
            double meanL = sumL / ledger.rows();
            for (int row = 0; row < ledger.rows(); row++) {
                double share = ledger.litres(cell, row) / meanL;
                below += share < LITTLE ? 1 : 0;
                above += share > MUCH ? 1 : 0;
                all++;
            }
            ledger.figures(cell).ifPresent(figures -> rowCv.add(figures.rowCv()));
        }
        GroundMap map = GroundMap.of(ledger);
        return all == 0
                ? new GroundShare(null, null, List.of(), map)
                : new GroundShare((double) below / all, (double) above / all, rowCv, map);
    }
}
