/**
 * YAML texts to the records of {@code base}, with every problem at its line and column. It alone
 * knows SnakeYAML; it reads no files itself.
 */
@NullMarked
package standstill.base.yaml;

import org.jspecify.annotations.NullMarked;
