/**
 * The machine as its installer describes it: boom, rows, outlets, product, target, sensors and where they sit, limits, ports
 * and broker.
 *
 * <p>It is a belief, not the truth: a meter's pulses per litre here may be wrong on the machine. Read once at the start and
 * checked then; a rig that stands here can be worked with.
 */
@NullMarked
package evenfall.rig;

import org.jspecify.annotations.NullMarked;
