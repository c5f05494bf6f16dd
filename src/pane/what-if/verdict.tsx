import { decimalsApart } from "../../core/apart.js";
import type { Contract } from "../../core/contract.js";
import { underRemark } from "../../functions/lot-lines.js";
import { shownChance, shownNumber } from "../shown.js";
import { texts } from "../texts.js";
import type { JudgedLot } from "./judging.js";

const t = texts.whatIf;

interface Props {
  readonly judged: JudgedLot;
  readonly contract: Contract;
  readonly size: number;
  readonly opened: number;
  readonly sign: "." | ",";
}

/** By the contract, how sure, hives by grade, pay: said anew whenever a threshold moves. */
export function Verdict({ judged, contract, size, opened, sign }: Props) {
  const { count, sure, chance, pay } = judged;
  const figure = (value: number) => shownNumber(value, sign);
  const asked = contract.averageFrames;
  const mayReject = contract.underMinimum === "rejects the load";
  return (
    <dl class="verdict" aria-live="polite">
      <dt>{t.byContract}</dt>
      <dd>
        <strong>{count.met ? t.met : t.notMet}</strong>
        {": "}
        {[
          count.average === null
            ? t.noneCounts
            : asked === 0
              ? t.averageAlone(figure(count.average))
              : t.averageIs(
                  shownNumber(count.average, sign, decimalsApart(count.average, asked)),
                  figure(asked),
                ),
          t.under(count.under, count.opened) + (mayReject ? t.underForgiven(count.underMet) : ""),
        ].join("; ")}
        {count.under > 0 && <span class="quiet">{t.underAre(underRemark(contract))}</span>}
      </dd>
      <dt>{t.howSure}</dt>
      <dd>
        {opened >= size ? (
          t.allOpened
        ) : (
          <>
            {sure.low !== null && sure.high !== null && (
              <>{t.interval(figure(sure.low), figure(sure.high))} </>
            )}
            {"value" in chance ? t.chance(shownChance(chance.value)) : chance.why}
            {"value" in chance && mayReject && ` ${t.chanceAlone(count.underMet)}`}
            {sure.warning !== "" && <span class="quiet"> {sure.warning}.</span>}
          </>
        )}
      </dd>
      <dt>{t.hives}</dt>
      <dd>
        {[...count.grades]
          .filter(([, hives]) => hives > 0)
          .map(([grade, hives]) => `${hives} ${grade}`)
          .join(", ")}
      </dd>
      <dt>{t.pay}</dt>
      <dd>
        {"value" in pay ? t.payOf(figure(pay.value), contract.currency) : pay.why}
        <span class="quiet"> {t.caution}</span>
      </dd>
    </dl>
  );
}
