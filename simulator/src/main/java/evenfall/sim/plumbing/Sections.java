package evenfall.sim.plumbing;

import evenfall.rig.BoomLayout;

/**
 * The sections of a boom: which are switched on, which hang, and which are for now not simply a part of the boom's line (they are
 * <em>apart</em>).
 */
final class Sections {
    /** A section's valve lets through this times what its outlets do: 1 % of the pressure is lost in it; a choice of ours. */
    private static final double VALVE = 10;

    private final PlumbingSpec.Lines spec;
    private final SectionLine[] lines;
    private final int[] sectionOf;
    private long wantedMask;
    private long shutMask;
    private long openMask;
    private int apart;
    private double takes;
    private double gives;

    /**
     * @param k of each outlet with this liquid, m³/s per √Pa
     * @param give of all section lines together, m³ for each Pa
     */
    Sections(PlumbingSpec.Lines spec, BoomLayout boom, double[] k, double give) {
        this.spec = spec;
        lines = new SectionLine[boom.sections().size()];
        sectionOf = new int[boom.outlets()];
        for (int s = 0; s < lines.length; s++) {
            BoomLayout.Section section = boom.sections().get(s);
            double nominalK = 0;
            for (int i = section.firstOutlet(); i < section.endOutlet(); i++) {
                nominalK += k[i];
                sectionOf[i] = s;
            }
            lines[s] = new SectionLine(
                    section.firstOutlet(),
                    section.endOutlet(),
                    give * section.outletCount() / boom.outlets(),
                    spec.dribbleM3() * section.outletCount(),
                    VALVE * nominalK);
        }
        wantedMask = (1L << lines.length) - 1;
    }

    int count() {
        return lines.length;
    }

    SectionLine line(int section) {
        return lines[section];
    }

    int of(int outlet) {
        return sectionOf[outlet];
    }

    /** How many are apart. */
    int apart() {
        return apart;
    }

    void switchTo(long mask) {
        wantedMask = mask;
    }

    void holdShut(int section, boolean on) {
        shutMask = on ? shutMask | 1L << section : shutMask & ~(1L << section);
    }

    void holdOpen(int section, boolean on) {
        openMask = on ? openMask | 1L << section : openMask & ~(1L << section);
    }

    /** Whether a section is switched on, whatever it does. */
    boolean isOn(int section) {
        return (wantedMask >> section & 1) != 0;
    }

    /** Which way a section's valve turns: as its switch says, unless it hangs. */
    private boolean opens(int section) {
        long bit = 1L << section;
        if ((shutMask & bit) != 0) {
            return false;
        }
        boolean hangsOpen = (openMask & bit) != 0 && !lines[section].isAsleep();
        return hangsOpen || (wantedMask & bit) != 0;
    }

    /** Whether a section is a part of the boom's line and has begun to shut. */
    boolean leaves(int section) {
        return lines[section].isJoined() && !opens(section);
    }

    /** It has parted. */
    void parted() {
        apart++;
    }

    /** It is a part of the boom's line again. */
    void joined() {
        apart--;
    }

    private boolean moves(int section) {
        return !lines[section].isJoined() && (!lines[section].isAsleep() || opens(section));
    }

    /** First half of a step of those that are apart: valves turn, and {@link #takes} and {@link #gives} are known. */
    void prepare(double dtS, double feedPa) {
        takes = 0;
        gives = 0;
        for (int s = 0; s < lines.length; s++) {
            if (moves(s)) {
                lines[s].turn(dtS, opens(s), spec.openS(), spec.closeS());
                lines[s].prepare(dtS, feedPa);
                takes += lines[s].takes();
                gives += lines[s].gives();
            }
        }
    }

    /** Second half of a step, with the feed's pressure at its end. */
    void finish(double dtS, double feedPa) {
        for (int s = 0; s < lines.length; s++) {
            if (moves(s)) {
                lines[s].finish(dtS, feedPa);
            }
        }
    }

    /** Of what flows into them all, {@code takes · p − gives}, the first. */
    double takes() {
        return takes;
    }

    double gives() {
        return gives;
    }

    boolean anyFlowed() {
        boolean any = false;
        for (SectionLine line : lines) {
            any |= line.rootIntegral() != 0;
        }
        return any;
    }

    void clear() {
        for (SectionLine line : lines) {
            line.clear();
        }
    }

    /** What those that are apart hold, m³. */
    double heldM3() {
        double heldM3 = 0;
        for (SectionLine line : lines) {
            heldM3 += line.isJoined() ? 0 : line.heldM3();
        }
        return heldM3;
    }
}
