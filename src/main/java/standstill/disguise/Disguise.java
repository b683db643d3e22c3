package standstill.disguise;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import standstill.log.BootLog;

/**
 * Replaces what names a person, a machine, a network or a disk, and what is secret: see {@link
 * Sort}.
 *
 * <p>It reads the whole text first, because a name that is said once ("Hostname set to ...") stands
 * unmarked elsewhere. It replaces too much rather than too little. What it can't know is a name
 * that no line marks as one; a person should read the result before sharing it, first of all what
 * {@link #lookAt} lists. Not safe for use by several threads at a time.
 */
public final class Disguise {
  private final Register register = new Register();
  private final List<Finder> finders;

  private Disguise() {
    StandIns standIns = register.standIns();
    HostNames hosts = new HostNames(register);
    UserNames users = new UserNames(register);
    VolumeNames volumes = new VolumeNames(register);
    PathNames paths = new PathNames(users, volumes);
    // The order is the order of trust: who comes first has the place.
    finders =
        List.of(
            new SecretFinder(register),
            new HexFinder(standIns),
            new UrlFinder(register, hosts, users),
            new AddressFinder(standIns),
            new CommandLineFinder(register, volumes, hosts),
            new MarkFinder(new Kinds(register, hosts, users, volumes).namings()),
            new UnitFinder(register, paths),
            paths,
            register.names());
  }

  /** A disguise for a log and for what is said about it. */
  public static Disguise of(BootLog log) {
    return of(log.rawLines());
  }

  /** A disguise for lines. */
  public static Disguise of(Collection<String> lines) {
    Disguise disguise = new Disguise();
    lines.forEach(disguise::read);
    return disguise;
  }

  private Claims read(String line) {
    Claims claims = new Claims(LineView.of(line));
    finders.forEach(finder -> finder.find(claims));
    return claims;
  }

  /** All lines, disguised. */
  public List<String> apply(List<String> lines) {
    return lines.stream().map(this::apply).toList();
  }

  /** A line or a short text, disguised. */
  public String apply(String text) {
    return read(text).replaced();
  }

  /** How many different values of each sort were replaced, sorts without any left out. */
  public Map<Sort, Integer> replaced() {
    return new LinkedHashMap<>(register.standIns().counts());
  }

  /** What was replaced, in words: "2 host names, 1 secret"; empty when nothing was. */
  public String account() {
    return String.join(
        ", ", replaced().entrySet().stream().map(e -> e.getKey().counted(e.getValue())).toList());
  }

  /** What a person should look at before sharing, in the order of the text; bounded. */
  public List<LookAt> lookAt() {
    return register.lookAt();
  }

  /** Of what a person should look at, that which a text still holds. */
  public List<LookAt> lookAt(String shown) {
    return lookAt().stream().filter(l -> shown.contains(l.text())).toList();
  }
}
