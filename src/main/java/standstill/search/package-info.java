/**
 * Index and query over the fault base, and browsing by facets; the only room that knows Lucene.
 *
 * <p>A base comes in, with a folder for the index where there is one; ids of entries come out, in
 * order, with the words that matched. The index can be thrown away at any time: it is keyed by a
 * fingerprint of what it was built from, and built again when it does not fit or can't be read. It
 * must not know how anything is shown.
 */
@NullMarked
package standstill.search;

import org.jspecify.annotations.NullMarked;
