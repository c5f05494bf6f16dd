import type { Contract } from "./contract.js";
import { quote, Refusal } from "./refusal.js";

/** What a hive is called that reaches no grade, and one that is dead. */
export const NO_GRADE = "no grade";
export const DEAD_OUT = "dead-out";

/** Terms that do not go together, or one that is missing: whoever shows it can show it beside them. */
export class Contradiction extends Refusal {
  /** @param terms - the labels of the terms concerned, the one to mend first */
  constructor(
    message: string,
    readonly terms: readonly string[],
  ) {
    super(message);
  }
}

/**
 * Refuses a contract whose terms contradict each other.
 *
 * @throws Contradiction that names the terms
 */
export function checkContract(contract: Contract): Contract {
  const { averageFrames: average, minimumFrames: minimum, mostFrames: most } = contract;
  if (average > 0 && minimum > average) {
    throw new Contradiction(`minimum frames ${minimum} is over average frames ${average}`, [
      "minimum frames",
      "average frames",
    ]);
  }
  if (most > 0 && most < Math.max(average, minimum)) {
    throw new Contradiction(
      `most frames a hive is ${most}, and the contract asks ${Math.max(average, minimum)}`,
      ["most frames a hive", average >= minimum ? "average frames" : "minimum frames"],
    );
  }
  if (contract.bonus > 0 && average === 0) {
    throw new Contradiction("bonus a frame goes by average frames, which are not given", [
      "bonus a frame",
      "average frames",
    ]);
  }
  if (contract.proRata && average === 0) {
    throw new Contradiction("pro rata goes by average frames, which are not given", [
      "pro rata",
      "average frames",
    ]);
  }
  if (contract.bonusCeiling > 0 && contract.bonus === 0) {
    throw new Contradiction("bonus ceiling stands without a bonus a frame", [
      "bonus ceiling",
      "bonus a frame",
    ]);
  }
  if (contract.broodCombCover > 0 && contract.broodMeasure !== "combs") {
    throw new Contradiction('brood comb covered is only read where brood is counted as "combs"', [
      "brood comb covered",
      "brood counted as",
    ]);
  }
  const paid = contract.grades.flatMap(({ fee }, i) => (fee > 0 ? [`grade ${i + 1} fee`] : []));
  if (contract.baseFee > 0 && paid.length > 0) {
    throw new Contradiction(
      "base fee and the grades' own fees stand side by side: give one of them",
      ["base fee", ...paid],
    );
  }
  if (contract.inspectFromHour >= contract.inspectToHour) {
    throw new Contradiction(
      `inspect from hour ${contract.inspectFromHour} is not before inspect to hour ${contract.inspectToHour}`,
      ["inspect from hour", "inspect to hour"],
    );
  }
  checkGrades(contract);
  return contract;
}

function checkGrades({ grades, minimumFrames: minimum }: Contract): void {
  const names = grades.map((grade) => grade.name.toLowerCase());
  grades.forEach((grade, i) => {
    const own = `grade ${i + 1} name`;
    if ([NO_GRADE, DEAD_OUT].includes(names[i]!)) {
      throw new Contradiction(
        `grade ${i + 1} is named ${quote(grade.name)}, which means none: rename it`,
        [own],
      );
    }
    const first = names.indexOf(names[i]!);
    if (first < i) {
      throw new Contradiction(`two grades are named ${quote(grade.name)}`, [
        `grade ${first + 1} name`,
        own,
      ]);
    }
    const better = grades[i - 1];
    if (!better) return;
    const weaker = grade.frames <= better.frames && grade.brood <= better.brood;
    if (!weaker || (grade.frames === better.frames && grade.brood === better.brood)) {
      const part = grade.frames < better.frames ? "brood" : "frames";
      throw new Contradiction(
        `grade ${i + 1} ${quote(grade.name)} does not ask less than grade ${i} ${quote(better.name)}: ` +
          `put the best grade first`,
        [`grade ${i + 1} ${part}`, `grade ${i} ${part}`],
      );
    }
  });
  const [best] = grades;
  if (best !== undefined && best.frames > 0 && minimum > best.frames) {
    throw new Contradiction(
      `minimum frames ${minimum} is over the ${best.frames} that the best grade, ${quote(best.name)}, asks`,
      ["minimum frames", "grade 1 frames"],
    );
  }
}
