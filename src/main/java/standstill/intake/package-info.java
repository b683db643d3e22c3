/**
 * What a server lets in before any page sees it: by which names it is reached, whose pages may send
 * something, how much and how slowly, and for how long an answer may be worked on. It alone knows
 * Jetty, and must not know what is asked or answered.
 */
@NullMarked
package standstill.intake;

import org.jspecify.annotations.NullMarked;
