/**
 * Changes of the base by a team: drafts and what they would do, proposals, a second person's
 * approval, history. It alone knows JGit. In comes the folder of a base in a git work tree; out go
 * records and commits. Commits are made in the object database and merged there; the work tree
 * follows afterwards, whole or not at all. It must not know how anything is shown, nor who is who:
 * names come in as they were signed in.
 */
@NullMarked
package standstill.edit;

import org.jspecify.annotations.NullMarked;
