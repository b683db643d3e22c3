package standstill.web;

/**
 * A link to an entry.
 *
 * @param href address
 * @param title text of the link
 * @param note what stands behind it, or empty
 */
public record LinkView(String href, String title, String note) {}
