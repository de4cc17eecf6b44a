package evenfall.rig;

import java.util.List;

/**
 * A boom with evenly spaced outlets in sections, and the rows under it. Positions are metres to the right of the centre line.
 *
 * @param outlets how many outlets
 * @param spacingM distance between them, m
 * @param rowM row spacing, m
 * @param rowPhase place of row 0 right of the centre line, in row spacings
 * @param hingeM the wings begin here, m from the centre line on either side
 * @param sections from left to right; together they hold every outlet
 */
public record BoomLayout(
        int outlets, double spacingM, double rowM, double rowPhase, double hingeM, List<Section> sections) {

    public BoomLayout {
        sections = List.copyOf(sections);
    }

    /**
     * A part of the boom that is switched together.
     *
     * @param name for people and messages: 1 is the leftmost
     * @param firstOutlet index of its leftmost outlet, from 0
     * @param outletCount how many outlets it holds
     */
    public record Section(String name, int firstOutlet, int outletCount) {
        /** Index of the outlet after its rightmost one: where the next section begins. */
        public int endOutlet() {
            return firstOutlet + outletCount;
        }
    }

    /** Working width, m: every outlet feeds half a spacing to either side. */
    public double widthM() {
        return outlets * spacingM;
    }

    /** Place of an outlet, m right of the centre line. */
    public double outletRightM(int outlet) {
        return (outlet - 0.5 * (outlets - 1)) * spacingM;
    }

    /** The section that an outlet belongs to. */
    public int sectionOf(int outlet) {
        for (int s = 0; s < sections.size(); s++) {
            if (outlet < sections.get(s).endOutlet()) {
                return s;
            }
        }
        throw new IllegalArgumentException("the boom has no outlet " + outlet);
    }
}
