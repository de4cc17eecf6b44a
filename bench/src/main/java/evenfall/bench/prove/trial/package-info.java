/**
 * A trial of the provers: a simulated hub and receiver on virtual ports, with constants that only the trial knows, and a hand that
 * answers what a person would read off.
 *
 * <p>Its numbers reach the provers as bytes on a port and as typed answers, in no other way.
 */
@NullMarked
package evenfall.bench.prove.trial;

import org.jspecify.annotations.NullMarked;
