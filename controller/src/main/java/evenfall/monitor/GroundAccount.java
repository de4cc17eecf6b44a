package evenfall.monitor;

import evenfall.ledger.LedgerCell;
import evenfall.ledger.LedgerListener;
import evenfall.ledger.Moment;
import evenfall.ledger.PassSummary;
import evenfall.ledger.RowLedger;
import evenfall.pattern.Fall;
import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import evenfall.sense.PositionSense;
import evenfall.sense.Quantity;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Hands the row ledger what the monitor knows at each grid moment, and its cells and passes to the outputs. */
final class GroundAccount implements LedgerListener {
    private final Rig rig;
    private final Inputs inputs;
    private final Outputs outputs;
    private final RowLedger ledger;
    private final boolean[] open;
    private long lastUs;
    private @Nullable Moment last;

    GroundAccount(Rig rig, Inputs inputs, Outputs outputs, long startUs) {
        this.rig = rig;
        this.inputs = inputs;
        this.outputs = outputs;
        this.ledger = new RowLedger(rig, this);
        this.open = new boolean[rig.boom().outlets()];
        this.lastUs = startUs;
    }

    /** @param fall what falls; null where that is not known */
    void take(Live live, @Nullable Fall fall) {
        boolean carried = live.flowM3ps().isKnown() && live.speedMps().isKnown();
        PositionSense.Fix fix = inputs.fix(live.timeUs());
        if (live.widthM().isKnown()) {
            List<BoomLayout.Section> sections = rig.boom().sections();
            for (int n = 0; n < sections.size(); n++) {
                Arrays.fill(open, sections.get(n).firstOutlet(), sections.get(n).endOutlet(), inputs.isOn(n));
            }
        }
        Moment moment = new Moment(
                live.timeUs(),
                (live.timeUs() - lastUs) * 1e-6,
                live.flowM3ps(),
                live.speedMps(),
                carried ? inputs.speedDuringFlowMps() : 0,
                live.widthM(),
                open,
                fall,
                fall == null ? live.boom().unknown() : null,
                oldestUs(live),
                fix,
                inputs.placeUnknown(live.timeUs()));
        lastUs = live.timeUs();
        last = moment;
        ledger.take(moment);
    }

    private static long oldestUs(Live live) {
        long oldest = -1;
        for (Quantity height : live.sensorHeightM()) {
            oldest = Math.max(oldest, height.ageUs());
        }
        return oldest;
    }

    /** The watch is over. */
    void end() {
        if (last != null) {
            ledger.end(last);
        }
    }

    @Override
    public void cell(LedgerCell cell) {
        outputs.cell(cell);
    }

    @Override
    public void pass(PassSummary pass) {
        outputs.pass(pass);
    }
}
