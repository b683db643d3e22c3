/**
 * Probabilities of causes from what was seen and what was not. No other room computes one.
 *
 * <p>The method is naive Bayes over one cause at a time with its consequences; see {@link
 * standstill.rank.Ranker}.
 */
@NullMarked
package standstill.rank;

import org.jspecify.annotations.NullMarked;
