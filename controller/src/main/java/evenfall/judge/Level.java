package evenfall.judge;

/** A mean of the conductance ratio over some looks, with where on the sensors' ranges it was taken. Filled anew again and again. */
final class Level {
    /** No memory reaches back further: ten minutes of looks. Our choice: wear is slower, plugging is faster. */
    private static final long MEMORY = 3000;

    private long looks;
    private double logRatio;
    private double halfPerPa;
    private double logFlow;
    private double least;
    private double most;

    void clear() {
        looks = 0;
    }

    void take(double logRatio, double pressurePa, double flowM3ps) {
        looks++;
        double weight = 1.0 / Math.min(looks, MEMORY);
        boolean first = looks == 1;
        this.logRatio = first ? logRatio : this.logRatio + weight * (logRatio - this.logRatio);
        double half = 0.5 / pressurePa;
        halfPerPa = first ? half : halfPerPa + weight * (half - halfPerPa);
        double log = StrictMath.log(flowM3ps);
        logFlow = first ? log : logFlow + weight * (log - logFlow);
        least = first ? logRatio : Math.min(least, logRatio);
        most = first ? logRatio : Math.max(most, logRatio);
    }

    void copy(Level other) {
        looks = other.looks;
        logRatio = other.logRatio;
        halfPerPa = other.halfPerPa;
        logFlow = other.logFlow;
        least = other.least;
        most = other.most;
    }

    long looks() {
        return looks;
    }

    double logRatio() {
        return logRatio;
    }

    /** From the lowest to the highest look. */
    double range() {
        return most - least;
    }

    /**
     * How far the ratio may be from this level, in logarithms, only because it is taken at another pressure and flow.
     *
     * @param offsetPa a transmitter's zero may be wrong by so much, Pa
     * @param linearity share by which a meter's factor may change for each e-fold of flow
     */
    double wander(double pressurePa, double flowM3ps, double offsetPa, double linearity) {
        return offsetPa * Math.abs(0.5 / pressurePa - halfPerPa)
                + linearity * Math.abs(StrictMath.log(flowM3ps) - logFlow);
    }

    /** The same between two levels. */
    double wander(Level other, double offsetPa, double linearity) {
        return offsetPa * Math.abs(other.halfPerPa - halfPerPa) + linearity * Math.abs(other.logFlow - logFlow);
    }
}
