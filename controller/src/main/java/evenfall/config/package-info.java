/**
 * Reading what people write: YAML files checked against a JSON Schema, with the line and the allowed values in every
 * complaint.
 *
 * <p>Knows nothing of rigs or outlets; those packages bring their schema and ask for values by key. Nothing here runs
 * once the monitor has started.
 */
@NullMarked
package evenfall.config;

import org.jspecify.annotations.NullMarked;
