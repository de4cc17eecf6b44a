package evenfall.sim.plumbing;

/** Pump, main strainer and regulating valve: what stands between the tank and the boom. */
final class Supply {
    private static final double LEAST_PA = 1;

    private final PlumbingSpec spec;
    private final double valveK;
    private final double meshK;
    private double pumpShare = 1;
    private double plugged;

    /** @param boomK of everything on the boom that is open, m³/s per √Pa */
    Supply(PlumbingSpec spec, double boomK) {
        this.spec = spec;
        // Fully open, the valve leaves four fifths of the pump's pressure to the boom.
        valveK = 2 * boomK;
        meshK = 2 * boomK;
    }

    /** @param share of its speed that the pump has lost */
    void weaken(double share) {
        pumpShare = 1 - share;
    }

    /** @param share of the strainer's mesh that is shut */
    void plug(double share) {
        plugged = Math.min(share, 1 - 1e-6);
    }

    /** Pressure before the valve, Pa: it goes with the square of the pump's speed (affinity laws). */
    double pumpPa() {
        return pumpShare * pumpShare * spec.pumpPa();
    }

    /** The valve's coefficient at an opening, m³/s per √Pa. */
    double valveK(double opening) {
        return opening * valveK;
    }

    /** Conductance from the tank to the boom, m³/s per Pa: strainer and valve, and no more than the pump delivers. */
    double conductance(double opening, double feedPa) {
        double difference = pumpPa() - feedPa;
        if (difference <= 0) {
            return 0;
        }
        double k = valveK(opening);
        if (plugged > 0) {
            double mesh = meshK * (1 - plugged) / plugged;
            k = k * mesh / Math.sqrt(k * k + mesh * mesh);
        }
        double most = pumpShare * spec.lines().pumpM3ps() / Math.max(difference, LEAST_PA);
        return Math.min(k / Math.sqrt(Math.max(difference, LEAST_PA)), most);
    }
}
