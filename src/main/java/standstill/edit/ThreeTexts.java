package standstill.edit;

/**
 * The three texts of a conflict.
 *
 * @param common the one that both set out from; empty when both made the entry anew
 * @param base the one in the base now
 * @param proposed the one of the proposal
 * @param merged a text to settle from: what does not clash is merged, and each place that clashes
 *     holds both, between marks that are no YAML, so that it can't be saved by mistake
 * @param head the base's commit now; settling names it, so that nothing newer is overwritten
 */
public record ThreeTexts(String common, String base, String proposed, String merged, String head) {}
