/**
 * From bytes to sentences: the NMEA 0183 envelope, the receivers' RMC, VTG and GGA, and the sensor hub's own
 * sentences, as {@code docs/wire.md} describes them.
 *
 * <p>It knows what a sentence says and nothing of what it means for a machine: no calibration, no plausibility beyond
 * the range a field can have, no age. It asks no clock, allocates nothing per sentence and throws nothing over bad
 * input. Every line that starts with {@code $} ends in exactly one counter of {@link evenfall.wire.WireCounts}, so
 * that nothing vanishes unseen.
 *
 * <p>The simulator writes its sentences with an encoder of its own, so that a fault in this package cannot hide on
 * both sides; {@code docs/golden-sentences.tsv} holds the two together.
 */
@NullMarked
package evenfall.wire;

import org.jspecify.annotations.NullMarked;
