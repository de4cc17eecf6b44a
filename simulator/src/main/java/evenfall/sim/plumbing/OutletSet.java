package evenfall.sim.plumbing;

import evenfall.liquid.Orifice;
import evenfall.sim.chance.Chance;

/** The outlets' orifices: what each lets through as it was made, as it is worn, and with what has happened to it since. */
final class OutletSet {
    private final double[] madeK;
    private final double[] nowK;
    private final double[] leakShare;
    private final double[] blocked;
    private final double[] worn;
    private final double[] lostTimes;
    private final double[] leak;
    private boolean leaking;

    /**
     * @param spread standard deviation of K, as a share
     * @param wear mean growth of K, as a share
     */
    OutletSet(Orifice orifice, int count, double spread, double wear, Chance chance) {
        madeK = new double[count];
        nowK = new double[count];
        leakShare = new double[count];
        blocked = new double[count];
        worn = new double[count];
        lostTimes = new double[count];
        leak = new double[count];
        for (int i = 0; i < count; i++) {
            double sigmas = Math.max(-3, Math.min(3, chance.nextGaussian()));
            madeK[i] = orifice.k() * (1 + spread * sigmas);
        }
        if (wear > 0) {
            for (int i = 0; i < count; i++) {
                madeK[i] *= 1 + 2 * wear * chance.nextDouble();
            }
        }
        for (int i = 0; i < count; i++) {
            renew(i);
        }
    }

    void block(int outlet, double share) {
        blocked[outlet] = share;
        renew(outlet);
    }

    void wear(int outlet, double share) {
        worn[outlet] = share;
        renew(outlet);
    }

    void lose(int outlet, double times) {
        lostTimes[outlet] = times;
        renew(outlet);
    }

    void leak(int outlet, double share) {
        leak[outlet] = share;
        renew(outlet);
        leaking = false;
        for (double each : leak) {
            leaking |= each > 0;
        }
    }

    private void renew(int i) {
        double hole = lostTimes[i] > 0 ? lostTimes[i] : 1 + worn[i];
        double stream = madeK[i] * hole * (1 - blocked[i]);
        double beside = madeK[i] * leak[i];
        nowK[i] = stream + beside;
        leakShare[i] = nowK[i] > 0 ? beside / nowK[i] : 0;
    }

    /** K of each outlet with its leak, m³/s per √Pa; not to be changed. */
    double[] k() {
        return nowK;
    }

    /** Share of what passes an outlet that leaves it beside its streams. */
    double leakShare(int outlet) {
        return leakShare[outlet];
    }

    boolean isLeaking() {
        return leaking;
    }
}
