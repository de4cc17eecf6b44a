package evenfall.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenfall.quantity.TradeUnits;
import evenfall.sense.PositionSense;
import evenfall.sense.Unknown;
import java.util.Arrays;
import java.util.Random;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RowLedgerTest {
    private static final double WIDTH_M = 36.576;

    /**
     * 75 lb of N on an acre take 25.151 US gal of 28 % UAN, 10.65 lb/US gal (University of Nebraska-Lincoln CropWatch 2016, "Setting
     * the Sprayer Flow Rate for Non-Water Solutions": 10.65 × 0.28 = 2.982 lb N/gal). One acre is 43,560 ft², 110.6424 m of a boom of
     * 36.576 m.
     */
    @Test
    void anAcreAtThePublishedRateGetsThePublishedNitrogen() throws Exception {
        double lbPerGalKgpL = TradeUnits.POUND_KG / (TradeUnits.US_GALLON_M3 * 1000);
        PaperField field = new PaperField(
                "# density_kgpL: 1.28 ",
                "density_kgpL: " + 10.65 * lbPerGalKgpL + " ",
                "rate_Lpha: 150",
                "rate_Lpha: " + 25.151 * TradeUnits.GPA_M / TradeUnits.LPHA_M);
        field.speedMps = TradeUnits.ACRE_M2 / WIDTH_M / 20;

        field.drive(20).end();

        LedgerTotals totals = field.totals();
        assertThat(totals.treatedM2()).isCloseTo(TradeUnits.ACRE_M2, within(1e-6));
        assertThat(totals.meteredM3() / TradeUnits.US_GALLON_M3).isCloseTo(25.151, within(1e-6));
        assertThat(totals.nitrogenKg() / TradeUnits.POUND_KG).isCloseTo(75, within(0.002));
        assertThat(totals.below80Share()).hasValue(0);
        assertThat(totals.above120Share()).hasValue(0);
        assertThat(totals.unknownShare()).hasValue(0);
    }

    /** By hand: 150 L/ha on a row of 0.1905 m over 2 m is 150e-7 m × 0.381 m² = 5.715 mL. */
    @Test
    void aRowsLitresAreTheRateOnItsGround() throws Exception {
        PaperField field = new PaperField("type: five-stream", "type: streamer-bar");
        field.drive(4);

        LedgerCell cell = field.cells.get(3);
        assertThat(cell.rows()).isEqualTo(192);
        double sum = 0;
        for (int row = 1; row < 191; row++) {
            sum += cell.litres(row);
            assertThat(cell.litres(row)).isCloseTo(5.715e-3, Percentage.withPercentage(15));
            assertThat(cell.share(row)).isCloseTo(cell.litres(row) / 5.715e-3, within(1e-9));
        }
        assertThat(sum / 190).isCloseTo(5.715e-3, Percentage.withPercentage(0.5));
        assertThat(cell.nitrogenKg(90)).isCloseTo(cell.litres(90) * 1.28 * 0.28, within(1e-12));
        assertThat(cell.span()).isEqualTo(new LedgerCell.Span(1_600_000, 1, 3, 6, 2));
        assertThat(cell.rowRightM(0)).isCloseTo(-18.19275, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void everyLitreOfTheMeterIsSomewhere(long seed) throws Exception {
        Random random = new Random(seed);
        PaperField field = new PaperField("type: five-stream", "type: seven-stream");
        double meteredM3 = 0;
        for (int i = 0; i < 600; i++) {
            field.flowKnown = random.nextInt(12) > 0;
            field.speedKnown = random.nextInt(15) > 0;
            field.sectionsKnown = random.nextInt(20) > 0;
            field.speedMps = random.nextInt(10) == 0 ? 0.3 : 2 + 6 * random.nextDouble();
            field.rateShare = random.nextInt(10) == 0 ? 0 : 2 * random.nextDouble();
            if (random.nextInt(10) == 0) {
                boolean all = random.nextInt(3) > 0;
                for (int o = 0; o < 72; o++) {
                    field.open[o] = all && (o / 12 != 2 || random.nextBoolean());
                }
            }
            for (int o = 0; o < 72; o++) {
                field.heightM[o] = 1.2 * random.nextDouble() - 0.05;
                field.heightKnown[o] = random.nextInt(5) > 0;
            }
            meteredM3 += field.step(0.05 + 0.4 * random.nextDouble());
        }
        field.end();

        LedgerTotals totals = field.totals();
        String as = "seed " + seed;
        assertThat(totals.meteredM3()).as(as).isCloseTo(meteredM3, within(1e-9 * meteredM3));
        assertThat(totals.onRowsM3() + totals.besideM3() + totals.notPlacedM3())
                .as(as)
                .isCloseTo(meteredM3, within(1e-9 * meteredM3));
        double onRowsL = 0;
        for (LedgerCell cell : field.cells) {
            for (int row = 0; row < cell.rows(); row++) {
                onRowsL += cell.litres(row);
            }
        }
        assertThat(onRowsL).as(as).isCloseTo(1000 * totals.onRowsM3(), within(1e-9 * onRowsL));
        assertThat(totals.besideM3()).as(as).isGreaterThan(0);
        double groundM2 = 0;
        double unknownM2 = 0;
        for (LedgerTotals.NotPlaced part : totals.notPlaced()) {
            unknownM2 += part.groundM2();
        }
        for (PassSummary pass : field.passes) {
            groundM2 += pass.pass().knownM2() + pass.pass().unknownM2();
        }
        assertThat(totals.unknownM2()).as(as).isCloseTo(unknownM2, within(1e-6));
        assertThat(totals.knownM2() + totals.unknownM2()).as(as).isCloseTo(groundM2, within(1e-6));
    }

    @Test
    void aFlowThatIsNotKnownIsGroundThatIsNotKnownAndNotGroundThatGotNothing() throws Exception {
        PaperField field = new PaperField();
        field.drive(4);
        field.flowKnown = false;
        field.drive(2);
        field.flowKnown = true;
        field.drive(4).end();

        LedgerTotals totals = field.totals();
        assertThat(totals.wayM()).isCloseTo(50, within(1e-9));
        assertThat(totals.unknownM2()).isCloseTo(10 * WIDTH_M, within(1e-6));
        assertThat(totals.unknownShare().orElseThrow()).isCloseTo(0.2, within(1e-9));
        assertThat(totals.below80Share()).hasValue(0);
        assertThat(totals.notPlaced()).singleElement().satisfies(part -> {
            assertThat(part.reason()).isEqualTo(Unknown.NEEDS_FLOW);
            assertThat(part.seconds()).isCloseTo(2, within(1e-9));
            assertThat(part.wayM()).isCloseTo(10, within(1e-9));
            assertThat(part.groundM2()).isCloseTo(10 * WIDTH_M, within(1e-6));
            assertThat(part.volumeM3()).isZero();
        });
        LedgerCell unknown = field.cells.get(11);
        assertThat(unknown.rowsUnknown()).isEqualTo(Unknown.NEEDS_FLOW);
        assertThatThrownBy(() -> unknown.share(0)).hasMessageContaining("not known");
    }

    @Test
    void withoutFlowWhileDrivingTheGroundGotNothingAndThatIsKnown() throws Exception {
        PaperField field = new PaperField();
        field.rateShare = 0;
        field.drive(4).end();

        assertThat(field.totals().below80Share()).hasValue(1);
        assertThat(field.totals().unknownShare()).hasValue(0);
        assertThat(field.totals().leaf()).isNull();
    }

    @Test
    void heightsThatAreNotKnownTakeTheirRowsAndTheirLitresOut() throws Exception {
        PaperField field = new PaperField();
        Arrays.fill(field.heightKnown, 36, 72, false);
        double meteredM3 = 0;
        for (int i = 0; i < 20; i++) {
            meteredM3 += field.step(0.2);
        }
        field.end();

        LedgerTotals totals = field.totals();
        assertThat(totals.notPlacedM3()).isCloseTo(0.5 * meteredM3, within(1e-12));
        assertThat(totals.unknownShare().orElseThrow()).isBetween(0.5, 0.52);
        assertThat(totals.below80Share()).hasValue(0);
        assertThat(field.lastCell().state(20)).isEqualTo(GroundState.WITHIN);
        assertThat(field.lastCell().state(150)).isEqualTo(GroundState.NOT_KNOWN);
        assertThat(field.lastCell().rowsUnknown()).isEqualTo(Unknown.NEEDS_HEIGHT);
    }

    @Test
    void aSpeedThatIsNotKnownLeavesTimeAndLitresButNoWay() throws Exception {
        PaperField field = new PaperField();
        field.drive(2);
        field.speedKnown = false;
        double lostM3 = field.step(0.2) + field.step(0.2);
        field.speedKnown = true;
        field.drive(2).end();

        assertThat(field.totals().wayM()).isCloseTo(20, within(1e-9));
        assertThat(field.totals().notPlaced()).singleElement().satisfies(part -> {
            assertThat(part.reason()).isEqualTo(Unknown.NEEDS_SPEED);
            assertThat(part.seconds()).isCloseTo(0.4, within(1e-9));
            assertThat(part.volumeM3()).isCloseTo(lostM3, within(1e-15));
        });
        assertThat(field.passes).as("the pass goes on").hasSize(1);
    }

    @Test
    void aDoubledRateIsTooMuchEverywhereAndAHalvedOneTooLittle() throws Exception {
        PaperField field = new PaperField();
        field.rateShare = 2;
        field.drive(4);
        field.rateShare = 0.5;
        field.drive(4).end();

        assertThat(field.totals().above120Share().orElseThrow()).isCloseTo(0.5, within(1e-9));
        assertThat(field.totals().below80Share().orElseThrow()).isCloseTo(0.5, within(1e-9));
    }

    @Test
    void passesBeginAtPaceWithSectionsOnAndAreNumbered() throws Exception {
        PaperField field = new PaperField();
        field.speedMps = 0.3;
        field.drive(2);
        assertThat(field.totals().notPlaced())
                .extracting(LedgerTotals.NotPlaced::reason)
                .containsExactly(Unknown.STANDING);
        field.speedMps = 5;
        field.drive(4.2).sections(false).drive(2).sections(true).drive(2).end();

        assertThat(field.passes).extracting(PassSummary::number).containsExactly(1, 2);
        assertThat(field.passes)
                .extracting(PassSummary::end)
                .containsExactly(PassSummary.End.SECTIONS_OFF, PassSummary.End.WATCH_ENDED);
        assertThat(field.passes.get(0).pass().wayM()).isCloseTo(21, within(1e-9));
        assertThat(field.passes.get(0).cells()).as("ten of 2 m and one of 1 m").isEqualTo(11);
        assertThat(field.passes.get(1).totals().wayM()).isCloseTo(31, within(1e-9));
    }

    @Test
    void aTurnWithSectionsOnIsAPassOfItsOwnAndAContourIsNot() throws Exception {
        PaperField field = new PaperField();
        field.grade = PositionSense.Grade.PLAIN;
        field.drive(8);
        turn(field, 10);
        field.drive(12);
        turn(field, -60);
        field.drive(4).end();

        assertThat(field.passes)
                .extracting(PassSummary::end)
                .containsExactly(PassSummary.End.TURNED, PassSummary.End.STRAIGHT, PassSummary.End.WATCH_ENDED);
        assertThat(field.passes).extracting(PassSummary::turning).containsExactly(false, true, false);
        assertThat(field.passes.get(0).pass().wayM()).isBetween(45.0, 52.0);
    }

    private static void turn(PaperField field, double radiusM) {
        double stepDeg = Math.toDegrees(field.speedMps * PaperField.STEP_S / radiusM);
        for (double turned = 0; turned < 180; turned += Math.abs(stepDeg)) {
            field.courseDeg += stepDeg;
            field.step(PaperField.STEP_S);
        }
    }

    @Test
    void passesSideBySideFeedEachOthersEdges() throws Exception {
        PaperField field = new PaperField();
        field.grade = PositionSense.Grade.DIFFERENTIAL;
        field.pass(0, true, 60).pass(WIDTH_M, false, 60);

        LedgerTotals totals = field.totals();
        assertThat(totals.below80Share()).hasValue(0);
        assertThat(totals.above120Share()).hasValue(0);
        assertThat(totals.knownM2()).isCloseTo(120 * WIDTH_M, within(1e-6));
        assertThat(totals.overlapM2()).isZero();
        assertThat(totals.missedM2()).isZero();
        LedgerCell first = field.cells.get(5);
        LedgerCell second = field.lastCell();
        assertThat(first.beside()).isEqualTo(new LedgerCell.Beside(false, false, 0, 0, null));
        assertThat(second.beside().rightDriven())
                .as("it comes back on its right")
                .isTrue();
        assertThat(second.beside().leftDriven()).isFalse();
        assertThat(second.share(191))
                .as("as if the neighbour mirrored it, for it does")
                .isCloseTo(second.share(0), within(0.01));
    }

    @Test
    void aGapBetweenPassesIsGroundThatGotTooLittle() throws Exception {
        PaperField field = new PaperField();
        field.grade = PositionSense.Grade.RTK;
        field.pass(0, true, 60).pass(WIDTH_M + 2, false, 60);

        LedgerTotals totals = field.totals();
        assertThat(field.cells.get(45).beside().missedM()).isCloseTo(2, within(0.2));
        assertThat(totals.missedM2()).isCloseTo(2 * 60, within(0.2 * 60));
        // The lines that reach over feed its outermost rows; a row within the boom's end has too little, too.
        assertThat(totals.belowM2()).isCloseTo(2 * 60, within(0.6 * 60));
        assertThat(totals.knownM2()).isCloseTo(120 * WIDTH_M + totals.missedM2(), within(1e-6));
    }

    @Test
    void anOverlapIsCountedOnceAsGroundAndGotTooMuch() throws Exception {
        PaperField field = new PaperField();
        field.grade = PositionSense.Grade.DIFFERENTIAL;
        field.pass(0, true, 60).pass(WIDTH_M - 3, false, 60);

        LedgerTotals totals = field.totals();
        assertThat(field.cells.get(45).beside().overlapM()).isCloseTo(3, within(0.2));
        assertThat(totals.treatedM2()).isCloseTo(120 * WIDTH_M, within(1e-6));
        assertThat(totals.knownM2()).isCloseTo(120 * WIDTH_M - totals.overlapM2(), within(1e-6));
        assertThat(totals.overlapM2()).isCloseTo(3 * 60, within(0.2 * 60));
        assertThat(totals.aboveM2()).isCloseTo(3 * 60, within(0.6 * 60));
        assertThat(field.lastCell().share(190)).isCloseTo(2, within(0.15));
    }

    @Test
    void aCrossingDrivesGroundTwiceAndTheSecondTimeCounts() throws Exception {
        PaperField field = new PaperField();
        field.grade = PositionSense.Grade.DIFFERENTIAL;
        field.pass(0, true, 120);
        field.courseDeg = 90;
        field.eastM = -40;
        field.northM = 60;
        field.drive(0.4).sections(true).drive(16).end();

        double crossedM2 = WIDTH_M * WIDTH_M;
        assertThat(field.totals().overlapM2()).isCloseTo(crossedM2, Percentage.withPercentage(6));
        assertThat(field.totals().aboveM2()).isCloseTo(crossedM2, Percentage.withPercentage(6));
    }

    @Test
    void aFixOfItsOwnIsTooCoarseForRowsUnlessTheFarmSaysOtherwise() throws Exception {
        PaperField careful = new PaperField();
        careful.grade = PositionSense.Grade.PLAIN;
        careful.pass(0, true, 20).pass(WIDTH_M, false, 20);
        PaperField trusting = new PaperField("overlap_from: differential", "overlap_from: any");
        trusting.grade = PositionSense.Grade.PLAIN;
        trusting.pass(0, true, 20).pass(WIDTH_M, false, 20);
        PaperField lost = new PaperField();
        lost.pass(0, true, 20);

        assertThat(careful.lastCell().beside().unknown()).isEqualTo(PlaceDoubt.TOO_COARSE);
        assertThat(careful.lastCell().beside().rightDriven()).isFalse();
        assertThat(trusting.lastCell().beside().unknown()).isNull();
        assertThat(trusting.lastCell().beside().rightDriven()).isTrue();
        assertThat(lost.lastCell().beside().unknown()).isEqualTo(PlaceDoubt.NO_PLACE);
        assertThat(lost.lastCell().placeUnknown()).isEqualTo(Unknown.NO_FIX);
    }

    @Test
    void whereThePassBesideIsNotKnownTheEdgeIsNotKnownEither() throws Exception {
        PaperField field = new PaperField();
        field.grade = PositionSense.Grade.RTK;
        field.flowKnown = false;
        field.pass(0, true, 20);
        field.flowKnown = true;
        field.pass(WIDTH_M, false, 20);

        assertThat(field.lastCell().state(191)).isEqualTo(GroundState.NOT_KNOWN);
        assertThat(field.lastCell().rowsUnknown()).isEqualTo(Unknown.NEEDS_EARLIER_PASS);
        assertThat(field.lastCell().state(100)).isEqualTo(GroundState.WITHIN);
    }

    @Test
    void whatIsRememberedIsBoundedAndWhatIsForgottenIsCounted() throws Exception {
        PaperField field = new PaperField();
        field.grade = PositionSense.Grade.RTK;
        field.drive(1600).sections(false).drive(0.4);

        PassSummary pass = field.passes.get(0);
        assertThat(pass.cells()).isEqualTo(4000);
        assertThat(pass.cellsKept()).isBetween(3000, 4000);
        assertThat(pass.cellsForgotten()).isEqualTo(4000 - pass.cellsKept());
        assertThat(pass.totals().wayM()).as("sums forget nothing").isCloseTo(8000, within(1e-6));
    }
}
