package evenfall.sim.scenario;

/**
 * Sections are switched.
 *
 * @param atS when, s from the start
 * @param mask what is on from then: bit 0 is the leftmost section
 */
public record SwitchSpec(double atS, long mask) {}
