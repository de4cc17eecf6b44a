package evenfall.monitor;

import evenfall.ledger.LedgerCell;
import evenfall.ledger.PassSummary;
import evenfall.rig.Rig;
import java.util.Arrays;
import java.util.List;

/** A {@link HubScript} for tests elsewhere that want cells and passes as the core gives them. */
public final class LedgerScript {
    public final Rig rig;
    public final List<LedgerCell> cells;
    public final List<PassSummary> passes;
    private final HubScript script;

    public LedgerScript() throws Exception {
        script = new HubScript();
        rig = script.rig;
        cells = script.cells;
        passes = script.passes;
    }

    /** No height sensor hears an echo. */
    public void withoutHeights() {
        Arrays.fill(script.echo, false);
    }

    public LedgerScript run(double seconds) {
        script.run(seconds);
        return this;
    }

    public LedgerScript end() {
        script.end();
        return this;
    }
}
