package standstill.report;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import standstill.base.Statement;
import standstill.base.ThingSort;
import standstill.base.ThingState;
import standstill.base.WishKind;
import standstill.machine.Found;
import standstill.machine.Machine;
import standstill.machine.Mention;
import standstill.machine.Said;
import standstill.machine.Thing;
import standstill.machine.Wish;

/**
 * The machine as a person who reads boot logs would note it down.
 *
 * @param summary the controllers without a driver, the disks and the root that is wanted, in a line
 * @param parts what was found, sort by sort
 */
public record Picture(String summary, List<Part> parts) {
  /** A good sign, and what a statement on the exact class of the controller says as well. */
  private static final Set<Statement> SAID_ELSEWHERE =
      EnumSet.of(Statement.RAMDISK_LOADED, Statement.STORAGE_CONTROLLER_WITHOUT_DRIVER);

  private static final int MOST_NOTES = 24;
  private static final int MOST_LINES = 6;

  public Picture {
    parts = List.copyOf(parts);
  }

  /**
   * Things of one sort.
   *
   * @param title of the sort
   * @param notes a sentence for each
   */
  public record Part(String title, List<Note> notes) {
    public Part {
      notes = List.copyOf(notes);
    }
  }

  /**
   * What is noted of one thing.
   *
   * @param text a sentence without a full stop
   * @param lines numbers of the lines that say so
   * @param trouble whether something is missing or failed
   */
  public record Note(String text, List<Integer> lines, boolean trouble) {
    public Note {
      lines = List.copyOf(lines);
    }
  }

  /** Notes down a machine. */
  public static Picture of(Machine machine) {
    List<Part> parts = new ArrayList<>();
    add(parts, "What the lines add up to", facts(machine));
    add(parts, "Asked for", wishes(machine));
    add(parts, "Controllers", controllers(machine));
    add(parts, "Disks", disks(machine));
    add(
        parts,
        "Arrays, volumes and file systems",
        states(
            machine,
            ThingSort.ARRAY,
            ThingSort.VOLUME,
            ThingSort.ENCRYPTED_VOLUME,
            ThingSort.FILE_SYSTEM));
    add(parts, "Graphics and network", withDrivers(machine));
    add(parts, "Other devices of which no driver speaks", silent(machine));
    add(
        parts,
        "Memory, processor, terminals, initial ramdisk",
        states(
            machine, ThingSort.MEMORY, ThingSort.PROCESSOR, ThingSort.TERMINAL, ThingSort.RAMDISK));
    add(parts, "Units", units(machine));
    return new Picture(summary(machine), parts);
  }

  private static void add(List<Part> parts, String title, List<Note> notes) {
    if (!notes.isEmpty()) {
      int left = notes.size() - MOST_NOTES;
      List<Note> shown = new ArrayList<>(notes.subList(0, Math.min(notes.size(), MOST_NOTES)));
      if (left > 0) {
        shown.add(new Note("and " + left + " more", List.of(), false));
      }
      parts.add(new Part(title, shown));
    }
  }

  private static String summary(Machine machine) {
    List<String> words = new ArrayList<>();
    boolean told = machine.listsDevices() && machine.devicesAreOver();
    for (Statement statement :
        List.of(
            Statement.STORAGE_CONTROLLER_WITHOUT_DRIVER, Statement.USB_STORAGE_WITHOUT_DRIVER)) {
      for (Found found : machine.says(statement).found()) {
        String model = found.values().getOrDefault("model", "");
        words.add(
            (model.isEmpty() ? found.values().get("class") : model)
                + " "
                + found.values().get("device")
                + ": no driver");
      }
    }
    String disks =
        machine.disks().stream().map(Thing::name).limit(8).collect(Collectors.joining(", "));
    if (!disks.isEmpty() || machine.hasDisk()) {
      words.add("disks: " + (disks.isEmpty() ? "seen" : disks));
    } else {
      words.add("disks: " + (told ? "none" : "the paste doesn't tell"));
    }
    machine
        .wanted()
        .ifPresent(
            w ->
                words.add(
                    (w.kind() == WishKind.ROOT ? "root wanted: " : "waited for: ") + w.shown()));
    return String.join("; ", words);
  }

