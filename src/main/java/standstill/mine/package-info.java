/**
 * Lines that no sign explains, grouped into templates, and a line turned into the pattern of a
 * sign. In: messages of a log as {@code log} reads them, without stamps and tags. Out: templates
 * with their lines, patterns with their captures. It must not know files, the terminal or how
 * causes are ranked.
 */
@NullMarked
package standstill.mine;

import org.jspecify.annotations.NullMarked;
