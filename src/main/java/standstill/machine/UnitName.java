package standstill.machine;

/**
 * Names of units as an init program escapes paths in them: {@code -} for a slash, and {@code \xNN}
 * for what would be taken for something else.
 */
final class UnitName {
  private static final String[] OF_PATHS = {".device", ".mount", ".swap", ".automount"};

  private UnitName() {}

  /** The path that such a name stands for, or the name itself. */
  static String unescaped(String name) {
    String path = name;
    boolean ofPath = false;
    for (String ending : OF_PATHS) {
      if (name.endsWith(ending)) {
        path = name.substring(0, name.length() - ending.length());
        ofPath = true;
      }
    }
    if (!ofPath && !(name.startsWith("dev-") && name.contains("\\x2d"))) {
      return name;
    }
    StringBuilder out = new StringBuilder("/");
    for (int i = 0; i < path.length(); i++) {
      char c = path.charAt(i);
      if (c == '-') {
        out.append('/');
      } else if (c == '\\' && path.startsWith("\\x", i) && i + 4 <= path.length()) {
        int code = code(path.substring(i + 2, i + 4));
        out.append(code < 0 ? c : (char) code);
        i += code < 0 ? 0 : 3;
      } else {
        out.append(c);
      }
    }
    return out.toString();
  }

  private static int code(String digits) {
    try {
      return Integer.parseInt(digits, 16);
    } catch (NumberFormatException e) {
      return -1;
    }
  }
}
