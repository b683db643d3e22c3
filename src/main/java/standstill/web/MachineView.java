package standstill.web;

import java.util.List;
import java.util.Optional;
import standstill.machine.Machine;
import standstill.report.Picture;

/**
 * The machine that the log shows, for its part of the report page.
 *
 * @param summary controllers without a driver, disks and the wanted root in a line; empty when
 *     nothing was read
 * @param trouble the parts in which something is missing or failed
 * @param rest the other parts
 */
public record MachineView(String summary, List<Picture.Part> trouble, List<Picture.Part> rest) {
  static MachineView none() {
    return new MachineView("", List.of(), List.of());
  }

  static MachineView of(Optional<Machine> machine) {
    if (machine.isEmpty() || machine.get().things().isEmpty()) {
      return none();
    }
    Picture picture = Picture.of(machine.get());
    return new MachineView(
        picture.summary(),
        picture.parts().stream().filter(MachineView::isTrouble).toList(),
        picture.parts().stream().filter(part -> !isTrouble(part)).toList());
  }

  private static boolean isTrouble(Picture.Part part) {
    return part.notes().stream().anyMatch(Picture.Note::trouble);
  }
}
