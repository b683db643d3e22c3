package standstill.mine;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import standstill.base.Stage;
import standstill.text.Pattern;
import standstill.text.Prefilter;

/**
 * Groups lines that no sign explains into templates, over many logs, and ranks them as candidates
 * for new signs.
 *
 * <p>Messages are masked first (numbers, addresses, device names, paths and the like), then grouped
 * by a {@link TemplateTree}. Messages with different error numbers never share a group, because
 * these tell causes apart.
 *
 * <p>A candidate is ranked by the logs in which it stands: each counts once, {@value #GRAVE} times
 * when a line of it speaks of failure there, and {@value #LATE} times as much when one stands near
 * the end of the boot. The body of a crash report (frames, registers, code) weighs nothing: it
 * differs from kernel to kernel, and its heading tells more. Those that healthy boots print too
 * come after all others. The two numbers are rules of thumb (common practice, no source); what they
 * achieve is measured on the labelled boots.
 */
public final class Miner {
  private static final int GRAVE = 3;
  private static final int LATE = 2;

  /** Near the end are that many last lines of a stalled boot. */
  private static final int NEAR_THE_END = 40;

  /**
   * Levels of the tree; chosen with the next number on the samples of {@code
   * PublishedGroupingTest}.
   */
  static final int DEPTH = 5;

  static final double SIMILARITY = 0.7;
  static final int MOST_CHILDREN = 100;

  /** Longest beginning of a message that is looked at, in characters. */
  private static final int LONGEST_MESSAGE = 1_000;

  /** Most candidates, the heaviest ones; for each a pattern is made and looked for. */
  private static final int MOST_CANDIDATES = 2_000;

  private static final int MOST_TEXTS = 40;
  private static final int MOST_EXAMPLES = 3;

  /**
   * Lines of a kernel's crash report below its heading, as dump_stack and show_regs of Linux print
   * them.
   */
  private static final Pattern CRASH_BODY =
      Pattern.known(
          "^\\s*(?:(?:\\? )?[\\w.$]+\\+0x[0-9a-f]+/0x[0-9a-f]+|</?(?:TASK|IRQ|NMI|SOFTIRQ|#\\w+)>|Call Trace:"
              + "|(?:RIP|EIP|RSP|ESP|EFLAGS|Code|CR2|DR0|FS|CS|PKRU|[RE][A-D]X|R1[0-5]|R0[89]|[RE]?[SD]I|[RE]BP): "
              + "|Modules linked in:|CPU: \\d+ |Hardware name: |Kernel Offset: |---\\[ )");

  private final TemplateTree tree = new TemplateTree(DEPTH, SIMILARITY, MOST_CHILDREN, true);
  private final Map<TemplateTree.Group, Lines> groups = new LinkedHashMap<>();
  private int leftOut;

  /** The lines of a group, counted; a few are kept. */
  private static final class Lines {
    final Map<String, Stray> texts = new LinkedHashMap<>();
    final Map<String, Integer> factors = new HashMap<>();
    final Set<String> grave = new HashSet<>();
    final Set<String> late = new HashSet<>();
    final Map<Stage, Integer> stages = new EnumMap<>(Stage.class);
    int times;
    int after = Stray.CAME_THROUGH;

    void add(Stray stray, String message) {
      times++;
      after = Math.min(after, stray.after());
      boolean nearEnd = stray.after() < NEAR_THE_END;
      stages.merge(stray.stage(), 1, Integer::sum);
      boolean body = CRASH_BODY.foundIn(message);
      int factor = body ? 0 : (stray.grave() ? GRAVE : 1) * (nearEnd ? LATE : 1);
      factors.merge(stray.log(), factor, Math::max);
      if (stray.grave()) {
        grave.add(stray.log());
      }
      if (nearEnd) {
        late.add(stray.log());
      }
      if (texts.size() < MOST_TEXTS) {
        texts.putIfAbsent(message, stray);
      }
    }

    Stage stage() {
      return stages.entrySet().stream()
          .max(Map.Entry.comparingByValue())
          .map(Map.Entry::getKey)
          .orElse(Stage.KERNEL);
    }

    int weight() {
      return factors.values().stream().mapToInt(Integer::intValue).sum();
    }
  }

  private static final Comparator<Lines> HEAVIEST_FIRST =
      Comparator.comparingInt(Lines::weight).thenComparingInt(lines -> lines.times).reversed();

  /** Takes a line. */
  public void add(Stray stray) {
    String message = cut(stray.message());
    List<Token> tokens = Token.of(message);
    if (tokens.isEmpty()) {
      return;
    }
    tree.add(tokens.stream().map(Token::masked).toList(), Token.causes(tokens))
        .ifPresentOrElse(
            group -> groups.computeIfAbsent(group, key -> new Lines()).add(stray, message),
            () -> leftOut++);
  }

  private static String cut(String message) {
    return message.length() > LONGEST_MESSAGE ? message.substring(0, LONGEST_MESSAGE) : message;
  }

  /** How many lines were left out because there were too many templates. */
  public int leftOut() {
    return leftOut;
  }

  /**
   * The candidates, the best one first. Templates without a word that a sign could look for are no
   * candidates, nor are those beyond the heaviest two thousand.
   *
   * @param least in how many logs a candidate stands at least
   * @param healthy the messages of boots that came through, a list for each boot
   */
  public List<Candidate> candidates(int least, Collection<List<String>> healthy) {
    List<Candidate> found =
        groups.entrySet().stream()
            .filter(group -> group.getValue().factors.size() >= least)
            .sorted(Map.Entry.comparingByValue(HEAVIEST_FIRST))
            .limit(MOST_CANDIDATES)
            .flatMap(group -> candidate(group.getKey(), group.getValue()).stream())
            .toList();
    return withHealthy(found, healthy).stream()
        .sorted(
            Comparator.comparing(Candidate::isHealthy)
                .thenComparing(Comparator.comparingInt(Candidate::weight).reversed())
                .thenComparing(Comparator.comparingInt(Candidate::times).reversed())
                .thenComparing(Candidate::after)
                .thenComparing(Candidate::template))
        .toList();
  }

  private static Optional<Candidate> candidate(TemplateTree.Group group, Lines lines) {
    Generalised proposal = Generalised.of(List.copyOf(lines.texts.keySet()));
    if (!proposal.tells()) {
      return Optional.empty();
    }
    return Optional.of(
        new Candidate(
            String.join(" ", group.template()),
            lines.times,
            lines.factors.size(),
            lines.stage(),
            lines.grave.size(),
            lines.late.size(),
            lines.after,
            0,
            lines.weight(),
            proposal,
            lines.texts.values().stream().limit(MOST_EXAMPLES).toList(),
            lines.texts.size()));
  }

  private static List<Candidate> withHealthy(
      List<Candidate> candidates, Collection<List<String>> boots) {
    Prefilter filter = new Prefilter(candidates.stream().map(c -> c.proposal().pattern()).toList());
    int[] seen = new int[candidates.size()];
    for (List<String> boot : boots) {
      BitSet here = new BitSet();
      for (String whole : boot) {
        String message = cut(whole);
        for (int candidate : filter.candidates(message)) {
          if (!here.get(candidate)
              && candidates.get(candidate).proposal().pattern().foundIn(message)) {
            here.set(candidate);
          }
        }
      }
      here.stream().forEach(candidate -> seen[candidate]++);
    }
    List<Candidate> marked = new ArrayList<>(candidates.size());
    for (int i = 0; i < seen.length; i++) {
      marked.add(candidates.get(i).withHealthy(seen[i]));
    }
    return marked;
  }
}
