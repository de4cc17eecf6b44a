/**
 * The bench tests as guided steps: ask, measure, conclude.
 *
 * <p>Pure. A {@link evenfall.bench.prove.guide.Guide} is what has been answered so far and what is wanted next; each reply gives a
 * new guide or a refusal of one line. A terminal, a file of answers and a page can all be its front end, and going back is
 * leaving out the last reply. The scripts are written as plain dialogues that run anew over all replies each time: what they
 * find does not depend on when or how often they run.
 */
@NullMarked
package evenfall.bench.prove.guide;

import org.jspecify.annotations.NullMarked;
