import type { Contract } from "./contract.js";
import { quote, Refusal } from "./refusal.js";

/** What a hive is called that reaches no grade, and one that is dead. */
export const NO_GRADE = "no grade";
export const DEAD_OUT = "dead-out";

/** Refuses a contract whose terms contradict each other, naming both. */
export function checkContract(contract: Contract): Contract {
  const { averageFrames: average, minimumFrames: minimum, mostFrames: most } = contract;
  if (average > 0 && minimum > average) {
    throw new Refusal(`minimum frames ${minimum} is over average frames ${average}`);
  }
  if (most > 0 && most < Math.max(average, minimum)) {
    throw new Refusal(
      `most frames a hive ${most} is under what the contract asks, ${Math.max(average, minimum)}`,
    );
  }
  if (contract.bonus > 0 && average === 0) {
    throw new Refusal("bonus a frame needs average frames to be paid over");
  }
  if (contract.proRata && average === 0) {
    throw new Refusal("pro rata needs average frames to be a part of");
  }
  if (contract.bonusCeiling > 0 && contract.bonus === 0) {
    throw new Refusal("bonus ceiling stands without a bonus a frame");
  }
  if (contract.broodCombCover > 0 && contract.broodMeasure !== "combs") {
    throw new Refusal('brood comb covered is only read where brood is counted as "combs"');
  }
  if (contract.baseFee > 0 && contract.grades.some((grade) => grade.fee > 0)) {
    throw new Refusal("base fee and the grades' own fees stand side by side: give one of them");
  }
  if (contract.inspectFromHour >= contract.inspectToHour) {
    throw new Refusal(
      `inspect from hour ${contract.inspectFromHour} is not before inspect to hour ${contract.inspectToHour}`,
    );
  }
  checkGrades(contract);
  return contract;
}

function checkGrades({ grades }: Contract): void {
  const names = grades.map((grade) => grade.name.toLowerCase());
  grades.forEach((grade, i) => {
    if ([NO_GRADE, DEAD_OUT].includes(names[i]!)) {
      throw new Refusal(
        `grade ${i + 1} is named ${quote(grade.name)}, which means none: rename it`,
      );
    }
    if (names.indexOf(names[i]!) < i) {
      throw new Refusal(`two grades are named ${quote(grade.name)}`);
    }
    const better = grades[i - 1];
    if (!better) return;
    const weaker = grade.frames <= better.frames && grade.brood <= better.brood;
    if (!weaker || (grade.frames === better.frames && grade.brood === better.brood)) {
      throw new Refusal(
        `grade ${i + 1} ${quote(grade.name)} does not ask less than grade ${i} ${quote(better.name)}: ` +
          `put the best grade first`,
      );
    }
  });
}
