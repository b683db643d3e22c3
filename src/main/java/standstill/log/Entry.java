package standstill.log;

/**
 * A piece with its beginning taken apart.
 *
 * @param piece where it came from and what was to be read
 * @param prefix what its beginning says
 * @param message what stands after the beginning
 * @param bootId the boot that a journal says it belongs to, or empty
 * @param afterCut whether something was left out just before
 */
record Entry(Piece piece, Prefix prefix, String message, String bootId, boolean afterCut) {
  static Entry of(Piece piece, Prefix prefix) {
    String text = piece.text();
    String message = prefix.end() == 0 ? text : text.substring(prefix.end());
    String stripped = message.strip();
    return new Entry(piece, prefix, stripped.equals(text) ? text : stripped, "", false);
  }
}
