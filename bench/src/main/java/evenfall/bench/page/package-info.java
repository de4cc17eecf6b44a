/**
 * Pages for reading and printing: one HTML file that needs nothing else, with charts as SVG inside it.
 *
 * <p>{@link evenfall.bench.page.Page} is the frame with its styles for screen, A4 and Letter; {@link
 * evenfall.bench.page.LineChart} draws lines and areas over two {@link evenfall.bench.page.Axis axes}, each in an {@link
 * evenfall.bench.page.Ink} whose colour is never its only sign; {@link evenfall.bench.page.DataTable} is a table. Knows nothing of
 * what is shown.
 */
@NullMarked
package evenfall.bench.page;

import org.jspecify.annotations.NullMarked;
