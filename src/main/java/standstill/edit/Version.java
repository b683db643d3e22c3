package standstill.edit;

import java.time.Instant;

/**
 * A text that an entry had.
 *
 * @param commit names it
 * @param who wrote it
 * @param when it was written
 * @param why the first line of the reason
 * @param approvedBy who approved it; empty when it came by another way than these pages
 */
public record Version(String commit, String who, Instant when, String why, String approvedBy) {}
