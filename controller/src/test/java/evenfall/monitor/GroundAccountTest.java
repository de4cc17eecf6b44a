package evenfall.monitor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.ledger.LedgerCell;
import evenfall.ledger.LedgerTotals;
import evenfall.ledger.PassSummary;
import evenfall.sense.Unknown;
import org.junit.jupiter.api.Test;

/** From sentences to the ledger. */
class GroundAccountTest {
    @Test
    void whatTheHubSaysBecomesLitresMetresAndGround() throws Exception {
        HubScript script = new HubScript();
        script.run(20).end();

        LedgerTotals totals = script.passes.get(0).totals();
        assertThat(totals.wayM()).isCloseTo(110, within(3.0));
        assertThat(totals.treatedM2()).isCloseTo(totals.wayM() * 36.576, within(1e-6));
        // 150 L/ha.
        assertThat(totals.meteredM3() * 1e7 / totals.treatedM2()).isCloseTo(150, within(1.5));
        // UAN 28 % of 1.28 kg/L: 358.4 g of nitrogen in a litre.
        assertThat(totals.nitrogenKg()).isCloseTo(358.4 * (totals.onRowsM3() + totals.besideM3()), within(1e-9));
        assertThat(totals.notPlacedM3()).isZero();
        assertThat(totals.below80Share().orElseThrow()).isLessThan(0.02);
        assertThat(totals.above120Share()).hasValue(0);
        assertThat(script.cells).extracting(cell -> cell.span().cell()).startsWith(0, 1, 2, 3);
    }

    @Test
    void aReceiverWithoutAFixLeavesTimeNotKnown() throws Exception {
        HubScript script = new HubScript();
        script.run(6);
        script.fix = false;
        script.run(4);
        script.fix = true;
        script.run(6).end();

        LedgerTotals totals = script.passes.get(0).totals();
        assertThat(totals.notPlaced()).anySatisfy(part -> {
            assertThat(part.reason()).isEqualTo(Unknown.NEEDS_SPEED);
            assertThat(part.seconds()).isBetween(1.5, 5.0);
            assertThat(part.volumeM3()).isGreaterThan(1e-3);
        });
        assertThat(totals.onRowsM3() + totals.besideM3() + totals.notPlacedM3())
                .isCloseTo(totals.meteredM3(), within(1e-12));
    }

    @Test
    void theWatchThatEndsEndsThePass() throws Exception {
        HubScript script = new HubScript();
        script.run(5.1).end();

        assertThat(script.passes).singleElement().satisfies(pass -> {
            assertThat(pass.end()).isEqualTo(PassSummary.End.WATCH_ENDED);
            assertThat(pass.cells()).isEqualTo(script.cells.size());
        });
        LedgerCell last = script.cells.get(script.cells.size() - 1);
        assertThat(last.totals().wayM())
                .isCloseTo(last.span().fromM() + last.span().lengthM(), within(1e-9));
    }
}
