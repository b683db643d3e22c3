/**
 * A text with its identifiers replaced, so that it can be shown to others. In: lines; out: the same
 * lines, with each name, address, serial number, disk identifier and secret replaced by the same
 * stand-in wherever it occurs, and an account of what was replaced and what a person should look
 * at.
 *
 * <p>Each sort of identifier has a small finder that claims places of a line; a place that one has
 * claimed is no other's. Names are learnt in a first pass over the text and found as words in the
 * second. All of it takes time linear in the text: no finder looks further around a place than a
 * fixed distance, and patterns run in RE2/J. What is trade knowledge (marks beside names, words of
 * a kernel's command line, units, accounts) stands in tables beside the classes, not in code. The
 * room must not know what the lines mean.
 */
@NullMarked
package standstill.disguise;

import org.jspecify.annotations.NullMarked;
