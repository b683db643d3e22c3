package standstill.intake;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.Scheduler;
import org.jspecify.annotations.Nullable;

/**
 * Sees to it that every request is answered in time, and that no thread waits for a reader.
 *
 * <p>The answer is gathered while it is made. When it is whole it goes out as fast as the reader
 * takes it, without a thread. When it isn't there in time, another one goes out in its place that
 * says so; what is still being made is thrown away when it is done.
 */
final class TimeLimit extends Handler.Wrapper {
  private static final Refusal BUSY =
      new Refusal(
          503,
          "Too much is being read at present",
          "The server holds as many answers as it has memory for. Wait ten seconds and ask again.");

  private final Intake intake;

  TimeLimit(Intake intake) {
    this.intake = intake;
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) throws Exception {
    Answer answer = new Answer(request, response, callback);
    answer.begin();
    try {
      if (!super.handle(request, answer, answer)) {
        Response.writeError(request, answer, answer, 404);
      }
    } catch (Throwable e) {
      // The edge of a thread: whoever waits for the answer has to get one.
      Response.writeError(request, answer, answer, e);
    }
    return true;
  }

  private Refusal late(Request request) {
    long seconds = intake.limits().answer().toSeconds();
    boolean reads = request.getMethod().equals("GET") || request.getMethod().equals("HEAD");
    String path = request.getHttpURI().getPath();
    boolean log = path.endsWith("/diagnose") || path.startsWith("/log/");
    return new Refusal(
        503,
        "No answer in " + seconds + " seconds",
        log
            ? "This log takes too long to read. Keep the last boot of it, for example with: tail -n"
                + " 20000 boot.log, and send it again."
            : reads
                ? "The server has too much to do at present. Wait ten seconds and ask again."
                : "What you sent may still be done. Look first whether it was, and send it again"
                    + " only if it was not.");
  }

  /** What is being answered. */
  private final class Answer extends Response.Wrapper implements Callback {
    private final Callback callback;
    private final HttpFields.Mutable headers;
    private final ByteArrayOutputStream content = new ByteArrayOutputStream();
    private final String client;
    private int status;
    private boolean began;
    private boolean last;
    private boolean full;
    private boolean decided;
    private long held;
    private Scheduler.@Nullable Task watch;

    Answer(Request request, Response response, Callback callback) {
      super(request, response);
      this.callback = callback;
      this.headers = HttpFields.build(response.getHeaders());
      this.client = Intake.client(request);
      this.status = response.getStatus();
    }

    void begin() {
      watch = schedule(this::late, intake.limits().answer().toNanos());
    }

    private Scheduler.Task schedule(Runnable what, long nanos) {
      return getRequest()
          .getComponents()
          .getScheduler()
          .schedule(what, nanos, TimeUnit.NANOSECONDS);
    }

    private synchronized boolean decide() {
      if (decided) {
        return false;
      }
      decided = true;
      if (watch != null) {
        watch.cancel();
      }
      return true;
    }

    private void late() {
      if (decide()) {
        giveBack();
        getRequest().setAttribute(Intake.LATE, true);
        intake.refuse(getRequest(), getWrapped(), callback, TimeLimit.this.late(getRequest()));
      }
    }

    @Override
    public void succeeded() {
      if (!decide()) {
        return;
      }
      if (full) {
        giveBack();
        intake.refuse(getRequest(), getWrapped(), callback, BUSY);
        return;
      }
      Response out = getWrapped();
      byte[] bytes = content.toByteArray();
      // 0 is Jetty's word for a status that nobody set.
      out.setStatus(status == 0 ? 200 : status);
      // Jetty keeps its own date when the others are cleared.
      out.getHeaders().clear().add(headers.remove(HttpHeader.DATE));
      boolean hasBody = status != 204 && status != 304;
      if (hasBody && !getRequest().getMethod().equals("HEAD")) {
        out.getHeaders().put(HttpHeader.CONTENT_LENGTH, bytes.length);
      }
      // A reader has to take an answer at the pace at which a sender has to send a log.
      long windows = 2 + bytes.length / intake.limits().leastInWindow();
      Scheduler.Task slow =
          schedule(
              () -> getRequest().getConnectionMetaData().getConnection().getEndPoint().close(),
              windows * intake.limits().window().toNanos());
      out.write(
          true,
          ByteBuffer.wrap(bytes),
          Callback.from(
              callback,
              () -> {
                slow.cancel();
                giveBack();
              }));
    }

    @Override
    public void failed(Throwable failure) {
      if (decide()) {
        giveBack();
        callback.failed(failure);
      }
    }

    private synchronized void giveBack() {
      intake.budget().giveBack(client, held);
      held = 0;
    }

    @Override
    public void write(boolean isLast, @Nullable ByteBuffer buffer, Callback written) {
      Throwable failure = null;
      synchronized (this) {
        began = true;
        if (decided) {
          failure = new TimeoutException("the answer came too late");
        } else if (last) {
          failure =
              isLast || buffer == null ? null : new IOException("the answer is whole already");
        } else {
          last = isLast;
          keep(buffer);
        }
      }
      if (failure == null) {
        written.succeeded();
      } else {
        written.failed(failure);
      }
    }

    private void keep(@Nullable ByteBuffer buffer) {
      int length = buffer == null ? 0 : buffer.remaining();
      if (buffer == null || length == 0 || full) {
        return;
      }
      if (!intake.budget().take(client, length)) {
        full = true;
        content.reset();
        return;
      }
      held += length;
      byte[] bytes = new byte[length];
      buffer.get(bytes);
      content.write(bytes, 0, length);
    }

    @Override
    public int getStatus() {
      return status;
    }

    @Override
    public void setStatus(int code) {
      status = code;
    }

    @Override
    public HttpFields.Mutable getHeaders() {
      return headers;
    }

    @Override
    public @Nullable Supplier<HttpFields> getTrailersSupplier() {
      return null;
    }

    @Override
    public void setTrailersSupplier(Supplier<HttpFields> trailers) {
      throw new UnsupportedOperationException("no answer has trailers");
    }

    @Override
    public synchronized boolean isCommitted() {
      return began;
    }

    @Override
    public synchronized boolean hasLastWrite() {
      return last;
    }

    @Override
    public synchronized boolean isCompletedSuccessfully() {
      return last;
    }

    @Override
    public synchronized void reset() {
      if (began) {
        throw new IllegalStateException("the answer has begun");
      }
      status = 0;
      headers.clear();
    }

    @Override
    public CompletableFuture<Void> writeInterim(int code, HttpFields fields) {
      return CompletableFuture.completedFuture(null);
    }
  }
}
