package evenfall.sim.plumbing;

import evenfall.sim.chance.Chance;

/**
 * Air that the pump draws in, in slugs: liquid with a share of air and liquid without it pass by turns, each for a random time.
 *
 * <p>Through an orifice the mixture goes at {@code K √(p / (SG (1 − a)))}, of which {@code 1 − a} is liquid: of liquid passes
 * {@code √(1 − a)} of what would (homogeneous mixture, Bernoulli). A meter counts liquid and air: {@code 1/(1 − a)} of the liquid.
 */
final class AirSlugs {
    private static final double SHORTEST_S = 0.2;
    private static final double LONGEST_S = 1.2;

    private final double share;
    private final Chance chance;
    private double leftS;
    private boolean airy;

    /** @param share of a slug's volume that is air, 0 to below 1 */
    AirSlugs(double share, Chance chance) {
        this.share = share;
        this.chance = chance;
    }

    /** Share of air in what passes during the coming step. */
    double step(double dtS) {
        if (leftS <= 0) {
            airy = !airy;
            leftS = SHORTEST_S + (LONGEST_S - SHORTEST_S) * chance.nextDouble();
        }
        leftS -= dtS;
        return airy ? share : 0;
    }
}
