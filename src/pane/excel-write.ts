import { Refusal } from "../core/refusal.js";
import { guard } from "./excel-check.js";
import { fillOf, lookBeside } from "./excel-beside.js";
import { costOf, cut, isOn, neededBy, sheetsOf } from "./excel-parts.js";
import { grouped, isOfficeError, run, whyOf } from "./excel-run.js";
import { settle, type Progress } from "./excel-settle.js";
import { inverse, look, make, sameState, unmade, type State } from "./excel-state.js";
import type { Step } from "./port.js";
import { labelOf, unexpected } from "./stands.js";

/**
 * Makes a change in two syncs, or two for each part of a big one: all is read and checked, then
 * all is written, read before and after in the same sync. Excel makes what is sent one after the
 * other and stops at the first that fails; nothing takes back what was made before it but us.
 *
 * @returns the steps that take it back
 */
export async function writeSteps(asked: readonly Step[]): Promise<readonly Step[]> {
  const steps: Step[] = asked.flatMap(cut);
  const progress: Progress = { before: await check(steps), after: [], sent: 0 };
  try {
    await makeAll(steps, progress);
  } catch (error) {
    if (!(error instanceof Refusal) && !isOfficeError(error)) throw error;
    await settle(steps, progress, error);
  }
  return steps
    .map((step, n) => inverse(step, progress.before[n]!, progress.after[n]!))
    .filter((step) => step !== null)
    .reverse();
}

async function check(steps: readonly Step[]): Promise<State[]> {
  const missing = sheetsOf(steps, "add sheet");
  const found: State[] = [];
  try {
    await run(async (context) => {
      for (const group of grouped(steps, costOf)) {
        const loaded = group.map((step) => ({
          state: look(context, step, missing),
          refused: guard(context, step, steps),
        }));
        // One sync for each part that a call carries.
        await context.sync();
        for (const { state, refused } of loaded) {
          const at = state();
          const why = refused(at);
          if (why !== null) throw new Refusal(why);
          found.push(at);
        }
      }
    });
  } catch (error) {
    throw new Refusal(`${whyOf(error, neededBy(steps))}: nothing was written`);
  }
  return found;
}

async function makeAll(steps: Step[], progress: Progress): Promise<void> {
  const [added, dropped] = [sheetsOf(steps, "add sheet"), sheetsOf(steps, "drop sheet")];
  await run(async (context) => {
    for (const group of grouped(steps, costOf)) {
      const first = progress.sent;
      progress.sent += group.length;
      const stood = group.map((step) => look(context, step, added));
      const beside = () =>
        group.map((step, n) => lookBeside(context, step, progress.before[first + n]!));
      const besideBefore = beside();
      group.forEach((step, n) => make(context, step, progress.before[first + n]!));
      const besideAfter = beside();
      const stands = group.map((step) => look(context, step, dropped));
      await context.sync();
      const checked = progress.before.slice(first, first + group.length);
      progress.before.splice(first, group.length, ...stood.map((read) => read()));
      progress.after.push(...stands.map((read) => read()));
      const fills = group.flatMap((_, n) => {
        const [was, is] = [besideBefore[n]?.(), besideAfter[n]?.()];
        const fill = was !== undefined && is !== undefined ? fillOf(was, is, steps) : null;
        return fill === null ? [] : [fill];
      });
      if (fills.length > 0) {
        // To be put back with the rest, which ends here.
        steps.splice(progress.sent, Infinity, ...fills.map(({ step }) => step));
        progress.before.splice(progress.sent, Infinity, ...fills.map(({ before }) => before));
        progress.after.push(...fills.map(({ after }) => after));
        progress.sent = steps.length;
        throw new Refusal(
          `Excel fills the table's column with the formula, past ${labelOf(group[0]!)}`,
        );
      }
      group.forEach((step, n) => {
        const why =
          changed(step, checked[n]!, progress.before[first + n]!) ??
          (isOn(step, dropped) ? null : unmade(step, progress.after[first + n]!));
        if (why !== null) throw new Refusal(why);
      });
    }
  });
}

/** What another hand changed between the check and the writing. */
function changed(step: Step, checked: State, stood: State): string | null {
  if (sameState(checked, stood)) return null;
  const cells =
    checked.kind === "cells" && stood.kind === "cells"
      ? unexpected(stood.block.place, stood.block.entries, checked.block.entries)
      : null;
  return cells ?? `${labelOf(step)} was changed by another hand`;
}
