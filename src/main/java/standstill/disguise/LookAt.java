package standstill.disguise;

/**
 * Something that a person should look at before sharing, because the program is not sure of it.
 *
 * @param text as it stands in the log, which is not disguised
 * @param why what it may be
 */
public record LookAt(String text, String why) {}
