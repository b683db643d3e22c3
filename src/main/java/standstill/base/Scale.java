package standstill.base;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What words mean in numbers, in one place.
 *
 * @param chances word to probability
 * @param frequencies word to relative weight
 * @param parts id of a part of the machine to its title
 * @param needs id of a thing that a step needs to its title
 * @param riskMinutes risk to the minutes that it is reckoned to cost on top
 * @param needMinutes the minutes that each needed thing is reckoned to cost on top
 * @param model numbers of the ranking model by name
 */
public record Scale(
    Map<String, Double> chances,
    Map<String, Double> frequencies,
    Map<String, String> parts,
    Map<String, String> needs,
    Map<Risk, Double> riskMinutes,
    double needMinutes,
    Map<String, Double> model) {
  public Scale {
    chances = ordered(chances);
    frequencies = ordered(frequencies);
    parts = ordered(parts);
    needs = ordered(needs);
    riskMinutes = ordered(riskMinutes);
    model = ordered(model);
  }

  private static <K, V> Map<K, V> ordered(Map<K, V> map) {
    return Collections.unmodifiableMap(new LinkedHashMap<>(map));
  }

  /** The same scale with some numbers of the model changed. */
  public Scale withModel(Map<String, Double> changed) {
    Map<String, Double> all = new LinkedHashMap<>(model);
    all.putAll(changed);
    return new Scale(chances, frequencies, parts, needs, riskMinutes, needMinutes, all);
  }

  /** A number of the ranking model, which the reader has made sure is there. */
  public double model(String name) {
    Double value = model.get(name);
    if (value == null) {
      throw new IllegalArgumentException("no number of that name in the scale: " + name);
    }
    return value;
  }
}
