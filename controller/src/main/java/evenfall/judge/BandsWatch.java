package evenfall.judge;

import static evenfall.quantity.FixedDecimals.text;

import evenfall.outlet.OutletType;
import evenfall.pattern.BoomPattern;
import evenfall.pattern.LineMeasures;
import evenfall.pattern.RowMeasures;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import org.jspecify.annotations.Nullable;

/**
 * What the rows get, wherever no wing's height explains it already: one cause, one alert. Rows are judged; the lines name the
 * cause, for overlapping outlets double their lines on purpose.
 */
final class BandsWatch implements Watch {
    /** Clears at eight tenths of the limit. Our choice. */
    private static final double WELL_PART = 0.8;

    private final boolean doubled;
    private final double limitCv;
    private final double halfWidthM;
    private final double hingeM;
    private final double targetM;
    private final OutletType outlet;
    private final Units units;
    private final WingWatch[] left;
    private final WingWatch[] right;

    BandsWatch(boolean doubled, Rig rig) {
        this.doubled = doubled;
        this.limitCv = rig.limits().rowCv();
        this.halfWidthM = 0.5 * rig.boom().widthM();
        this.hingeM = rig.boom().hingeM();
        this.targetM = rig.target().heightM();
        this.outlet = rig.outlet();
        this.units = rig.units();
        this.left = new WingWatch[] {new WingWatch(true, true, rig), new WingWatch(true, false, rig)};
        this.right = new WingWatch[] {new WingWatch(false, true, rig), new WingWatch(false, false, rig)};
    }

    @Override
    public Verdict verdict(Situation now) {
        BoomPattern pattern = now.pattern();
        RowMeasures rows = pattern == null ? null : pattern.rowMeasures(fromM(now), toM(now));
        if (pattern == null || rows == null) {
            return Verdict.UNKNOWN;
        }
        Verdict uneven = Verdict.above(rows.rowCv(), limitCv, WELL_PART * limitCv);
        boolean wide = pattern.relativeReach(fromM(now), toM(now)) > 1;
        return uneven != Verdict.OVER || wide == doubled ? uneven : Verdict.WELL;
    }

    private double fromM(Situation now) {
        return explained(left, now) ? -hingeM : -halfWidthM;
    }

    private double toM(Situation now) {
        return explained(right, now) ? hingeM : halfWidthM;
    }

    private static boolean explained(WingWatch[] wing, Situation now) {
        return wing[0].verdict(now) == Verdict.OVER || wing[1].verdict(now) == Verdict.OVER;
    }

    @Override
    public Finding finding(Situation now) {
        BoomPattern pattern = now.pattern();
        double fromM = fromM(now);
        double toM = toM(now);
        RowMeasures rows = pattern == null ? null : pattern.rowMeasures(fromM, toM);
        LineMeasures lines = pattern == null ? null : pattern.lineMeasures(fromM, toM);
        if (rows == null) {
            throw new IllegalStateException("raised on rows that are not known");
        }
        String why = "Rows under the boom differ by " + text(100 * rows.rowCv(), 0) + " % (limit "
                + text(100 * limitCv, 0) + " %); " + cause(rows, lines);
        return new Finding(100 * rows.rowCv(), 100 * limitCv, "%", why, remedy(now));
    }

    private String cause(RowMeasures rows, @Nullable LineMeasures lines) {
        if (doubled) {
            return "streams run into their neighbours', and the most fed row gets " + text(100 * rows.mostRow(), 0)
                    + " % of the mean.";
        }
        String gap = lines == null ? "gaps" : "gaps of up to " + units.spacing(lines.widestGapM());
        return "streams bunch under their outlets and leave " + gap + ", and the least fed row gets "
                + text(100 * rows.leastRow(), 0) + " % of the mean.";
    }

    private String remedy(Situation now) {
        double pressurePa = now.pressurePa().isKnown() ? now.pressurePa().get() : outlet.ratedPressurePa();
        String current = units.pressure(pressurePa);
        if (!doubled && pressurePa < outlet.lowPa()) {
            return "Raise the pressure from " + current + " to at least " + units.pressure(outlet.lowPa())
                    + ": drive faster or fit a smaller metering size.";
        }
        if (doubled && pressurePa > outlet.highPa()) {
            return "Lower the pressure from " + current + " to at most " + units.pressure(outlet.highPa())
                    + ": drive slower or fit a larger metering size.";
        }
        String from = now.centreM().isKnown()
                ? " (its middle is at " + units.length(now.centreM().get()) + ")"
                : "";
        return (doubled ? "Lower" : "Raise") + " the boom to " + units.length(targetM) + from + ".";
    }
}
