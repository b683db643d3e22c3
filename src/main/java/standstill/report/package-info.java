/**
 * The whole way from text to ranked causes as one call, its result, and the result as JSON. Page,
 * terminal and API render this and nothing else.
 */
@NullMarked
package standstill.report;

import org.jspecify.annotations.NullMarked;
