/**
 * The cab view: a small web page from the board to any phone or tablet in the cab. It shows the messages that everyone else gets, and can
 * acknowledge an alert and nothing else.
 */
@NullMarked
package evenfall.page;

import org.jspecify.annotations.NullMarked;
