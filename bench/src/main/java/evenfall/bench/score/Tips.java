package evenfall.bench.score;

import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import java.util.ArrayList;
import java.util.List;

/** Both tips of the boom at 50 Hz: how low they have been, and when they touched. */
final class Tips {
    private final Tip left;
    private final Tip right;

    /**
     * @param leftM of the left tip since the last time it was asked, m
     * @param rightM of the right tip, m
     */
    record Lowest(double leftM, double rightM) {}

    Tips(BoomLayout boom, Rig belief) {
        double halfM = 0.5 * boom.widthM();
        double outerM = halfM - 0.25 * (halfM - boom.hingeM());
        int quarter = 0;
        for (int i = 0; i < boom.outlets(); i++) {
            quarter += boom.outletRightM(i) > outerM ? 1 : 0;
        }
        int n = Math.max(1, quarter);
        left = new Tip("left", 0, n, belief);
        right = new Tip("right", boom.outlets() - n, boom.outlets(), belief);
    }

    void heights(double atS, double[] heightM) {
        left.take(atS, heightM);
        right.take(atS, heightM);
    }

    /** Since the last call. */
    Lowest lowest() {
        return new Lowest(left.lowest(), right.lowest());
    }

    /** In order of time. */
    List<Contact> contacts() {
        List<Contact> all = new ArrayList<>(left.contacts);
        all.addAll(right.contacts);
        all.sort((a, b) -> Double.compare(a.atS(), b.atS()));
        return all;
    }

    private static final class Tip {
        private final String place;
        private final int from;
        private final int to;
        private final double targetM;
        private final double clearanceM;
        private final List<Contact> contacts = new ArrayList<>();
        private double lowestM = Double.POSITIVE_INFINITY;
        private double atTargetS = Double.NEGATIVE_INFINITY;
        private boolean down;

        Tip(String place, int from, int to, Rig belief) {
            this.place = place;
            this.from = from;
            this.to = to;
            this.targetM = belief.target().heightM();
            this.clearanceM = belief.limits().clearanceM();
        }

        void take(double atS, double[] heightM) {
            double tipM = Double.POSITIVE_INFINITY;
            for (int i = from; i < to; i++) {
                tipM = Math.min(tipM, heightM[i]);
            }
            lowestM = Math.min(lowestM, tipM);
            if (tipM >= targetM) {
                atTargetS = atS;
            }
            if (tipM <= ScoringRules.TOUCH_M && !down) {
                down = true;
                contacts.add(new Contact(place, atS, atS - atTargetS));
            } else if (tipM > clearanceM) {
                // Until then it is the same contact, however it bounces.
                down = false;
            }
        }

        double lowest() {
            double lowest = lowestM;
            lowestM = Double.POSITIVE_INFINITY;
            return lowest;
        }
    }
}
