package evenfall.sim.fault;

/**
 * How each outlet sits on the boom. One that is turned by θ about its upright axis throws its lines turned by θ: lines side by side
 * close up by cos θ. Where one is lost, all falls as one line straight beneath.
 */
public final class OutletMounts {
    private final double[] turnRad;
    private final boolean[] lost;
    private final double[] cos;
    private final double[] sin;
    private int changed;
    private Runnable before = () -> {};

    public OutletMounts(int outlets) {
        turnRad = new double[outlets];
        lost = new boolean[outlets];
        cos = new double[outlets];
        sin = new double[outlets];
        for (int i = 0; i < outlets; i++) {
            cos[i] = 1;
        }
    }

    /** What is to be done before an outlet comes to sit otherwise: what has left it so far belongs to it as it was. */
    public void beforeEachChange(Runnable before) {
        this.before = before;
    }

    /** @param rad turn about the upright axis, clockwise seen from above; 0 makes it whole */
    void turn(int outlet, double rad) {
        before.run();
        turnRad[outlet] = rad;
        renew(outlet);
    }

    void lose(int outlet, boolean on) {
        before.run();
        lost[outlet] = on;
        renew(outlet);
    }

    private void renew(int i) {
        changed -= isChanged(i) ? 1 : 0;
        cos[i] = lost[i] ? 0 : StrictMath.cos(turnRad[i]);
        sin[i] = lost[i] ? 0 : StrictMath.sin(turnRad[i]);
        changed += isChanged(i) ? 1 : 0;
    }

    /** Whether any outlet sits otherwise than it should. */
    public boolean anyChanged() {
        return changed > 0;
    }

    public boolean isChanged(int outlet) {
        return cos[outlet] != 1 || sin[outlet] != 0;
    }

    /**
     * Where a line falls, m right of its outlet.
     *
     * @param rightM where it would fall, m right of its outlet
     * @param backM where it would fall, m behind its outlet
     */
    public double rightM(int outlet, double rightM, double backM) {
        return cos[outlet] * rightM - sin[outlet] * backM;
    }

    /** Where a line falls, m behind its outlet; see {@link #rightM}. */
    public double backM(int outlet, double rightM, double backM) {
        return sin[outlet] * rightM + cos[outlet] * backM;
    }
}