  private static List<Note> facts(Machine machine) {
    List<Note> notes = new ArrayList<>();
    for (Statement statement : Statement.values()) {
      Said said = machine.says(statement);
      if (said.holds() && !SAID_ELSEWHERE.contains(statement)) {
        for (Found found : said.found().subList(0, Math.min(4, said.found().size()))) {
          notes.add(
              new Note(statement.title() + values(found.values()), lines(found.lines()), true));
        }
      }
    }
    return notes;
  }

  private static String values(Map<String, String> values) {
    String words =
        values.values().stream()
            .filter(v -> !v.isEmpty())
            .distinct()
            .collect(Collectors.joining(", "));
    return words.isEmpty() ? "" : ": " + words;
  }

  private static List<Note> wishes(Machine machine) {
    List<Note> notes = new ArrayList<>();
    for (Wish wish : machine.wishes()) {
      if (wish.kind() != WishKind.COMMAND_LINE && wish.kind() != WishKind.RESTART) {
        notes.add(
            new Note(
                wish.kind().word() + ": " + wish.shown() + " (" + word(wish.state()) + ")",
                lines(wish.mentions()),
                wish.isUnmet()));
      }
    }
    return notes;
  }

  private static String word(ThingState state) {
    return switch (state) {
      case SEEN -> "asked for";
      case FAILED -> "given up";
      default -> state.title();
    };
  }

  private static List<Note> controllers(Machine machine) {
    List<Note> notes = new ArrayList<>();
    for (Thing device : machine.things(ThingSort.CONTROLLER)) {
      notes.add(withDriver(machine, device));
    }
    for (Thing device : machine.things(ThingSort.DEVICE)) {
      if (device.value("kind").equals("storage") || device.value("mode").equals("RAID")) {
        notes.add(withDriver(machine, device));
      }
    }
    Map<ThingState, List<Thing>> ports = new LinkedHashMap<>();
    machine
        .things(ThingSort.PORT)
        .forEach(p -> ports.computeIfAbsent(p.state(), k -> new ArrayList<>()).add(p));
    ports.forEach(
        (state, all) ->
            notes.add(
                new Note(
                    "ports, "
                        + state.title()
                        + ": "
                        + all.stream().map(Thing::name).limit(16).collect(Collectors.joining(", ")),
                    lines(all.stream().map(Thing::last).toList()),
                    state == ThingState.FAILED)));
    return notes;
  }

  /** A device in words: its class, its place, the numbers of its maker and model, its driver. */
  private static Note withDriver(Machine machine, Thing device) {
    String id = device.value("id").isEmpty() ? "" : " (" + device.value("id") + ")";
    String model = device.value("model").isEmpty() ? "" : " \"" + device.value("model") + "\"";
    String driver = device.value("driver");
    boolean left = device.isWithoutDriver();
    boolean missing = left && machine.lacksDriver(device);
    String says =
        !driver.isEmpty() && !left
            ? "driver " + driver
            : missing ? "no driver" : left ? "no driver has spoken yet" : device.state().title();
    boolean failed = device.state() == ThingState.FAILED || device.state() == ThingState.GONE;
    return new Note(
        device.what()
            + " "
            + device.name()
            + model
            + id
            + ": "
            + says
            + (failed && !says.equals(device.state().title()) ? ", " + device.state().title() : ""),
        lines(device.mentions()),
        missing || failed);
  }

  private static List<Note> disks(Machine machine) {
    List<Note> notes = new ArrayList<>();
    for (Thing disk : machine.things(ThingSort.DISK)) {
      String parts =
          machine.things(ThingSort.PARTITION).stream()
              .filter(p -> p.on().equals(disk.name()))
              .map(Thing::name)
              .collect(Collectors.joining(" "));
      String size = disk.value("size").isEmpty() ? "" : ", " + disk.value("size").strip();
      String on = disk.on().isEmpty() ? "" : " on " + disk.on();
      String by = disk.value("by").isEmpty() ? "" : ", seen by the " + disk.value("by");
      boolean trouble = disk.state() == ThingState.GONE || disk.state() == ThingState.FAILED;
      notes.add(
          new Note(
              disk.name()
                  + size
                  + on
                  + by
                  + (parts.isEmpty() ? "" : ": " + parts)
                  + (trouble ? " (" + disk.state().title() + ")" : ""),
              lines(disk.mentions()),
              trouble));
    }
    if (!machine.hasDisk() && machine.listsDevices() && machine.devicesAreOver()) {
      notes.add(new Note("none", List.of(), true));
    }
    return notes;
  }

