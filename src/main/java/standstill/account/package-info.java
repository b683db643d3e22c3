/**
 * Who may write: accounts in a file, signing in, sessions. It alone knows how passwords are hashed,
 * and must not know what is written or how anything is shown.
 */
@NullMarked
package standstill.account;

import org.jspecify.annotations.NullMarked;
