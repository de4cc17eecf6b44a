package evenfall.sim.plumbing;

import java.util.Arrays;

/** What has left each outlet since it was last handed over, in its streams and beside them. */
final class Delivered {
    private final double[] streamM3;
    private final double[] besideM3;
    private final double[] handedM3;
    private final double[] handedBesideM3;
    private boolean any;
    private boolean handedBeside;

    Delivered(int outlets) {
        streamM3 = new double[outlets];
        besideM3 = new double[outlets];
        handedM3 = new double[outlets];
        handedBesideM3 = new double[outlets];
    }

    /** Puts aside what has left an outlet. */
    void add(int outlet, double flowedM3, double leakShare) {
        double leakedM3 = flowedM3 * leakShare;
        besideM3[outlet] += leakedM3;
        streamM3[outlet] += flowedM3 - leakedM3;
        any = true;
    }

    boolean isEmpty() {
        return !any;
    }

    /** Hands over what has been put aside; the array is used again. */
    double[] hand() {
        System.arraycopy(streamM3, 0, handedM3, 0, handedM3.length);
        System.arraycopy(besideM3, 0, handedBesideM3, 0, handedBesideM3.length);
        Arrays.fill(streamM3, 0);
        Arrays.fill(besideM3, 0);
        any = false;
        handedBeside = true;
        return handedM3;
    }

    /** An array to hand over that holds nothing put aside and no leak: the caller fills it. */
    double[] handPlain() {
        if (handedBeside) {
            Arrays.fill(handedBesideM3, 0);
            handedBeside = false;
        }
        return handedM3;
    }

    /** Whether anything may have leaked of what was handed over last. */
    boolean leaked() {
        return handedBeside;
    }

    /** What had leaked beside the streams of an outlet in what was handed over last, m³. */
    double leakedM3(int outlet) {
        return handedBesideM3[outlet];
    }
}
