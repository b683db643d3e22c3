package standstill.web;

import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import standstill.intake.Budget;
import standstill.log.BootLog;

/**
 * Work on logs, of which only so much is done at once: as many as there are processors, and as much
 * text as there is memory for. The others wait their turn for a while. Thread-safe.
 */
final class Turns {
  /** Reading a text takes that many times its size for as long as it lasts; measured, generous. */
  private static final int MEMORY_PER_BYTE = 40;

  private static final int PIECE = 64 << 10;
  private static final int MOST_WAITING = 80;

  private final Semaphore workers;
  private final Semaphore pieces;
  private final int allPieces;
  private final long longestWaitMillis;
  private final Budget places;

  /**
   * Nobody at work.
   *
   * @param most at work at once
   * @param bytes of text at work at once
   * @param mostWaiting for their turn; one client has three quarters of the places
   */
  Turns(int most, long bytes, int mostWaiting, long longestWaitMillis) {
    this.workers = new Semaphore(most, true);
    this.allPieces = (int) Math.max(1, Math.min(Integer.MAX_VALUE, bytes / PIECE));
    this.pieces = new Semaphore(allPieces, true);
    this.places = new Budget(mostWaiting, mostWaiting * 3 / 4);
    this.longestWaitMillis = longestWaitMillis;
  }

  static Turns usual() {
    Runtime machine = Runtime.getRuntime();
    return new Turns(
        Math.max(2, machine.availableProcessors()),
        machine.maxMemory() / MEMORY_PER_BYTE,
        MOST_WAITING,
        20_000);
  }

  /**
   * Does some work when its turn has come.
   *
   * @param client whose work it is
   * @param bytes of text that is worked on
   * @throws Overloaded when too many wait, when the turn doesn't come, or memory does not suffice
   */
  <T> T take(String client, long bytes, Supplier<T> work) {
    int share = (int) Math.min(allPieces, 1 + bytes / PIECE);
    if (!places.take(client, 1)) {
      throw new Overloaded();
    }
    boolean worker = false;
    boolean room = false;
    try {
      long until = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(longestWaitMillis);
      worker = workers.tryAcquire(longestWaitMillis, TimeUnit.MILLISECONDS);
      room = worker && pieces.tryAcquire(share, until - System.nanoTime(), TimeUnit.NANOSECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      places.giveBack(client, 1);
      if (worker && !room) {
        workers.release();
      }
    }
    if (!room) {
      throw new Overloaded();
    }
    try {
      return work.get();
    } catch (OutOfMemoryError | StackOverflowError e) {
      // One text that is too much must not end the others; what it held is free again.
      throw new TooLarge();
    } finally {
      pieces.release(share);
      workers.release();
    }
  }

  /** The size of a log that was read already, near enough. */
  static long size(BootLog log) {
    long size = 0;
    for (String line : log.rawLines()) {
      size += line.length() + 1L;
    }
    return size;
  }
}
