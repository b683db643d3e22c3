package standstill.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.javalin.Javalin;
import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import standstill.store.BaseFolder;
import standstill.store.BaseInUse;

/**
 * Twenty clients paste and read for a while, and two hundred others send a byte every six seconds:
 * no request of the twenty fails. Lasts a few seconds; {@code -Dstandstill.load.seconds=60} for the
 * whole minute.
 */
class LoadIT {
  private static final int SECONDS = Integer.getInteger("standstill.load.seconds", 4);
  private static final int CLIENTS = 20;
  private static final int SLOW = 200;
  private static final long NANOS = 1_000_000_000L;

  private final AtomicBoolean over = new AtomicBoolean();
  private final Queue<String> errors = new ConcurrentLinkedQueue<>();
  private final Queue<Long> times = new ConcurrentLinkedQueue<>();
  private final AtomicInteger held = new AtomicInteger();
  private final AtomicInteger givenUp = new AtomicInteger();

  private void client(int port, List<byte[]> logs, int number) {
    HttpClient client = HttpClient.newHttpClient();
    String root = "http://127.0.0.1:" + port;
    for (int i = number; !over.get(); i++) {
      byte[] log = logs.get(i % logs.size());
      HttpRequest.BodyPublisher body = HttpRequest.BodyPublishers.ofByteArray(log);
      HttpRequest request =
          switch (i % 4) {
            case 0 -> HttpRequest.newBuilder(URI.create(root + "/")).build();
            case 1 -> HttpRequest.newBuilder(URI.create(root + "/search?q=black+screen")).build();
            case 2 -> HttpRequest.newBuilder(URI.create(root + "/diagnose")).POST(body).build();
            default ->
                HttpRequest.newBuilder(URI.create(root + "/api/diagnose")).POST(body).build();
          };
      int right = i % 4 == 2 ? 303 : 200;
      long since = System.nanoTime();
      try {
        HttpResponse<String> answer = client.send(request, HttpResponse.BodyHandlers.ofString());
        if (answer.statusCode() != right) {
          errors.add(request.uri() + ": " + answer.statusCode() + " " + answer.body());
        }
      } catch (IOException | InterruptedException e) {
        errors.add(request.uri() + ": " + e);
      }
      times.add(System.nanoTime() - since);
    }
  }

  /** Each sends a byte every six seconds; whose connection is closed comes again at once. */
  private void slow(int port) {
    List<Socket> sockets = new ArrayList<>();
    try {
      while (!over.get()) {
        for (int i = 0; i < SLOW && !over.get(); i++) {
          boolean fresh = i >= sockets.size() || !sends(sockets.get(i));
          if (fresh) {
            Socket socket = new Socket("127.0.0.1", port);
            socket
                .getOutputStream()
                .write(
                    ("POST /api/diagnose HTTP/1.1\r\nHost: localhost\r\n"
                            + "Content-Length: 100000\r\n\r\n")
                        .getBytes(StandardCharsets.US_ASCII));
            if (i < sockets.size()) {
              givenUp.incrementAndGet();
              sockets.get(i).close();
              sockets.set(i, socket);
            } else {
              sockets.add(socket);
            }
            held.incrementAndGet();
          }
        }
        Thread.sleep(SECONDS < 30 ? 500 : 6_000);
      }
      for (Socket socket : sockets) {
        socket.close();
      }
    } catch (IOException | InterruptedException e) {
      errors.add("a slow one: " + e);
    }
  }

  private static boolean sends(Socket socket) {
    try {
      socket.getOutputStream().write('x');
      return socket.getInputStream().available() == 0;
    } catch (IOException e) {
      return false;
    }
  }

  @Test
  void twentyClientsAreServedWithTwoHundredSlowOnesBeside() throws Exception {
    List<byte[]> logs = new ArrayList<>();
    for (String name : List.of("wrong-root-id", "disk-timeout", "memory-error", "emergency-mode")) {
      logs.add(Files.readAllBytes(Path.of("docs/examples/" + name + ".log")));
    }
    Javalin server =
        Server.create(BaseInUse.fixed(BaseFolder.builtIn().base())).start("127.0.0.1", 0);
    try {
      List<Thread> threads = new ArrayList<>();
      threads.add(new Thread(() -> slow(server.port())));
      for (int i = 0; i < CLIENTS; i++) {
        int number = i;
        threads.add(new Thread(() -> client(server.port(), logs, number)));
      }
      threads.forEach(Thread::start);
      long since = System.nanoTime();
      Thread.sleep(SECONDS * 1_000L);
      over.set(true);
      for (Thread thread : threads) {
        thread.join(60_000);
        assertTrue(!thread.isAlive(), "somebody still waits");
      }
      List<Long> sorted = times.stream().sorted().toList();
      System.out.printf(
          "%d requests of %d clients in %.0f s, %d errors; %d slow connections, %d given up;"
              + " half within %d ms, 99 %% within %d ms, all within %d ms%n",
          sorted.size(),
          CLIENTS,
          (System.nanoTime() - since) / 1e9,
          errors.size(),
          held.get(),
          givenUp.get(),
          sorted.get(sorted.size() / 2) * 1_000 / NANOS,
          sorted.get(sorted.size() * 99 / 100) * 1_000 / NANOS,
          sorted.get(sorted.size() - 1) * 1_000 / NANOS);
      assertEquals(List.of(), List.copyOf(errors));
      assertTrue(sorted.size() >= CLIENTS, "too little happened: " + sorted.size());
      assertTrue(held.get() >= SLOW, "too few slow ones: " + held.get());
    } finally {
      server.stop();
    }
  }
}
