import { useMemo } from "preact/hooks";
import type { Contract } from "../../core/contract.js";
import type { Look } from "../../core/lot.js";
import { shownChance, shownDay, shownNumber } from "../shown.js";
import { texts } from "../texts.js";
import { ahead } from "./judging.js";
import { LineWithBand } from "./line-with-band.js";

const t = texts.whatIf;

interface Props {
  readonly contract: Contract;
  readonly looks: readonly Look[];
  readonly size: number;
  readonly sign: "." | ",";
}

/** The lot's average over the next weeks, with its band, against what the contract asks. */
export function Ahead({ contract, looks, size, sign }: Props) {
  const points = useMemo(() => ahead(contract, looks, size), [contract, looks, size]);
  const figure = (value: number) => shownNumber(value, sign);
  return (
    <details>
      <summary>{t.ahead}</summary>
      {"why" in points ? (
        <p>{points.why}</p>
      ) : (
        <>
          <LineWithBand
            points={points.value}
            threshold={contract.averageFrames || null}
            sign={sign}
            system={contract.dateSystem}
          />
          <ul>
            {points.value
              .filter((_, day) => day > 0 && day % 7 === 0)
              .map(({ date, middle, low, high, chance }) => (
                <li key={date}>
                  {t.aheadRow(
                    shownDay(date, contract.dateSystem),
                    figure(middle),
                    figure(low),
                    figure(high),
                    chance === null ? "" : shownChance(chance),
                  )}
                </li>
              ))}
          </ul>
          <p class="quiet">{t.aheadHow}</p>
        </>
      )}
    </details>
  );
}
