package evenfall.ledger;

import evenfall.pattern.BoomFall;
import evenfall.pattern.BoomPattern;
import evenfall.pattern.Fall;
import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import evenfall.sense.PositionSense;
import evenfall.sense.Unknown;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Keeps the row ledger of a rig: takes what is known at each moment, gives finished cells and passes to a listener.
 *
 * <p>A pass begins when a section is on at walking pace or more, and ends when all are off or the machine {@linkplain Turning turns}. A
 * turn that is driven with sections on is a pass of its own.
 *
 * <p>What an earlier pass put on the ground under this one counts in what its rows have got, where fixes are good enough to lay passes
 * beside one another ({@code overlap_from} in the rig file). On a side where no earlier pass is known, the adjoining one is taken to mirror
 * this one. Ground between two passes that neither treats, up to {@link #WIDEST_MISS_M} wide, is missed ground and got too little. What a
 * later pass throws onto an earlier one's rows beside it is not added to a cell that is finished; ground that is driven twice is judged
 * anew.
 */
public final class RowLedger {
    /** A wider stretch between two passes is another part of the field, m. Our choice. */
    public static final double WIDEST_MISS_M = 3;

    /** From a receiver's measuring to the end of its sentence: about a tenth of a second, common practice, no source. */
    private static final double RECEIVER_LATENCY_S = 0.1;

    /** A rest of way shorter than this is none, m: sums of steps are not exact. */
    private static final double NO_WAY_M = 1e-9;

    private final Rig rig;
    private final LedgerListener listener;
    private final OpenCell cell;
    private final DrivenGround driven;
    private final Turning turning = new Turning();
    private final WettedWidth wetted;
    private final double referenceShare;
    private final double reachM;
    private final Tally all = new Tally();
    private final Tally passTally = new Tally();
    private final double[] share;
    private final byte[] state;
    private final double[] judgedM2;

    private @Nullable LocalPlane plane;
    private boolean inPass;
    private int pass;
    private long passBeganUs;
    private boolean passTurning;
    private int cellNumber;
    private double cellFromM;
    private LedgerCell.Ages passAges = LedgerCell.Ages.NONE;

    public RowLedger(Rig rig, LedgerListener listener) {
        this.rig = rig;
        this.listener = listener;
        BoomLayout boom = rig.boom();
        cell = new OpenCell(boom);
        driven = new DrivenGround(cell.rows, boom.rowM(), cell.rightM[0]);
        wetted = new WettedWidth(rig.outlet(), rig.liquid());
        double ratedFactor = rig.outlet()
                .speedFactor(rig.outlet().ratedPressurePa(), rig.liquid().specificGravity());
        referenceShare = wetted.ofOutletM(rig.target().heightM(), ratedFactor) / boom.spacingM();
        reachM = new BoomFall(new BoomPattern(
                        boom, rig.outlet(), rig.target().heightM(), rig.liquid().specificGravity()))
                .reachM();
        share = new double[cell.rows];
        state = new byte[cell.rows];
        judgedM2 = new double[cell.rows];
    }

    /** Takes a moment; moments come in the order of their time. */
    public void take(Moment moment) {
        boolean widthKnown = moment.widthM().isKnown();
        boolean on = widthKnown && moment.widthM().get() > 0;
        boolean moving = moment.speedMps().isKnown()
                && moment.speedMps().get() >= rig.limits().walkingMps();
        follow(moment, moving);
        if (inPass && widthKnown && !on) {
            endPass(moment.timeUs(), PassSummary.End.SECTIONS_OFF, moment);
        }
        if (inPass && turning.isTurning() != passTurning) {
            endPass(moment.timeUs(), passTurning ? PassSummary.End.STRAIGHT : PassSummary.End.TURNED, moment);
            begin(moment.timeUs(), turning.isTurning());
        }
        if (!inPass && on && moving) {
            turning.forget();
            begin(moment.timeUs(), false);
        }
        account(moment, moving);
    }

    private void follow(Moment moment, boolean moving) {
        PositionSense.Fix fix = moment.fix();
        if (fix == null) {
            return;
        }
        if (plane == null) {
            plane = new LocalPlane(fix.latitudeDeg(), fix.longitudeDeg());
        }
        if (moving) {
            turning.gone(moment.speedMps().get() * moment.stepS(), fix.courseRad());
        }
    }

    private void begin(long timeUs, boolean asTurn) {
        inPass = true;
        pass++;
        passBeganUs = timeUs;
        passTurning = asTurn;
        cellNumber = 0;
        cellFromM = 0;
        passAges = LedgerCell.Ages.NONE;
        passTally.clear();
        cell.clear();
    }

    private void account(Moment moment, boolean moving) {
        boolean flowKnown = moment.flowM3ps().isKnown();
        double volumeM3 = flowKnown ? moment.flowM3ps().get() * moment.stepS() : 0;
        Unknown idle = idle(moment, moving);
        if (idle != null) {
            boolean counts = volumeM3 > 0 || idle == Unknown.NEEDS_SPEED;
            aside(idle, counts ? moment.stepS() : 0, 0, volumeM3);
            return;
        }
        double metresPerS = flowKnown ? moment.carriedMps() : moment.speedMps().get();
        double wayM = metresPerS * moment.stepS();
        if (!inPass || !(wayM > NO_WAY_M)) {
            Unknown reason = moment.widthM().isKnown() ? Unknown.STANDING : Unknown.NEEDS_SECTIONS;
            aside(reason, moment.stepS(), wayM, volumeM3);
            return;
        }
        double leftM = wayM;
        while (leftM > NO_WAY_M) {
            double partM = Math.min(leftM, rig.ledger().cellM() - cell.lengthM);
            stretch(moment, partM, partM / wayM, volumeM3);
            leftM -= partM;
            if (cell.lengthM > rig.ledger().cellM() - NO_WAY_M) {
                finishCell(moment.timeUs(), leftM, moment);
            }
        }
    }

    /** Why no row can get anything at a moment: off, standing, or the way is not known; null where rows get what falls. */
    private static @Nullable Unknown idle(Moment moment, boolean moving) {
        if (moment.widthM().isKnown() && !(moment.widthM().get() > 0)) {
            return Unknown.SECTIONS_OFF;
        }
        if (!moment.speedMps().isKnown()) {
            return Unknown.NEEDS_SPEED;
        }
        return moving ? null : Unknown.STANDING;
    }

    private void aside(Unknown reason, double seconds, double wayM, double volumeM3) {
        all.meteredM3 += volumeM3;
        all.notPlaced(reason, seconds, wayM, volumeM3);
        if (inPass) {
            passTally.meteredM3 += volumeM3;
            passTally.notPlaced(reason, seconds, wayM, volumeM3);
        }
    }

    /**
     * Part of a moment's way, within one cell.
     *
     * @param part share of the moment's way
     * @param momentM3 what the meter saw in the whole moment, m³
     */
    private void stretch(Moment moment, double wayM, double part, double momentM3) {
        cell.ages = cell.ages.oldest(
                moment.flowM3ps().ageUs(),
                moment.speedMps().ageUs(),
                moment.heightsAgeUs(),
                moment.fix() == null ? -1 : moment.timeUs() - moment.fix().heardUs());
        double volumeM3 = momentM3 * part;
        double seconds = moment.stepS() * part;
        cell.meteredM3 += volumeM3;
        if (!moment.widthM().isKnown()) {
            cell.unknown(wayM, null, Unknown.NEEDS_SECTIONS);
            notPlaced(Unknown.NEEDS_SECTIONS, seconds, wayM, volumeM3);
            return;
        }
        cell.treatedM2 += moment.widthM().get() * wayM;
        if (!moment.flowM3ps().isKnown()) {
            cell.unknown(wayM, moment.open(), Unknown.NEEDS_FLOW);
            notPlaced(Unknown.NEEDS_FLOW, seconds, wayM, 0);
            return;
        }
        Fall fall = moment.fall();
        if (!(volumeM3 > 0)) {
            cell.known(wayM, moment.open(), null, 0, Unknown.NEEDS_HEIGHT);
            return;
        }
        if (fall == null) {
            Unknown reason = moment.unknown() == null ? Unknown.NOTHING_FALLS : moment.unknown();
            cell.unknown(wayM, moment.open(), reason);
            notPlaced(reason, seconds, wayM, volumeM3);
            return;
        }
        int open = count(moment.open());
        double outletM3 = volumeM3 / open;
        Unknown noHeight = rig.sensors().heights().isEmpty() ? Unknown.NOT_FITTED : Unknown.NEEDS_HEIGHT;
        cell.known(wayM, moment.open(), fall, outletM3, noHeight);
        if (fall.fallen() < open) {
            notPlaced(noHeight, seconds, wayM, (open - fall.fallen()) * outletM3);
        }
    }

    private void notPlaced(Unknown reason, double seconds, double wayM, double volumeM3) {
        all.notPlaced(reason, seconds, wayM, volumeM3);
        passTally.notPlaced(reason, seconds, wayM, volumeM3);
    }

    private static int count(boolean[] open) {
        int n = 0;
        for (boolean one : open) {
            n += one ? 1 : 0;
        }
        return n;
    }

    /**
     * @param beyondM how far the boom is past the cell's end by now, m
     */
    private void finishCell(long timeUs, double beyondM, Moment moment) {
        DrivenGround.Spot spot = usableSpot(moment, beyondM);
        if (spot != null) {
            driven.look(pass, spot);
        }
        LedgerCell.Beside beside = judge(spot != null, moment);
        double wettedShare = wettedShare();
        sum(all, wettedShare);
        sum(passTally, wettedShare);
        sumGround();
        passAges = passAges.oldest(cell.ages);
        LedgerCell.Span span = new LedgerCell.Span(timeUs, pass, cellNumber, cellFromM, cell.lengthM);
        listener.cell(finished(span, beside, wettedShare, moment));
        if (spot != null) {
            cell.forgetUnknown(reachM);
            driven.keep(pass, spot, cell.lengthM, cell.ownM3, state);
        }
        cellFromM += cell.lengthM;
        cellNumber++;
        cell.clear();
    }

    private LedgerCell finished(LedgerCell.Span span, LedgerCell.Beside beside, double wettedShare, Moment moment) {
        PositionSense.Fix fix = moment.fix();
        LeafContact leaf = wettedShare > 0
                ? new LeafContact(
                        wettedShare,
                        wettedShare / referenceShare,
                        rig.ledger().productFactor(),
                        rig.ledger().weatherFactor())
                : null;
        return new LedgerCell(
                span,
                cell.ages,
                fix == null
                        ? null
                        : new LedgerCell.CellPlace(
                                fix.latitudeDeg(), fix.longitudeDeg(), StrictMath.toDegrees(fix.courseRad())),
                moment.placeUnknown(),
                beside,
                cell.rightM[cell.firstOwn],
                rig.boom().rowM(),
                rig.liquid().nitrogenKgpM3(),
                Arrays.copyOfRange(cell.ownM3, cell.firstOwn, cell.endOwn),
                Arrays.copyOfRange(share, cell.firstOwn, cell.endOwn),
                Arrays.copyOfRange(state, cell.firstOwn, cell.endOwn),
                rowsUnknown(),
                leaf,
                totals(all));
    }

    private @Nullable Unknown rowsUnknown() {
        for (int j = cell.firstOwn; j < cell.endOwn; j++) {
            if (state[j] == GroundState.NOT_KNOWN.code()) {
                return cell.unknownM[j] > 0 ? cell.why[j] : Unknown.NEEDS_EARLIER_PASS;
            }
        }
        return null;
    }

    /** The middle of the cell on the plane; null where position is not known or too coarse for rows. */
    private DrivenGround.@Nullable Spot usableSpot(Moment moment, double beyondM) {
        PositionSense.Fix fix = moment.fix();
        if (fix == null || plane == null || !isFineEnough(fix.grade())) {
            return null;
        }
        plane.put(fix.latitudeDeg(), fix.longitudeDeg());
        double sin = StrictMath.sin(fix.courseRad());
        double cos = StrictMath.cos(fix.courseRad());
        double sinceS = 1e-6 * (moment.timeUs() - fix.heardUs()) + RECEIVER_LATENCY_S;
        double aheadM = fix.speedMps() * sinceS - rig.ledger().antennaAheadM() - beyondM - 0.5 * cell.lengthM;
        double rightM = -rig.ledger().antennaRightM();
        return new DrivenGround.Spot(
                plane.eastM() + aheadM * sin + rightM * cos,
                plane.northM() + aheadM * cos - rightM * sin,
                fix.courseRad());
    }

    private boolean isFineEnough(PositionSense.Grade grade) {
        return switch (rig.ledger().overlapFrom()) {
            case ANY -> true;
            case DIFFERENTIAL -> grade != PositionSense.Grade.PLAIN;
            case RTK -> grade == PositionSense.Grade.RTK;
        };
    }

    private LedgerCell.Beside judge(boolean placed, Moment moment) {
        Arrays.fill(state, GroundState.NONE.code());
        Arrays.fill(share, 0);
        Arrays.fill(judgedM2, 0);
        int left = edge(cell.firstOwn, cell.endOwn, 1);
        int right = edge(cell.endOwn - 1, cell.firstOwn - 1, -1);
        int missedLeft = placed && left >= 0 ? missed(left, -1) : -1;
        int missedRight = placed && right >= 0 ? missed(right, 1) : -1;
        for (int j = cell.firstOwn; j < cell.endOwn; j++) {
            boolean mirrors = cell.rightM[j] < 0 ? missedLeft < 0 : missedRight < 0;
            judgeRow(j, mirrors, placed);
        }
        double missedM = 0;
        for (int n = 1; n <= missedLeft; n++) {
            missedM += judgeMissed(left - n);
        }
        for (int n = 1; n <= missedRight; n++) {
            missedM += judgeMissed(right + n);
        }
        double overlapM = 0;
        for (int j = cell.firstOwn; placed && j < cell.endOwn; j++) {
            overlapM += cell.onM[j] > 0 && driven.latest(j) != GroundState.NONE ? cell.underM[j] : 0;
        }
        passTally.lookedM += placed ? cell.lengthM : 0;
        all.lookedM += placed ? cell.lengthM : 0;
        passTally.overlapM2 += overlapM * cell.lengthM;
        all.overlapM2 += overlapM * cell.lengthM;
        passTally.missedM2 += missedM * cell.lengthM;
        all.missedM2 += missedM * cell.lengthM;
        PlaceDoubt doubt = moment.fix() == null ? PlaceDoubt.NO_PLACE : PlaceDoubt.TOO_COARSE;
        return new LedgerCell.Beside(missedLeft >= 0, missedRight >= 0, overlapM, missedM, placed ? null : doubt);
    }

    /** The outermost row that is on, from one side; -1 where none is. */
    private int edge(int from, int end, int step) {
        for (int j = from; j != end; j += step) {
            if (cell.onM[j] > 0) {
                return j;
            }
        }
        return -1;
    }

    /** How many rows lie between an edge and an earlier pass beside it; -1 where none is known beside it. */
    private int missed(int edge, int step) {
        int most = (int) (WIDEST_MISS_M / rig.boom().rowM());
        for (int n = 0; n <= most + 1; n++) {
            int j = edge + n * step;
            if (j < 0 || j >= cell.rows) {
                return -1;
            }
            if (driven.latest(j) != GroundState.NONE) {
                return Math.max(0, n - 1);
            }
        }
        return -1;
    }

    private void judgeRow(int j, boolean mirrors, boolean placed) {
        double onM = cell.onM[j];
        double rowM2 = rig.boom().rowM() * rig.target().rateM();
        if (!(onM > 0)) {
            share[j] = cell.ownM3[j] / (rowM2 * cell.lengthM);
            return;
        }
        double amountM3 = cell.ownM3[j] + (mirrors ? cell.mirroredM3[j] : 0);
        if (placed) {
            amountM3 += driven.addedPerM(j) * onM;
        }
        boolean known = !(cell.unknownM[j] > 0) && !Double.isNaN(amountM3);
        share[j] = known ? amountM3 / (rowM2 * onM) : 0;
        state[j] = (known ? GroundState.of(share[j]) : GroundState.NOT_KNOWN).code();
        judgedM2[j] = cell.underM[j] * onM;
        if (!known) {
            notKnown(cell.unknownM[j] > 0 ? cell.why[j] : Unknown.NEEDS_EARLIER_PASS, judgedM2[j]);
        }
        if (placed) {
            // Counted before, as what the earlier pass left it as.
            all.add(driven.latest(j), -judgedM2[j]);
        }
    }

    private void notKnown(Unknown reason, double m2) {
        all.notKnown(reason, m2);
        passTally.notKnown(reason, m2);
    }

    /** A row between two passes, which neither treats. */
    private double judgeMissed(int j) {
        double amountM3 = cell.ownM3[j] + driven.addedPerM(j) * cell.lengthM;
        boolean known = !Double.isNaN(amountM3);
        share[j] = known
                ? amountM3 / (rig.boom().rowM() * cell.lengthM * rig.target().rateM())
                : 0;
        state[j] = (known ? GroundState.of(share[j]) : GroundState.NOT_KNOWN).code();
        judgedM2[j] = rig.boom().rowM() * cell.lengthM;
        if (!known) {
            notKnown(Unknown.NEEDS_EARLIER_PASS, judgedM2[j]);
        }
        return rig.boom().rowM();
    }

    private double wettedShare() {
        if (!(cell.fallSumM > 0) || !(cell.factorSumM > 0)) {
            return 0;
        }
        double heightM = cell.heightSumM2 / cell.fallSumM;
        return wetted.ofOutletM(heightM, cell.factorSumM / cell.fallSumM)
                / rig.boom().spacingM();
    }

    private void sum(Tally tally, double wettedShare) {
        tally.meteredM3 += cell.meteredM3;
        tally.onRowsM3 += cell.onRowsM3;
        tally.besideM3 += cell.besideM3;
        tally.wayM += cell.lengthM;
        tally.treatedM2 += cell.treatedM2;
        if (wettedShare > 0) {
            tally.wetted(wettedShare, cell.fallSumM);
        }
    }

    /** Of what is not this pass's nothing is judged. */
    private void sumGround() {
        double known = 0;
        double below = 0;
        double above = 0;
        double unknown = 0;
        byte notKnown = GroundState.NOT_KNOWN.code();
        for (int j = 0; j < cell.rows; j++) {
            double m2 = judgedM2[j];
            known += state[j] > notKnown ? m2 : 0;
            unknown += state[j] == notKnown ? m2 : 0;
            below += state[j] == GroundState.BELOW.code() ? m2 : 0;
            above += state[j] == GroundState.ABOVE.code() ? m2 : 0;
        }
        all.addGround(known, below, above, unknown);
        passTally.addGround(known, below, above, unknown);
    }

    private LedgerTotals totals(Tally tally) {
        return tally.totals(rig.liquid().nitrogenKgpM3(), tally.leaf(referenceShare, rig.ledger()));
    }

    private void endPass(long timeUs, PassSummary.End end, Moment moment) {
        if (cell.lengthM > NO_WAY_M) {
            finishCell(timeUs, 0, moment);
        }
        inPass = false;
        listener.pass(new PassSummary(
                pass,
                passBeganUs,
                timeUs,
                end,
                passTurning,
                cellNumber,
                passAges,
                totals(passTally),
                totals(all),
                driven.kept(),
                driven.forgotten()));
    }

    /** Nothing more will come: a cell and a pass that are under way are finished as they are. */
    public void end(Moment last) {
        if (inPass) {
            endPass(last.timeUs(), PassSummary.End.WATCH_ENDED, last);
        }
    }

    /** Sums since the ledger began; what is in a cell that is not finished yet is not among them. */
    public LedgerTotals totals() {
        return totals(all);
    }
}
