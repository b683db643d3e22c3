package standstill.intake;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;

/** A connection on which a test writes what it likes, byte for byte. */
public final class Wire implements AutoCloseable {
  private final Socket socket;

  /** Connects to a port of this machine. */
  public Wire(int port) throws IOException {
    socket = new Socket("127.0.0.1", port);
    socket.setSoTimeout(20_000);
  }

  /** Sends a text; lines end as the text has them, with CR LF for each LF. */
  public Wire send(String text) throws IOException {
    socket.getOutputStream().write(text.replace("\n", "\r\n").getBytes(StandardCharsets.UTF_8));
    socket.getOutputStream().flush();
    return this;
  }

  /** Whatever the server still says until it ends the connection. */
  public String rest() throws IOException {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    try {
      InputStream in = socket.getInputStream();
      for (int b = in.read(); b >= 0; b = in.read()) {
        all.write(b);
      }
    } catch (SocketException e) {
      // The server ended it while we were still to be heard: what it said counts.
    }
    return all.toString(StandardCharsets.UTF_8);
  }

  /** One request over a connection of its own, and the whole answer. */
  public static String ask(int port, String head, String body) throws IOException {
    try (Wire wire = new Wire(port)) {
      return wire.send(
              head + "\nContent-Length: " + body.length() + "\nConnection: close\n\n" + body)
          .rest();
    }
  }

  /** Ends the connection at once, as a program that is killed does. */
  public void abort() throws IOException {
    socket.setSoLinger(true, 0);
    socket.close();
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
