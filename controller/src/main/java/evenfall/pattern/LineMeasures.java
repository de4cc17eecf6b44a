package evenfall.pattern;

/**
 * How the landing lines lie, which names the cause when rows are uneven.
 *
 * @param widestGapM widest gap between neighbouring lines, m
 * @param doubledShare share of the liquid whose line lies within a quarter of a row spacing of a line from another outlet
 */
public record LineMeasures(double widestGapM, double doubledShare) {}
