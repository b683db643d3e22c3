package standstill.account;

import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

/**
 * Maintainers and their hashed passwords, one line each: {@code name hash}.
 *
 * <p>The file is read anew at every question, so that an account taken out of it is out at once.
 * Passwords are hashed with Argon2id and the second recommended parameters of RFC 9106, section 4:
 * 64 MiB, 3 passes, 4 lanes, 128 bits of salt, 256 bits of tag.
 */
public final class Accounts {
  /** Shortest accepted password, in characters. */
  public static final int SHORTEST_PASSWORD = 12;

  /** Longest accepted password, in characters. */
  public static final int LONGEST_PASSWORD = 200;

  private static final int LONGEST_NAME = 32;
  private static final long LARGEST_FILE = 256 * 1024;
  private static final int MOST_AT_ONCE = 2;
  private static final int LONGEST_WAIT_SECONDS = 10;
  private static final int SALT_BYTES = 16;
  private static final Argon2Function ARGON2ID =
      Argon2Function.getInstance(64 * 1024, 3, 4, 32, Argon2.ID);

  /**
   * Hash of a random text that was thrown away: no password gives it, and to look for one costs an
   * unknown name as much time as a known one.
   */
  private static final String NOBODYS =
      "$argon2id$v=19$m=65536,t=3,p=4$ila+86HBT8cxXB4Ub+D7MA$00cwyUgYEdd1mMgW3FWey1x9VlvK6lphlsRmxnViWnQ";

  private final Path file;

  /** Each check takes 64 MiB; this keeps a crowd from taking them all at once. */
  private final Semaphore room = new Semaphore(MOST_AT_ONCE, true);

  private Accounts(Path file) {
    this.file = file;
  }

  /**
   * The accounts of a file.
   *
   * @throws IOException when it can't be read, or a line of it is none of the two forms
   */
  public static Accounts open(Path file) throws IOException {
    read(file);
    return new Accounts(file);
  }

  /** Whether a name can be one of an account: lower-case letters, digits and hyphens. */
  public static boolean isName(String name) {
    return !name.isEmpty()
        && name.length() <= LONGEST_NAME
        && name.charAt(0) >= 'a'
        && name.charAt(0) <= 'z'
        && !name.endsWith("-")
        && name.chars().allMatch(c -> c == '-' || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'));
  }

  /** Whether there is an account of that name now. */
  public boolean has(String name) throws IOException {
    return read(file).containsKey(name);
  }

  /** Too many ask at once whether a password is right; later it may be different. */
  public static final class CrowdedException extends IOException {
    CrowdedException() {
      super("too many sign in at once");
    }
  }

  /**
   * Whether name and password belong together. Takes as long for a name that is not there.
   *
   * @return the mark of the account's password when they do, for its session
   */
  public Optional<String> enter(String name, String password) throws IOException {
    String hash = read(file).get(name);
    String asked =
        password.length() <= LONGEST_PASSWORD ? password : password.substring(0, LONGEST_PASSWORD);
    if (!enterRoom()) {
      throw new CrowdedException();
    }
    try {
      String against = hash == null ? NOBODYS : hash;
      boolean same =
          Password.check(asked, against).with(Argon2Function.getInstanceFromHash(against));
      return same && hash != null && asked.equals(password)
          ? Optional.of(Marks.of(hash))
          : Optional.empty();
    } finally {
      room.release();
    }
  }

  private boolean enterRoom() {
    try {
      return room.tryAcquire(LONGEST_WAIT_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  /** The mark of an account's password as it is now; another password has another mark. */
  public Optional<String> mark(String name) throws IOException {
    return Optional.ofNullable(read(file).get(name)).map(Marks::of);
  }

  /**
   * A proof for a device on which somebody has signed in, or for somebody who has to be let past
   * the limit on strangers' attempts. It says that and no more: the password is still asked for.
   * Another password ends it.
   */
  public Optional<String> proof(String name) throws IOException {
    return Optional.ofNullable(read(file).get(name)).map(hash -> Marks.proof(name, hash));
  }

  /** The device that a proof is of; empty when it proves nothing for this name. */
  public Optional<String> device(String name, String proof) throws IOException {
    return Optional.ofNullable(read(file).get(name))
        .flatMap(hash -> Marks.device(name, hash, proof));
  }

  /**
   * Adds an account to a file, or gives it another password. The file is made when it is missing,
   * for its owner's eyes alone, and is replaced as a whole. Others that change it wait.
   */
  public static void put(Path file, String name, String password) throws IOException {
    if (!isName(name)) {
      throw new IllegalArgumentException(name);
    }
    String hash = hash(password);
    AccountFile.change(
        file,
        () -> {
          Map<String, String> all;
          try {
            all = read(file);
          } catch (NoSuchFileException e) {
            all = new LinkedHashMap<>();
          }
          all.put(name, hash);
          return Optional.of(text(all));
        });
  }

  /** Takes an account out of a file; false when it was not there. Others that change it wait. */
  public static boolean remove(Path file, String name) throws IOException {
    if (!Files.exists(file)) {
      throw new NoSuchFileException(file.toString());
    }
    return AccountFile.change(
        file,
        () -> {
          Map<String, String> all = read(file);
          return all.remove(name) == null ? Optional.empty() : Optional.of(text(all));
        });
  }

  /** Names in a file, in its order. */
  public static Set<String> names(Path file) throws IOException {
    return read(file).keySet();
  }

  /** A warning when others than the owner can read the file; empty when all is well. */
  public static Optional<String> caution(Path file) throws IOException {
    try {
      Set<PosixFilePermission> granted = Files.getPosixFilePermissions(file);
      boolean open =
          granted.contains(PosixFilePermission.GROUP_READ)
              || granted.contains(PosixFilePermission.OTHERS_READ);
      return open
          ? Optional.of("others on this machine can read " + file + "; run: chmod 600 " + file)
          : Optional.empty();
    } catch (UnsupportedOperationException e) {
      return Optional.empty();
    }
  }

  private static String hash(String password) {
    return Password.hash(password).addRandomSalt(SALT_BYTES).with(ARGON2ID).getResult();
  }

  private static Map<String, String> read(Path file) throws IOException {
    if (!Files.exists(file)) {
      throw new NoSuchFileException(file.toString());
    }
    if (Files.size(file) > LARGEST_FILE) {
      throw new IOException(file + ": larger than " + LARGEST_FILE + " bytes");
    }
    Map<String, String> accounts = new LinkedHashMap<>();
    int number = 0;
    for (String line : Files.readAllLines(file, StandardCharsets.UTF_8)) {
      number++;
      String text = line.strip();
      if (text.isEmpty() || text.startsWith("#")) {
        continue;
      }
      int blank = text.indexOf(' ');
      String name = blank < 0 ? text : text.substring(0, blank);
      String hash = blank < 0 ? "" : text.substring(blank + 1).strip();
      if (!isName(name) || !hash.startsWith("$argon2id$") || hash.indexOf(' ') >= 0) {
        // The line itself is not shown: it may hold a password that somebody typed by mistake.
        throw new IOException(
            file + ":" + number + ": line is not 'name hash'; use 'account add' to write it");
      }
      if (accounts.put(name, hash) != null) {
        throw new IOException(file + ":" + number + ": second account named '" + name + "'");
      }
    }
    return accounts;
  }

  private static String text(Map<String, String> accounts) {
    StringBuilder text = new StringBuilder("# maintainers: name and hashed password\n");
    accounts.forEach((name, hash) -> text.append(name).append(' ').append(hash).append('\n'));
    return text.toString();
  }
}
