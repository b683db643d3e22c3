package standstill.web;

import standstill.account.Accounts;
import standstill.account.Attempts;
import standstill.account.Sessions;
import standstill.edit.Editing;

/**
 * What a server needs to have for editing. A server without it has no address that writes.
 *
 * @param editing of the base
 * @param accounts of those who may
 * @param sessions of those who are signed in
 * @param attempts to sign in
 */
public record EditDesk(Editing editing, Accounts accounts, Sessions sessions, Attempts attempts) {
  /** A desk at which nobody has signed in yet. */
  public EditDesk(Editing editing, Accounts accounts) {
    this(editing, accounts, new Sessions(System::nanoTime), new Attempts(System::nanoTime));
  }
}
