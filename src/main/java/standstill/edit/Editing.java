package standstill.edit;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;

/**
 * Everything that editing a base takes: the entry of this room.
 *
 * @param proposals in the repository
 * @param checker of texts
 * @param trials on labelled boots
 * @param drafts of those who are at it
 */
public record Editing(Proposals proposals, Checker checker, Trials trials, Drafts drafts)
    implements AutoCloseable {
  /**
   * Opens a base's folder for editing.
   *
   * @throws Refused when it can't be edited, with what to do about it
   */
  public static Editing open(Path base, Clock clock) throws IOException, Refused {
    Proposals proposals = Proposals.open(base, clock);
    return new Editing(
        proposals,
        proposals.checker(),
        new Trials(proposals.checker(), proposals.folder()),
        new Drafts());
  }

  @Override
  public void close() throws IOException {
    trials.close();
    proposals.close();
  }
}
