package evenfall.ledger;

import evenfall.pattern.BoomFall;
import evenfall.pattern.BoomPattern;
import evenfall.pattern.Fall;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.sense.PositionSense;
import evenfall.sense.Quantity;
import evenfall.sense.Unknown;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.jspecify.annotations.Nullable;

/**
 * A machine on paper that tells the ledger what a monitor would know, and keeps what the ledger answers. The rig is the documented
 * example. Places are metres east and north of 52° N 1° E, put on the ellipsoid by GeographicLib.
 */
final class PaperField implements LedgerListener {
    static final double STEP_S = 0.2;

    final Rig rig;
    final List<LedgerCell> cells = new ArrayList<>();
    final List<PassSummary> passes = new ArrayList<>();
    final boolean[] open;
    final double[] heightM;
    private final double[] noHigherM;
    private final BoomPattern pattern;
    final boolean[] heightKnown;

    double speedMps = 5;
    /** Flow through the meter over what the target takes. */
    double rateShare = 1;

    boolean flowKnown = true;
    boolean speedKnown = true;
    boolean sectionsKnown = true;
    double eastM;
    double northM;
    double courseDeg;
    PositionSense.@Nullable Grade grade;

    private final RowLedger ledger;
    private final BoomFall fall;
    private final double factor;
    private long timeUs;
    private @Nullable Moment last;

    PaperField(String... changes) throws Exception {
        this(rig(changes));
    }

    PaperField(Rig rig) {
        this.rig = rig;
        ledger = new RowLedger(rig, this);
        pattern = new BoomPattern(
                rig.boom(), rig.outlet(), rig.target().heightM(), rig.liquid().specificGravity());
        fall = new BoomFall(pattern);
        factor = rig.outlet().speedFactor(200_000, rig.liquid().specificGravity());
        open = new boolean[rig.boom().outlets()];
        heightM = new double[open.length];
        noHigherM = new double[open.length];
        heightKnown = new boolean[open.length];
        Arrays.fill(open, true);
        Arrays.fill(heightM, 0.5);
        Arrays.fill(heightKnown, true);
    }

    /** @param changes pairs of text in the example and what shall stand there instead */
    static Rig rig(String... changes) throws Exception {
        String text = example();
        for (int i = 0; i < changes.length; i += 2) {
            if (!text.contains(changes[i])) {
                throw new IllegalArgumentException("the example has no " + changes[i]);
            }
            text = text.replace(changes[i], changes[i + 1]);
        }
        return RigFile.parse("rig.yaml", text, Path.of("."));
    }

    private static String example() throws IOException {
        return Files.readString(Path.of("docs", "example-rig.yaml"));
    }

    PaperField drive(double seconds) {
        for (long n = Math.round(seconds / STEP_S); n > 0; n--) {
            step(STEP_S);
        }
        return this;
    }

    /** @return what the meter saw in it, m³; 0 where the flow is not known */
    double step(double seconds) {
        timeUs += Math.round(seconds * 1e6);
        double course = Math.toRadians(courseDeg);
        eastM += speedMps * seconds * Math.sin(course);
        northM += speedMps * seconds * Math.cos(course);
        int on = 0;
        for (boolean one : open) {
            on += one ? 1 : 0;
        }
        double widthM = on * rig.boom().spacingM();
        double flowM3ps = rateShare * rig.target().rateM() * speedMps * widthM;
        boolean falls = speedKnown
                && sectionsKnown
                && on > 0
                && speedMps >= rig.limits().walkingMps();
        Quantity silent = Quantity.unknown(Unknown.SILENT, 3_000_000);
        Moment moment = new Moment(
                timeUs,
                seconds,
                flowKnown ? Quantity.known(flowM3ps, 20_000) : silent,
                speedKnown ? Quantity.known(speedMps, 80_000) : silent,
                speedMps,
                sectionsKnown ? Quantity.known(widthM, 0) : silent,
                open,
                falls ? fall() : null,
                falls ? null : Unknown.STANDING,
                40_000,
                fix(),
                grade == null ? Unknown.NO_FIX : null);
        last = moment;
        ledger.take(moment);
        return flowKnown ? flowM3ps * seconds : 0;
    }

    /** What a receiver says that measured a tenth of a second ago. */
    private PositionSense.@Nullable Fix fix() {
        if (grade == null) {
            return null;
        }
        double course = Math.toRadians(courseDeg);
        double aheadM = rig.ledger().antennaAheadM() - 0.1 * speedMps;
        double rightM = rig.ledger().antennaRightM();
        double e = eastM + aheadM * Math.sin(course) + rightM * Math.cos(course);
        double n = northM + aheadM * Math.cos(course) - rightM * Math.sin(course);
        GeodesicData at = Geodesic.WGS84.Direct(52, 1, Math.toDegrees(Math.atan2(e, n)), Math.hypot(e, n));
        return new PositionSense.Fix(at.lat2, at.lon2, course, speedMps, grade, timeUs);
    }

    PaperField sections(boolean on) {
        Arrays.fill(open, on);
        return this;
    }

    PaperField end() {
        if (last != null) {
            ledger.end(last);
        }
        return this;
    }

    /** One pass north or south, from and to a line across the field; the sections are off before and after. */
    PaperField pass(double atEastM, boolean north, double lengthM) {
        sections(false);
        courseDeg = north ? 0 : 180;
        eastM = atEastM;
        northM = north ? 0 : lengthM;
        drive(0.4);
        northM = north ? 0 : lengthM;
        sections(true);
        drive(lengthM / speedMps);
        sections(false);
        return drive(0.4);
    }

    LedgerTotals totals() {
        return ledger.totals();
    }

    LedgerCell lastCell() {
        return cells.get(cells.size() - 1);
    }

    @Override
    public void cell(LedgerCell cell) {
        cells.add(cell);
    }

    @Override
    public void pass(PassSummary pass) {
        passes.add(pass);
    }

    private Fall fall() {
        pattern.compute(heightM, heightKnown, open, factor);
        return fall.compute(heightM, noHigherM, heightKnown);
    }
}
