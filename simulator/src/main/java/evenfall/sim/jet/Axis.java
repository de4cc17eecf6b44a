package evenfall.sim.jet;

/**
 * An evenly divided axis of a table, interpolated by the cubic through the four nearest nodes (Lagrange). Outside its ends the
 * nearest end counts.
 */
final class Axis {
    /** Nodes that take part in one interpolation. */
    static final int NODES = 4;

    private final double from;
    private final double perStep;
    private final double step;
    private final int count;
    private final double last;

    /**
     * @param from first node
     * @param to last node
     * @param count how many nodes, at least 4
     */
    Axis(double from, double to, int count) {
        this.from = from;
        this.count = count;
        last = count - 1;
        step = (to - from) / (count - 1);
        perStep = 1 / step;
    }

    int count() {
        return count;
    }

    double node(int i) {
        return from + i * step;
    }

    double last() {
        return node(count - 1);
    }

    /** Place on the axis in steps from the first node, held within the axis. */
    double place(double x) {
        // Branches that nearly always go the same way: cheaper here than the library's exact minimum and maximum.
        double place = (x - from) * perStep;
        if (place < 0) {
            return 0;
        }
        return place > last ? last : place;
    }

    /** First of the four nodes for a place. */
    int first(double place) {
        return Math.max(0, Math.min(count - NODES, (int) place - 1));
    }

    /** The same stretch in so many times as many steps. */
    Axis finer(int times) {
        return new Axis(from, last(), (count - 1) * times + 1);
    }

    /** How far apart nodes are. */
    double step() {
        return step;
    }

    /**
     * Weight of one of the four nodes.
     *
     * @param t place less the first node, 0 to 3
     */
    static double weight(int node, double t) {
        return switch (node) {
            case 0 -> (t - 1) * (t - 2) * (3 - t) * (1.0 / 6);
            case 1 -> t * (t - 2) * (t - 3) * 0.5;
            case 2 -> t * (t - 1) * (3 - t) * 0.5;
            default -> t * (t - 1) * (t - 2) * (1.0 / 6);
        };
    }

    /** How the weight of one of the four nodes changes along the axis, for a step of 1. */
    static double slope(int node, double t) {
        return switch (node) {
            case 0 -> (-3 * t * t + 12 * t - 11) * (1.0 / 6);
            case 1 -> (3 * t * t - 10 * t + 6) * 0.5;
            case 2 -> (-3 * t * t + 8 * t - 3) * 0.5;
            default -> (3 * t * t - 6 * t + 2) * (1.0 / 6);
        };
    }
}
