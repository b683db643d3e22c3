package standstill.fuzz;

import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** Kept inputs, and others made of them: pieces lost, doubled, exchanged, bytes changed. */
final class Bent {
  private static final long SEED = 20_261_130L;
  private static final int LONGEST = 20_000;

  private final SortedMap<String, byte[]> named = new TreeMap<>();
  private final List<byte[]> kept;
  private final Random random = new Random(SEED);

  private Bent(Class<?> test, String target) {
    String folder = test.getSimpleName() + "Inputs/" + target;
    URL place = Objects.requireNonNull(test.getResource(folder), folder);
    try (Stream<Path> files = Files.list(Path.of(place.toURI()))) {
      for (Path file : files.toList()) {
        named.put(file.getFileName().toString(), Files.readAllBytes(file));
      }
    } catch (IOException | URISyntaxException e) {
      throw new IllegalStateException(e);
    }
    kept = new ArrayList<>(named.values());
    assertFalse(kept.isEmpty(), folder);
  }

  /**
   * Hands the kept inputs to a target, then bent ones; a failure names the input or the run, and
   * the same run makes the same input.
   */
  static void inputs(Class<?> test, String target, int runs, Consumer<byte[]> taker) {
    Bent bent = new Bent(test, target);
    bent.named.forEach((name, input) -> take(taker, input, name));
    for (int run = 0; run < runs; run++) {
      take(taker, bent.next(), "seed " + SEED + " run " + run);
    }
  }

  private static void take(Consumer<byte[]> taker, byte[] input, String which) {
    try {
      taker.accept(input);
    } catch (RuntimeException | AssertionError | StackOverflowError e) {
      throw new AssertionError(which + ": " + e, e);
    }
  }

  private byte[] next() {
    byte[] input = any().clone();
    for (int changes = 1 + random.nextInt(6); changes > 0; changes--) {
      input = changed(input);
    }
    return input.length > LONGEST ? java.util.Arrays.copyOf(input, LONGEST) : input;
  }

  private byte[] any() {
    return kept.get(random.nextInt(kept.size()));
  }

  private byte[] changed(byte[] input) {
    int from = random.nextInt(input.length + 1);
    int to = Math.min(input.length, from + random.nextInt(40));
    switch (random.nextInt(5)) {
      case 0 -> {
        return joined(input, 0, from, input, to, input.length);
      }
      case 1 -> {
        return joined(input, 0, to, input, from, input.length);
      }
      case 2 -> {
        byte[] other = any();
        int at = random.nextInt(other.length + 1);
        return joined(input, 0, from, other, at, other.length);
      }
      case 3 -> {
        byte[] marks =
            "\n\r\u001b[]{}:&*-'\"\\ \t0,9%<>".getBytes(java.nio.charset.StandardCharsets.UTF_8);
        byte[] copy = input.clone();
        if (from < copy.length) {
          copy[from] = marks[random.nextInt(marks.length)];
        }
        return copy;
      }
      default -> {
        byte[] copy = input.clone();
        if (from < copy.length) {
          copy[from] = (byte) random.nextInt(256);
        }
        return copy;
      }
    }
  }

  private static byte[] joined(byte[] a, int from, int to, byte[] b, int fromB, int toB) {
    byte[] all = new byte[to - from + toB - fromB];
    System.arraycopy(a, from, all, 0, to - from);
    System.arraycopy(b, fromB, all, to - from, toB - fromB);
    return all;
  }
}
