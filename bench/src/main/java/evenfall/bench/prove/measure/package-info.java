/**
 * What measurements of a sensor say: constants with their uncertainty, and verdicts against named limits.
 *
 * <p>Pure: numbers in, numbers out; no file, port, clock or dialogue. Uncertainty follows the <em>Guide to the expression of
 * uncertainty in measurement</em> (GUM, JCGM 100:2008): components found from repeats (type A) and otherwise (type B), each
 * with its degrees of freedom; their sum, its effective degrees of freedom by Welch and Satterthwaite, and a coverage factor
 * for 95 %. SI inside.
 */
@NullMarked
package evenfall.bench.prove.measure;

import org.jspecify.annotations.NullMarked;
