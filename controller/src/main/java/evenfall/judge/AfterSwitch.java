package evenfall.judge;

import evenfall.detect.ShiftTest;

/**
 * A section that was switched off and runs on, told before flow and pressure have settled: a sequential test of what flows more than
 * anything else explains. What is not settled yet is in what each look is allowed, so that little is told as late as ever, and a
 * whole section as soon as it is sure and has lasted.
 */
final class AfterSwitch {
    /** 2 s, longer than a slug of air passes, as for every step. */
    private static final int LAST_LOOKS = 10;

    private final ShiftTest more;
    private int inRow;
    private boolean told;

    /** @param sizes steps that the test is made for, as shares of the flow */
    AfterSwitch(double[] sizes) {
        more = new ShiftTest(Looks.BETWEEN_FALSE_ALARMS, sizes);
    }

    void reset() {
        more.reset();
        inRow = 0;
        told = false;
    }

    /**
     * Takes one look.
     *
     * @param beyond what flows more than is explained and allowed, as a share of the flow
     * @param sigma noise of a look, as a share of the flow
     * @return whether this look has decided
     */
    boolean take(double beyond, double sigma) {
        more.take(beyond, sigma);
        inRow = beyond > 0 ? inRow + 1 : 0;
        told = more.isSure() && inRow >= LAST_LOOKS;
        return told;
    }

    /** Whether it has decided since the switch. */
    boolean hasTold() {
        return told;
    }
}