  private static List<Note> states(Machine machine, ThingSort... sorts) {
    List<Note> notes = new ArrayList<>();
    for (ThingSort sort : sorts) {
      for (Thing thing : machine.things(sort)) {
        boolean trouble =
            thing.state() == ThingState.FAILED
                || thing.state() == ThingState.INCOMPLETE
                || (sort == ThingSort.ENCRYPTED_VOLUME && thing.state() == ThingState.STARTING);
        String more =
            Optional.of(thing.value("model"))
                .filter(m -> !m.isEmpty())
                .or(() -> Optional.of(thing.value("size")).filter(m -> !m.isEmpty()))
                .map(m -> ", " + m)
                .orElse("");
        String name = thing.name().equals(sort.title()) ? "" : " " + thing.name();
        notes.add(
            new Note(
                sort.title() + name + more + ": " + thing.state().title(),
                lines(thing.mentions()),
                trouble));
      }
    }
    return notes;
  }

  private static List<Note> withDrivers(Machine machine) {
    List<Note> notes = new ArrayList<>();
    for (ThingSort sort : List.of(ThingSort.GRAPHICS_DEVICE, ThingSort.NETWORK_DEVICE)) {
      machine.things(sort).forEach(device -> notes.add(withDriver(machine, device)));
    }
    return notes;
  }

  /** Devices of other sorts: many of their drivers print nothing, so that this is no trouble. */
  private static List<Note> silent(Machine machine) {
    return machine.things(ThingSort.DEVICE).stream()
        .filter(d -> d.isWithoutDriver() && d.value("bus").equals("pci") && !d.title().isEmpty())
        .filter(d -> !d.value("class").startsWith("06") && !d.value("class").startsWith("05"))
        .map(
            d ->
                new Note(
                    d.title() + " " + d.name() + " (" + d.value("id") + ")",
                    lines(d.mentions()),
                    false))
        .toList();
  }

  private static List<Note> units(Machine machine) {
    List<Note> notes = new ArrayList<>();
    for (Thing unit : machine.waiting().holders(machine.trace())) {
      String limit = unit.value("limit").isEmpty() ? "" : " of " + unit.value("limit");
      String waited = unit.value("waited").isEmpty() ? "" : ", " + unit.value("waited") + limit;
      notes.add(new Note("holds the boot: " + unit.label() + waited, lines(unit.mentions()), true));
    }
    int ready = 0;
    for (Thing unit : machine.things(ThingSort.UNIT)) {
      Optional<String> behind = Optional.ofNullable(machine.waiting().behind().get(unit.name()));
      if (unit.state() == ThingState.READY) {
        ready++;
      } else if (unit.state() == ThingState.FAILED) {
        String of =
            behind.map(b -> ": waits for " + (b.isEmpty() ? "another unit" : b)).orElse(": failed");
        notes.add(new Note(unit.label() + of, lines(unit.mentions()), behind.isEmpty()));
      }
    }
    if (ready > 0) {
      notes.add(new Note(ready + " ready", List.of(), false));
    }
    return notes;
  }

  private static List<Integer> lines(List<Mention> mentions) {
    TreeSet<Integer> lines = new TreeSet<>();
    mentions.forEach(m -> lines.add(m.line()));
    List<Integer> all = new ArrayList<>(lines);
    if (all.size() <= MOST_LINES) {
      return all;
    }
    List<Integer> some = new ArrayList<>(all.subList(0, MOST_LINES - 1));
    some.add(all.get(all.size() - 1));
    return some;
  }
}
