package evenfall.sim.world;

/**
 * How the lines lie that fall on a stretch of the boom at one moment; it names the cause where rows are uneven. Lines are the
 * middles of the streams' bands; what leaks straight down is none.
 *
 * @param lines how many fall
 * @param widestGapM widest gap between neighbouring ones, m; 0 for fewer than two
 * @param flowM3ps what they bring, m³/s
 * @param doubledM3ps what those of them bring that lie within a quarter of a row spacing of a line from another outlet, m³/s
 */
public record LineFigures(int lines, double widestGapM, double flowM3ps, double doubledM3ps) {}
