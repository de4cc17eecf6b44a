/**
 * Sequential tests: deciding, one look after another, whether a signal has left what it was, as soon as a stated time between false
 * alarms allows.
 *
 * <p>A cumulative sum (Page 1954) adds up what a signal has gone past a reference and forgets what lies before its last zero. Among all
 * tests with the same time between false alarms it finds a step of the size that it is made for in the least mean time (Moustakides
 * 1986), and none can be quicker than {@code log(ARL0) / I} as that time grows, {@code I} being the Kullback-Leibler information of a
 * look (Lorden 1971). All three from memory; {@code controller/docs/judgement.md} holds the figures that are measured here. No
 * threshold is typed in: each follows from the signal's own noise and the time between false alarms.
 */
@NullMarked
package evenfall.detect;

import org.jspecify.annotations.NullMarked;
