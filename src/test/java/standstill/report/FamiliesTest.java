package standstill.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import standstill.base.Base;
import standstill.base.Stage;
import standstill.base.yaml.BaseReader;
import standstill.base.yaml.BaseText;
import standstill.base.yaml.Loaded;
import standstill.rank.Ranker;
import standstill.store.BaseFolder;

/**
 * Which family a text is of, and that a family is data alone. Wordings of FreeBSD:
 * sys/kern/vfs_mountroot.c, sys/kern/kern_linker.c, stand/common/boot.c of FreeBSD 15.1; those of
 * NetBSD and OpenBSD: first lines of their kernels, from memory.
 */
class FamiliesTest {
  private static final Diagnoser DIAGNOSER;

  static {
    try {
      DIAGNOSER = new Diagnoser(BaseFolder.builtIn().base());
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static String family(String text) {
    return DIAGNOSER.read(text.getBytes(java.nio.charset.StandardCharsets.UTF_8)).family();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Mounting from ufs:/dev/ada0p2 failed with error 19. | freebsd",
        "mountroot> | freebsd",
        "panic: no init | freebsd",
        "can't load 'kernel' | freebsd",
        "Nov 30 10:00:00 bench kernel: ugen0.2: <vendor product> at usbus0 | freebsd",
        "Nov 30 10:00:00 bench kernel: usb 1-1: new high-speed USB device | linux",
        "Kernel panic - not syncing: No working init found. | linux",
        "(initramfs) | linux",
        "Reboot and Select proper Boot device | pc",
        "error: no such device: 0b6e1f0a. | pc",
        "NetBSD 9.2 (GENERIC) #0: Wed May 12 13:15:55 UTC 2021 | netbsd",
        "OpenBSD 7.3 (GENERIC.MP) #1125: Sat Mar 25 10:36:29 MDT 2023 | openbsd",
        "Copyright (c) 2003-2020 The DragonFly Project. | dragonfly"
      })
  void aTextIsOfTheFamilyWhoseOwnLinesStandInIt(String text, String family) {
    assertEquals(family, family(text));
  }

  @Test
  void linesOfFirmwareAndLoaderBelongToTheKernelThatFollows() {
    String pc = "SeaBIOS (version 1.16.2)\nBooting from Hard Disk...\nWelcome to GRUB!\n";
    assertEquals("pc", family(pc));
    assertEquals("linux", family(pc + "Linux version 6.1.0\n"));
    assertEquals("freebsd", family(pc + "Trying to mount root from ufs:/dev/ada0p2 [rw]...\n"));
  }

  @Test
  void aKernelOfOneFamilyMayBeStartedFromAnother() {
    assertEquals(
        "freebsd",
        family(
            "reboot: Restarting system\n"
                + "Consoles: EFI console\n"
                + "Loading kernel...\n"
                + "---<<BOOT>>---\n"
                + "FreeBSD 14.0-RELEASE #0 releng/14.0\n"));
  }

  @Test
  void aRootThatIsNotThereEndsAtThePromptOfTheKernel() {
    Report report =
        DIAGNOSER.diagnose(
            """
            Trying to mount root from ufs:/dev/ad4s1a [rw]...
            mountroot: waiting for device /dev/ad4s1a ...
            Mounting from ufs:/dev/ad4s1a failed with error 19.

            mountroot>
            """);
    Report.Diagnosis diagnosis = report.diagnosis().orElseThrow();
    assertEquals("stalled", report.verdict());
    assertEquals(Stage.ROOT, diagnosis.trace().stage());
    assertEquals("freebsd-root-prompt", diagnosis.ranking().stop().orElseThrow().stop().id());
    assertEquals("freebsd-root-disk-renamed", diagnosis.ranking().top().orElseThrow().fault().id());
  }

  @Test
  void aPanicOfTheLoaderIsNoneOfTheKernel() {
    Report report =
        DIAGNOSER.diagnose(
            "FreeBSD/amd64 EFI loader, Revision 1.1\n"
                + "panic: free: guard2 fail @ 0x1000 + 2065 from unknown:0\n");
    assertEquals(Stage.LOADER, report.diagnosis().orElseThrow().trace().stage());
  }

  @Test
  void aSystemThatTheBaseHoldsNothingOfIsNamedAndNotDiagnosed() {
    Report report = DIAGNOSER.diagnose("NetBSD 9.2 (GENERIC) #0: Wed May 12 13:15:55 UTC 2021\n");
    assertEquals(Report.NOT_DIAGNOSED, report.verdict());
    assertTrue(report.reason().startsWith("this is a boot of NetBSD: "), report.reason());
    assertTrue(report.diagnosis().isEmpty());
  }

  /** Invented: a kernel that no program of this project has heard of. */
  private static final String TOY =
      """
      id: toy
      title: Toy
      include: [pc]
      recognise: [{line: '^toyos \\d', seen: ['toyos 7 wakes']}]
      kernel-begins: [{line: '^toyos \\d', seen: ['toyos 7 wakes']}]
      milestones:
        - {id: toy-wakes, stage: kernel, proves: begins, title: Toy wakes, line: '^toyos \\d', seen: ['toyos 7 wakes']}
      """;

  private static final String TOY_FAULT =
      """
      id: toy-spring-worn
      title: The spring is worn
      family: [toy]
      stage: kernel
      part: kernel
      how-common: often
      about: An invented fault.
      symptoms: [spring-creaks]
      signs:
        - id: spring-is-worn
          line: 'spring (?P<name>\\S+) is worn'
          shows: usually
          elsewhere: never
          says: 'spring {name} is worn'
          seen: ['spring s1 is worn']
          unlike: ['spring s1 is wound']
      fixes:
        - id: change-the-spring
          title: Change the spring
          steps: [Change it.]
          minutes: 5
          cures: usually
          risk: none
          prove: It is wound.
          undo: Put the old one back.
          cautions: []
      prevent: Wind it.
      sources: [{title: 'common practice, no source'}]
      reviewed: {on: 2026-11-30, by: base-team}
      """;

  private static final String SYMPTOM =
      "- {id: spring-creaks, title: It creaks, stages: [kernel], look: It creaks.,"
          + " reviewed: {on: 2026-11-30, by: base-team}}\n";

  @Test
  void aNewFamilyIsDataAlone() throws IOException {
    List<BaseText> files = new ArrayList<>();
    for (String name : List.of("scale.yaml", "families/pc.yaml", "families/linux.yaml")) {
      files.add(BaseText.of(name, "kb/" + name, Files.readAllBytes(Path.of("kb", name))));
    }
    files.add(new BaseText("symptoms.yaml", "kb/symptoms.yaml", SYMPTOM));
    files.add(new BaseText("families/toy.yaml", "kb/families/toy.yaml", TOY));
    files.add(
        new BaseText(
            "faults/kernel/toy-spring-worn.yaml",
            "kb/faults/kernel/toy-spring-worn.yaml",
            TOY_FAULT));
    Loaded loaded = BaseReader.read(files, Ranker.MODEL_NUMBERS);
    assertEquals(List.of(), loaded.problems());
    Base base = loaded.base();
    Report report =
        new Diagnoser(base)
            .diagnose("SeaBIOS (version 1.16.2)\ntoyos 7 wakes\nspring s1 is worn\n");
    assertEquals("toy", report.log().family());
    assertEquals(Stage.KERNEL, report.diagnosis().orElseThrow().trace().stage());
    assertEquals(
        "toy-spring-worn",
        report.diagnosis().orElseThrow().ranking().top().orElseThrow().fault().id());
  }
}
