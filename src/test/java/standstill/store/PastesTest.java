package standstill.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import standstill.base.Base;
import standstill.base.TestBase;
import standstill.base.yaml.LabelReader;
import standstill.log.BootLog;
import standstill.report.Report;
import standstill.search.Search;

class PastesTest {
  private static final String ADA = "192.0.2.1";
  private static final String BRAM = "192.0.2.2";
  private static final long MEGABYTE = 1 << 20;

  private final AtomicLong nanos = new AtomicLong(Long.MAX_VALUE - 5);
  private final Edition edition =
      Edition.of(
          1,
          base(),
          new LabelReader.Labels(List.of(), List.of()),
          List.of(),
          b -> Search.open(b, Optional.empty()),
          Instant.EPOCH);

  private static Base base() {
    return new TestBase().fault("lamp-is-out", 1).add().build();
  }

  private static Report report(int megabytes) {
    BootLog log =
        new BootLog(
            1, List.of("x".repeat(megabytes << 20)), List.of(), "", "no boot log", List.of());
    return new Report(Report.NOT_A_BOOT_LOG, "no boot log", log, Optional.empty());
  }

  private Pastes pastes(int most, int megabytes) {
    return new Pastes(most, megabytes * MEGABYTE, Duration.ofHours(2), nanos::get);
  }

  private String keep(Pastes pastes, int megabytes, String client) {
    return pastes.keep(report(megabytes), edition, client).orElseThrow();
  }

  @Test
  void whatIsHeldIsBoundedInBytesAndTheOldestGoesFirst() {
    Pastes pastes = pastes(1_000, 20);
    List<String> addresses = new ArrayList<>();
    for (int i = 0; i < 43; i++) {
      addresses.add(keep(pastes, 2, "192.0.2." + i));
      assertTrue(pastes.bytes() <= 20 * MEGABYTE, pastes.bytes() + " bytes after paste " + i);
    }
    assertTrue(pastes.get(addresses.get(0), edition).isEmpty());
    assertTrue(pastes.get(addresses.get(42), edition).isPresent());
    assertTrue(pastes.bytes() >= 16 * MEGABYTE, "no more is thrown out than has to be");
  }

  @Test
  void nobodyPushesAnotherReadersPasteOut() {
    Pastes pastes = pastes(200, 40);
    String own = keep(pastes, 1, ADA);
    for (int i = 0; i < 500; i++) {
      keep(pastes, 2, BRAM);
    }
    assertTrue(pastes.get(own, edition).isPresent());
    assertTrue(pastes.bytes() <= 12 * MEGABYTE, "more than a quarter for one: " + pastes.bytes());
    for (int i = 0; i < 500; i++) {
      keep(pastes, 0, BRAM);
    }
    assertTrue(pastes.get(own, edition).isPresent(), "nor with many small ones");
  }

  @Test
  void oneLargePasteOfSomebodyIsKept() {
    Pastes pastes = pastes(200, 40);
    keep(pastes, 1, ADA);
    String large = keep(pastes, 30, ADA);
    assertTrue(pastes.get(large, edition).isPresent());
    assertTrue(pastes.keep(report(41), edition, ADA).isEmpty(), "but none larger than all may be");
    assertTrue(pastes.get(large, edition).isPresent());
  }

  @Test
  void aPasteEndsAfterItsTimeEvenIfTheClockIsSetBack() {
    Pastes pastes = pastes(10, 10);
    String address = keep(pastes, 1, ADA);
    nanos.addAndGet(Duration.ofMinutes(119).toNanos());
    assertTrue(pastes.get(address, edition).isPresent());
    nanos.addAndGet(Duration.ofMinutes(1).toNanos());
    assertTrue(pastes.get(address, edition).isEmpty());
    assertEquals(0, pastes.bytes());
  }
}
