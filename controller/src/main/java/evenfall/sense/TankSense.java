package evenfall.sense;

import evenfall.rig.Rig;
import java.util.List;

/**
 * What the tank holds, by its level gauge: straight lines between the marks of the rig's table.
 *
 * <p><b>Variance.</b> That of sloshing and reading, as the rig states it. A table that is wrong makes every reading wrong; that is not in it.
 */
public final class TankSense {
    private final List<Rig.Tank.Mark> table;
    private final double varianceM6;
    private long heardUs = -1;
    private boolean hasCounts;
    private double counts;

    public TankSense(Rig.Tank config) {
        table = config.table();
        varianceM6 = config.noiseM3() * config.noiseM3();
    }

    /**
     * @param timeUs event time, µs
     * @param counts as the gauge gives them
     */
    public void onCounts(long timeUs, long counts) {
        heardUs = timeUs;
        hasCounts = true;
        this.counts = counts;
    }

    /** The hub could not read the gauge. */
    public void onNoCounts(long timeUs) {
        heardUs = timeUs;
        hasCounts = false;
    }

    /**
     * What the tank holds, m³. Not known beyond the ends of the table.
     *
     * @param nowUs event time, µs
     * @param silenceUs older than this it is silent, µs
     */
    public Quantity volumeM3(long nowUs, long silenceUs) {
        if (heardUs < 0) {
            return Quantity.unknown(Unknown.NOT_YET, -1);
        }
        long ageUs = nowUs - heardUs;
        if (ageUs > silenceUs) {
            return Quantity.unknown(Unknown.SILENT, ageUs);
        }
        if (!hasCounts
                || counts < table.get(0).counts()
                || counts > table.get(table.size() - 1).counts()) {
            return Quantity.unknown(Unknown.OUT_OF_RANGE, ageUs);
        }
        int above = 1;
        while (table.get(above).counts() < counts) {
            above++;
        }
        Rig.Tank.Mark from = table.get(above - 1);
        Rig.Tank.Mark to = table.get(above);
        double share = (counts - from.counts()) / (to.counts() - from.counts());
        return Quantity.known(from.volumeM3() + share * (to.volumeM3() - from.volumeM3()), varianceM6, ageUs);
    }
}
