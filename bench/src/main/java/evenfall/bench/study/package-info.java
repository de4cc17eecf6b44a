/**
 * Studies: many short runs over every ground, outlet type, speed and height that was asked for, each with several seeds, and which
 * outlet type is the most even where.
 *
 * <p>{@link evenfall.bench.study.Grid} says which runs; {@link evenfall.bench.study.StudyStore} keeps each as it ends, one transaction
 * a run, so that a study goes on where it was broken off; {@link evenfall.bench.study.Findings} sets types beside each other on the
 * same ground, and {@link evenfall.bench.study.StudySheet} shows them.
 */
@NullMarked
package evenfall.bench.study;

import org.jspecify.annotations.NullMarked;
