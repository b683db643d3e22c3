package standstill.web;

import io.javalin.Javalin;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import standstill.account.Accounts;
import standstill.edit.Editing;
import standstill.edit.TeamBase;
import standstill.search.Search;
import standstill.store.BaseInUse;

/** A running server on which two invented maintainers, ada and bram, keep a small base. */
record TeamServer(TeamBase team, Editing editing, BaseInUse inUse, Javalin server)
    implements AutoCloseable {
  static final String ADA = "a lamp in every window";
  static final String BRAM = "three wicks and a match";

  static TeamServer start(Path folder) throws Exception {
    TeamBase team = TeamBase.make(folder.resolve("repository"));
    Path accounts = folder.resolve("accounts");
    Accounts.put(accounts, "ada", ADA);
    Accounts.put(accounts, "bram", BRAM);
    Editing editing = Editing.open(team.folder(), Clock.systemUTC());
    BaseInUse inUse = BaseInUse.of(team.folder(), base -> Search.open(base, Optional.empty()));
    EditDesk desk = new EditDesk(editing, Accounts.open(accounts));
    Javalin server = Server.create(inUse, Optional.of(desk));
    server.start("127.0.0.1", 0);
    return new TeamServer(team, editing, inUse, server);
  }

  String address() {
    return "http://127.0.0.1:" + server.port();
  }

  @Override
  public void close() throws Exception {
    server.stop();
    inUse.close();
    editing.close();
  }
}
