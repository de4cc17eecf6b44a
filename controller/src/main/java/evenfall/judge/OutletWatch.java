package evenfall.judge;

import static evenfall.quantity.FixedDecimals.text;

import evenfall.quantity.TradeUnits;
import evenfall.quantity.Units;
import evenfall.rig.Rig;

/** Outlets that are blocked, or let through too much: on the whole boom, or in the section that the switches tell. */
final class OutletWatch implements Watch {
    /** An alert that has to say more goes for so long and comes anew, µs: longer than its hold. */
    private static final long ANEW_US = 2_000_000;

    /** From so many outlets' worth on a strainer, a section or a sensor is as likely. Our choice. */
    private static final double MANY = 3;

    private final boolean more;
    private final int section;
    private final String where;
    private final int sectionOutlets;
    private final Conductance conductance;
    private final Units units;
    private double toldOutlets;
    private long anewUs = Long.MIN_VALUE;

    /**
     * @param more lets through too much; else too little
     * @param section index of the section, or {@link Conductance#BOOM}
     */
    OutletWatch(boolean more, int section, Conductance conductance, Rig rig) {
        this.more = more;
        this.section = section;
        this.conductance = conductance;
        this.units = rig.units();
        boolean boom = section == Conductance.BOOM;
        where = boom
                ? "along the boom"
                : "in section " + rig.boom().sections().get(section).name();
        sectionOutlets = boom ? 0 : rig.boom().sections().get(section).outletCount();
    }

    @Override
    public Verdict verdict(Situation now) {
        conductance.look(now);
        if (!conductance.isCompared()) {
            toldOutlets = 0;
            return Verdict.UNKNOWN;
        }
        if (!conductance.isKnown()) {
            return Verdict.BETWEEN;
        }
        double outlets = conductance.steps().sum(more, section);
        if (toldOutlets > 0 && outlets > toldOutlets) {
            anewUs = now.nowUs() + ANEW_US;
        }
        toldOutlets = outlets;
        if (now.nowUs() < anewUs) {
            return Verdict.WELL;
        }
        return outlets > 0 || isOff() ? Verdict.OVER : Verdict.WELL;
    }

    /** From the start on the whole machine's ratio is past what tolerances explain, this way. */
    private boolean isOff() {
        return section == Conductance.BOOM && (more ? conductance.off() > 0 : conductance.off() < 0);
    }

    @Override
    public Finding finding(Situation now) {
        double pressurePa = now.plumbing().pressurePa().get();
        double outlets = conductance.steps().sum(more, section);
        if (outlets == 0) {
            return off(now.plumbing().flowM3ps().get(), pressurePa);
        }
        double doubt = conductance.steps().doubt(more, section);
        double extraM3ps = outlets * conductance.outletM3ps(pressurePa);
        double litres = extraM3ps / TradeUnits.LPM_M3PS;
        double litresDoubt = litres * doubt / outlets;
        return more
                ? new Finding(litres, litresDoubt, "L/min", tooMuch(extraM3ps, pressurePa), lookForOpen(outlets))
                : new Finding(
                        outlets, doubt, "1", tooLittle(outlets, pressurePa), lookForBlocked(outlets, outlets - doubt));
    }

    private String tooLittle(double outlets, double pressurePa) {
        return "Less flows than " + units.pressure(pressurePa) + " should drive, by what " + text(outlets, 1) + " of "
                + text(conductance.open(), 0) + " outlets take" + shownWhere() + ".";
    }

    private String tooMuch(double extraM3ps, double pressurePa) {
        return units.flow(extraM3ps) + " more flow than " + units.pressure(pressurePa) + " should drive" + shownWhere()
                + ".";
    }

    private String shownWhere() {
        return section == Conductance.BOOM ? "" : "; it comes and goes " + where;
    }

    private String lookForBlocked(double outlets, double atLeast) {
        long least = Math.max(1, (long) Math.ceil(atLeast - 1e-9));
        if (outlets < MANY) {
            return "Look " + where + " for "
                    + (least == 1 ? "a blocked outlet" : "at least " + least + " blocked outlets")
                    + "; relieve the pressure before you open one.";
        }
        if (section != Conductance.BOOM && outlets > sectionOutlets - 1) {
            return "Look whether the valve " + where + " opens and its strainer is clear; relieve the pressure first.";
        }
        return "Look " + where + " for a plugged strainer, a section that stays shut or at least " + least
                + " blocked outlets; if all streams are alike, check pressure transmitter and meter.";
    }

    private String lookForOpen(double outlets) {
        if (conductance.steps().runsOn(section)) {
            return section == Conductance.BOOM
                    ? "Look along the boom for a section that runs although it is switched off."
                    : "Look at the valve " + where + ": it runs although it is switched off.";
        }
        String open = "Look " + where + " for a lost, leaking or worn outlet or a leaking hose";
        return outlets < MANY ? open + "." : open + "; if all is tight, check meter and pressure transmitter.";
    }

    private Finding off(double flowM3ps, double pressurePa) {
        double part = conductance.off();
        String why = "Since it was first seen, flow is " + text(Math.abs(100 * part), 0) + " % "
                + (more ? "more" : "less") + " than " + units.pressure(pressurePa)
                + " should drive; tolerances explain "
                + text(100 * Conductance.PRIOR_WIDTH, 0) + " %.";
        String act =
                "Check K-factor, metering size, density and the transmitter's zero against the rig file, then look for "
                        + (more ? "worn or leaking outlets." : "blocked outlets and strainers.");
        double limit = Conductance.PRIOR_WIDTH;
        if (!more) {
            double open = conductance.open();
            return new Finding(-part * open, limit * open, "1", why, act);
        }
        double litres = flowM3ps * part / (1 + part) / TradeUnits.LPM_M3PS;
        return new Finding(litres, litres * limit / part, "L/min", why, act);
    }
}
