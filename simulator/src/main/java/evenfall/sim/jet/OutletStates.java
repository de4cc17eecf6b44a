package evenfall.sim.jet;

/**
 * How the outlets of a boom are at one moment, or at several, one after the other. Made once; the caller writes into the arrays before
 * each {@link BoomFlight#land}. All are indexed by {@code moment · outlets + outlet}, outlets from the left: long rows, which the
 * compiler's vector instructions need.
 */
public final class OutletStates {
    final int outlets;
    final int moments;
    final double[] rightM;
    final double[] heightM;
    final double[] speedFactor;
    final double[] quantity;
    final double[] rollRad;
    final double[] upMps;
    final double[] toRightMps;
    final double[] forwardMps;

    /** @param outlets how many on the boom */
    public OutletStates(int outlets) {
        this(outlets, 1);
    }

    /**
     * @param outlets how many on the boom
     * @param moments for how many moments there is room
     */
    public OutletStates(int outlets, int moments) {
        this.outlets = outlets;
        this.moments = moments;
        int places = outlets * moments;
        rightM = new double[places];
        heightM = new double[places];
        speedFactor = new double[places];
        quantity = new double[places];
        rollRad = new double[places];
        upMps = new double[places];
        toRightMps = new double[places];
        forwardMps = new double[places];
    }

    /** How many outlets there are. */
    public int outlets() {
        return outlets;
    }

    /** Place, m right of the boom's centre line. */
    public double[] rightM() {
        return rightM;
    }

    /** Height over the ground, m; at or below 0 it is in the crop or soil and its streams fall where their holes are. */
    public double[] heightM() {
        return heightM;
    }

    /** Exit speed over the rated one with water, {@link evenfall.outlet.OutletType#speedFactor}. */
    public double[] speedFactor() {
        return speedFactor;
    }

    /** What leaves it, in whatever is to be shared out (m³, m³/s); at or below 0 it is shut. */
    public double[] quantity() {
        return quantity;
    }

    /** Turn about the fore-and-aft axis, rad, positive when its right side is up. */
    public double[] rollRad() {
        return rollRad;
    }

    /** Its own velocity upwards, m/s. */
    public double[] upMps() {
        return upMps;
    }

    /** Its own velocity to the right against the machine, m/s. */
    public double[] toRightMps() {
        return toRightMps;
    }

    /** Its own velocity forwards against the machine, m/s. */
    public double[] forwardMps() {
        return forwardMps;
    }
}
