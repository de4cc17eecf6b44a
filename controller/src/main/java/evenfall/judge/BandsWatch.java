package evenfall.judge;

import static evenfall.quantity.FixedDecimals.text;

import evenfall.outlet.OutletType;
import evenfall.pattern.BoomPattern;
import evenfall.pattern.LineMeasures;
import evenfall.pattern.RowMeasures;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import evenfall.sense.Quantity;
import org.jspecify.annotations.Nullable;

/** Uneven rows of one of the two causes. Rows are judged; the lines name the cause. */
final class BandsWatch implements Watch {
    private final boolean doubled;
    private final Bands bands;
    private final double limitCv;
    private final double targetM;
    private final OutletType outlet;
    private final Units units;

    BandsWatch(boolean doubled, Bands bands, Rig rig) {
        this.doubled = doubled;
        this.bands = bands;
        this.limitCv = rig.limits().rowCv();
        this.targetM = rig.target().heightM();
        this.outlet = rig.outlet();
        this.units = rig.units();
    }

    @Override
    public Verdict verdict(Situation now) {
        bands.look(now);
        Verdict uneven = bands.uneven();
        if (uneven != Verdict.OVER) {
            return uneven;
        }
        if (!bands.isNamed()) {
            return bands.isHeld() ? Verdict.LEANING : Verdict.OVER;
        }
        return bands.is(doubled) ? Verdict.OVER : Verdict.WELL;
    }

    @Override
    public Finding finding(Situation now) {
        RowMeasures rows = bands.rows();
        BoomPattern pattern = now.pattern();
        if (rows == null || pattern == null) {
            throw new IllegalStateException("raised on rows that are not known");
        }
        String why = "Rows under the boom differ by " + text(100 * rows.rowCv(), 0) + " % (limit "
                + text(100 * limitCv, 0) + " %); " + cause(rows, bands.lines());
        return new Finding(100 * rows.rowCv(), 100 * limitCv, "%", why, remedy(now, bands.worstPart(pattern)));
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

    /** What the physics supports: the target height where it holds the limit at this pressure, else another pressure or outlet. */
    private String remedy(Situation now, String part) {
        Quantity pressure = now.pressurePa();
        if (now.window() != null || !pressure.isKnown()) {
            return height(now, part);
        }
        if (pressure.get() < outlet.lowPa()) {
            return "Raise the pressure from " + units.pressure(pressure.get()) + " to at least "
                    + units.pressure(outlet.lowPa()) + ": drive faster or fit a smaller metering size.";
        }
        if (pressure.get() > outlet.highPa()) {
            return "Lower the pressure from " + units.pressure(pressure.get()) + " to at most "
                    + units.pressure(outlet.highPa()) + ": drive slower or fit a larger metering size.";
        }
        return "Fit other outlets: at " + units.pressure(pressure.get()) + " these feed rows unevenly even at "
                + units.length(targetM) + ".";
    }

    private String height(Situation now, String part) {
        String what = switch (part) {
            case "left" -> "the left wing";
            case "right" -> "the right wing";
            default -> "the boom";
        };
        Quantity heightM = switch (part) {
            case "left" -> now.leftWingM();
            case "right" -> now.rightWingM();
            default -> now.centreM();
        };
        if (!heightM.isKnown()) {
            return (doubled ? "Lower " : "Raise ") + what + " to " + units.length(targetM) + ".";
        }
        // A part that is bent or tilted may be doubled although its mean height is low: then it wants levelling.
        boolean agrees = doubled == heightM.get() > targetM;
        String verb = !agrees ? "Level " : doubled ? "Lower " : "Raise ";
        return verb + what + (agrees ? " to " : " at ") + units.length(targetM) + " (it is at "
                + units.length(heightM.get()) + ").";
    }
}
