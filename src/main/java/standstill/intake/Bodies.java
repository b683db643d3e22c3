package standstill.intake;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.io.content.ByteBufferContentSource;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.Scheduler;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Gathers the body of a request before anybody works on it. No thread waits for a sender: a body
 * takes memory only, within a budget, and has to come in at a pace. When one client has too many
 * unfinished bodies, the slowest is given up, so that those who send their log in one go are never
 * in each other's way.
 */
final class Bodies extends Handler.Wrapper {
  private static final Logger LOG = LoggerFactory.getLogger(Bodies.class);

  private static final Refusal TOO_LARGE =
      new Refusal(
          413,
          "The log is too large",
          "Keep the last boot of it, for example with: tail -n 20000 boot.log");
  private static final Refusal BUSY =
      new Refusal(
          503,
          "Too much is being sent at present",
          "The server holds as many logs as it has memory for. Wait ten seconds and send yours"
              + " again.");

  private final Intake intake;
  private final Map<String, Set<Gathering>> waiting = new HashMap<>();

  Bodies(Intake intake) {
    this.intake = intake;
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) {
    if (request.getLength() > intake.limits().largestBody()) {
      intake.refuse(request, response, callback, TOO_LARGE);
      return true;
    }
    new Gathering(request, response, callback).run();
    return true;
  }

  private boolean pass(Request request, Response response, Callback callback) throws Exception {
    return super.handle(request, response, callback);
  }

  /** How many bodies are waited for at this moment. */
  int waiting() {
    synchronized (waiting) {
      return waiting.values().stream().mapToInt(Set::size).sum();
    }
  }

  private void begin(Gathering body) {
    Gathering slowest = null;
    long now = System.nanoTime();
    synchronized (waiting) {
      Set<Gathering> own = waiting.computeIfAbsent(body.client, c -> new LinkedHashSet<>());
      own.add(body);
      if (own.size() > intake.limits().unfinished()) {
        for (Gathering each : own) {
          if (each != body && (slowest == null || each.pace(now) < slowest.pace(now))) {
            slowest = each;
          }
        }
      }
    }
    if (slowest != null) {
      slowest.giveUp(
          new Refusal(
              408,
              "Too many logs at once",
              "More logs are on their way from your address than are waited for, and this was the"
                  + " slowest. Send it again when the others are through."));
    }
  }

  private void end(Gathering body) {
    synchronized (waiting) {
      Set<Gathering> own = waiting.get(body.client);
      if (own != null && own.remove(body) && own.isEmpty()) {
        waiting.remove(body.client);
      }
    }
  }

  /** One body on its way. */
  private final class Gathering implements Runnable {
    private final Request request;
    private final Response response;
    private final Callback callback;
    private final String client;
    private final List<ByteBuffer> parts = new ArrayList<>();
    private final long since = System.nanoTime();
    private long size;
    private long sizeAtWindow;
    private boolean done;
    private Scheduler.@Nullable Task watch;

    Gathering(Request request, Response response, Callback callback) {
      this.request = request;
      this.response = response;
      this.callback = callback;
      this.client = Intake.client(request);
    }

    synchronized long size() {
      return size;
    }

    /**
     * Bytes in a nanosecond so far. All have some bytes as a start, so that one whose first are
     * still on their way isn't the slowest.
     */
    synchronized double pace(long now) {
      return (double) (size + intake.limits().leastInWindow()) / Math.max(1, now - since);
    }

    /** Takes what has come; called again when there is more. */
    @Override
    public void run() {
      while (true) {
        Content.Chunk chunk;
        synchronized (this) {
          if (done) {
            return;
          }
          chunk = request.read();
          if (chunk == null) {
            request.demand(this);
          }
        }
        if (chunk == null) {
          watch();
          return;
        }
        if (Content.Chunk.isFailure(chunk)) {
          broken(chunk.getFailure());
          return;
        }
        boolean last = chunk.isLast();
        Refusal refusal = take(chunk);
        chunk.release();
        if (refusal != null) {
          giveUp(refusal);
          return;
        }
        if (last) {
          whole();
          return;
        }
      }
    }

    private @Nullable Refusal take(Content.Chunk chunk) {
      int length = chunk.remaining();
      if (length == 0) {
        return null;
      }
      if (size() + length > intake.limits().largestBody()) {
        return TOO_LARGE;
      }
      if (!intake.budget().take(client, length)) {
        return BUSY;
      }
      byte[] bytes = new byte[length];
      chunk.getByteBuffer().get(bytes);
      synchronized (this) {
        size += length;
        parts.add(ByteBuffer.wrap(bytes));
      }
      return null;
    }

    /** Watches a sender that has to be waited for. */
    private void watch() {
      synchronized (this) {
        if (done || watch != null) {
          return;
        }
        watch = look();
      }
      begin(this);
    }

    private Scheduler.Task look() {
      return request
          .getComponents()
          .getScheduler()
          .schedule(this::pace, intake.limits().window().toNanos(), TimeUnit.NANOSECONDS);
    }

    private void pace() {
      synchronized (this) {
        if (done) {
          return;
        }
        if (size - sizeAtWindow >= intake.limits().leastInWindow()) {
          sizeAtWindow = size;
          watch = look();
          return;
        }
      }
      giveUp(
          new Refusal(
              408,
              "The log came in too slowly",
              "At least "
                  + (intake.limits().leastInWindow() >> 10)
                  + " KB have to come in "
                  + intake.limits().window().toSeconds()
                  + " seconds. Compress the log with gzip and send it again."));
    }

    private synchronized boolean finish() {
      if (done) {
        return false;
      }
      done = true;
      if (watch != null) {
        watch.cancel();
      }
      return true;
    }

    private void whole() {
      if (!finish()) {
        return;
      }
      end(this);
      Callback release = Callback.from(callback, this::giveBack);
      Whole whole = new Whole(request, parts, size);
      try {
        if (!pass(whole, response, release)) {
          Response.writeError(request, response, release, 404);
        }
      } catch (Throwable e) {
        // The edge of a thread: whoever waits for the answer has to get one.
        Response.writeError(request, response, release, e);
      }
    }

    private void giveUp(Refusal refusal) {
      if (finish()) {
        end(this);
        giveBack();
        intake.refuse(request, response, callback, refusal);
      }
    }

    private void broken(Throwable failure) {
      if (finish()) {
        end(this);
        LOG.warn("an upload from {} ended after {} bytes, before it was whole", client, size);
        giveBack();
        callback.failed(failure);
      }
    }

    private void giveBack() {
      long held;
      synchronized (this) {
        held = size;
        size = 0;
        parts.clear();
      }
      intake.budget().giveBack(client, held);
    }
  }

  /** The request with its body at hand. */
  private static final class Whole extends Request.Wrapper {
    private final Content.Source body;
    private final long length;

    Whole(Request request, List<ByteBuffer> parts, long length) {
      super(request);
      this.body = new ByteBufferContentSource(parts);
      this.length = length;
    }

    @Override
    public long getLength() {
      return length;
    }

    @Override
    public Content.Chunk read() {
      return body.read();
    }

    @Override
    public void demand(Runnable demandCallback) {
      body.demand(demandCallback);
    }

    @Override
    public void fail(Throwable failure) {
      body.fail(failure);
    }

    @Override
    public boolean consumeAvailable() {
      return true;
    }
  }
}
