/**
 * What can go wrong, when and where: a library of faults, and the script of those that a scenario asks for.
 *
 * <p>A fault is a line in a scenario: {@code {fault: outlet-blocked, at_s: 20, for_s: 30, where: 17, how_much: 1.0}}. This room knows
 * when a fault comes and goes and which part it touches; what it does then is the part's own business ({@code PlumbingTrouble},
 * {@code HubTrouble} and the like). A fault that needs chance has a stream of its own, named after itself, its place and its moment,
 * so that adding one leaves all others as they were. Knows nothing of what the monitor believes or does; the alert kinds beside a
 * fault are names of the contract, for whoever keeps the score.
 */
@NullMarked
package evenfall.sim.fault;

import org.jspecify.annotations.NullMarked;
