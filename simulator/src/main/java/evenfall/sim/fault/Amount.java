package evenfall.sim.fault;

import evenfall.quantity.FixedDecimals;

/**
 * What {@code how_much} means for a fault.
 *
 * @param unit of the number, or what it is a share of; empty where a fault is there or not and no number is given
 * @param least smallest that is allowed
 * @param most largest that is allowed
 * @param usual where the file gives none
 */
public record Amount(String unit, double least, double most, double usual) {
    /** A fault that is there or not. */
    static final Amount NONE = new Amount("", 1, 1, 1);

    public boolean isGiven() {
        return !unit.isEmpty();
    }

    /** What may stand behind {@code how_much}. */
    public String words() {
        return isGiven()
                ? brief(least) + " to " + brief(most) + " " + unit + ", usually " + brief(usual)
                : "nothing: it is there or not";
    }

    private static String brief(double value) {
        String text = FixedDecimals.text(value, 4);
        while (text.contains(".") && (text.endsWith("0") || text.endsWith("."))) {
            text = text.substring(0, text.length() - 1);
        }
        return text;
    }
}
