package evenfall.bench.page;

import org.jspecify.annotations.Nullable;

/**
 * A point of a chart, in the units of its axes.
 *
 * @param x along the level axis
 * @param y along the upright axis; null where not known, which breaks a line there
 */
public record Point(double x, @Nullable Double y) {}
