package standstill.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.lucene.analysis.TokenStream;
import org.apache.lucene.analysis.tokenattributes.CharTermAttribute;
import org.apache.lucene.analysis.tokenattributes.OffsetAttribute;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TradeTokenizerTest {
  private static List<String> tokens(String text) {
    return TradeTokenizer.chunks(text).stream()
        .flatMap(List::stream)
        .map(TradeTokenizer.Token::text)
        .toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "mount /dev/nvme0n1p2 failed|/dev/nvme0n1p2",
        "on unknown-block(0,0)|unknown-block(0,0)",
        "exitcode=0x00007f00|0x7f00",
        "code 0x7f00.|0x7f00",
        "failed (-110)|-110",
        "ret=-110|-110",
        "error -110|-110",
        "status EFI_NOT_FOUND,|efi_not_found",
        "EXT4-fs (sda2): error|ext4-fs",
        "[snd_hda_intel]|snd_hda_intel",
        "snd_hda_intel 0000:00:1f.3|0000:00:1f.3",
        "\"/dev/sda1\"|/dev/sda1",
        "nvme0n1p2|nvme",
      })
  void keepsTokensOfTheTradeWhole(String text, String token) {
    assertTrue(tokens(text).contains(token), () -> tokens(text) + " lacks " + token);
  }

  @Test
  void partsAreFoundToo() {
    assertEquals(
        List.of("unknown-block(0,0)", "unknown-block", "unknown", "block", "0", "0"),
        tokens("unknown-block(0,0)"));
  }

  @Test
  void pluralsAndEndingsAreTakenOff() {
    assertEquals(TradeAnalyzer.stem("disk"), TradeAnalyzer.stem("disks"));
    assertEquals(TradeAnalyzer.stem("boot"), TradeAnalyzer.stem("booting"));
    assertEquals("efi_not_found", TradeAnalyzer.stem("efi_not_found"));
  }

  /** The contract of token streams, on random text: offsets never go back and lie in the text. */
  @Test
  void keepsTheContractOnRandomText() throws IOException {
    long seed = 20260101;
    Random random = new Random(seed);
    String letters = "ab1 -/_.,:;()[]{}\"'=0x\t\né€|<>";
    try (TradeAnalyzer analyzer = new TradeAnalyzer()) {
      for (int round = 0; round < 500; round++) {
        StringBuilder text = new StringBuilder();
        int length = random.nextInt(80);
        for (int i = 0; i < length; i++) {
          text.append(letters.charAt(random.nextInt(letters.length())));
        }
        List<Integer> starts = new ArrayList<>();
        try (TokenStream stream = analyzer.tokenStream("TITLE", text.toString())) {
          OffsetAttribute offset = stream.addAttribute(OffsetAttribute.class);
          CharTermAttribute term = stream.addAttribute(CharTermAttribute.class);
          stream.reset();
          while (stream.incrementToken()) {
            assertTrue(term.length() > 0, "seed " + seed);
            assertTrue(offset.endOffset() <= text.length(), "seed " + seed);
            assertTrue(
                starts.isEmpty() || offset.startOffset() >= starts.get(starts.size() - 1),
                "seed " + seed + ": " + text);
            starts.add(offset.startOffset());
          }
          stream.end();
        }
      }
    }
  }
}
