import { expect, it } from "vitest";
import { texts } from "../../src/pane/texts.js";

// English: one hive, one frame, one point.
it.each([
  [texts.whatIf.chart(1), "Frames of bees of 1 hive,"],
  [texts.whatIf.bar(1, 0), "1 hive from 0 to under 1 frame"],
  [texts.whatIf.framesOf("1"), "1 frame"],
  [texts.whatIf.averageIs("0.5", "1"), "average 0.5 of 1 frame asked"],
  [texts.whatIf.averageAlone("1"), "average 1 frame, none asked"],
  [texts.whatIf.under(1, 1), "1 of 1 hive under the minimum"],
  [texts.whatIf.interval("0.5", "1"), "from 0.5 to 1 frame, 95 %"],
  [texts.whatIf.aheadLabel("10 April", "1", "0.5", "1.5"), "1 frame on 10 April"],
  [texts.whatIf.aheadRow("10 April", "1", "0.5", "1.5", ""), "10 April: 1 frame (0.5 to 1.5)"],
  [texts.eye.bias("1", true, "0.5", "1.5"), "you said 1 point of percent more"],
  [texts.eye.spread("1", "0.5"), "Spread: 1 point, give or take 0.5"],
  [texts.eye.sure(1), "From 1 hive alone"],
])("says one as one: %s", (text, said) => expect(text).toContain(said));
