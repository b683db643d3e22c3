/**
 * The next step: which check or repair costs the least and tells the most. It alone chooses steps;
 * probabilities come from {@code rank}. It keeps no state: a walk is a function of a ranking and of
 * what a person has said.
 */
@NullMarked
package standstill.guide;

import org.jspecify.annotations.NullMarked;
