import { eyeError, type JudgedComb } from "../../core/eye.js";
import { shownNumber } from "../shown.js";
import { texts } from "../texts.js";

const t = texts.eye;

interface Props {
  readonly judged: readonly JudgedComb[];
  readonly sign: "." | ",";
}

/** Bias and spread of an eye in words, and each comb as it was said against what it was. */
export function EyeResult({ judged, sign }: Props) {
  const { bias, low, high, spread, spreadError } = eyeError(judged);
  const points = (value: number) => shownNumber(Math.round(value * 10) / 10, sign);
  const leaning = low > 0 ? t.high : high < 0 ? t.low : t.chance;
  return (
    <section aria-label={t.result}>
      <h3>{t.result}</h3>
      <p>
        {t.bias(points(Math.abs(bias)), bias >= 0, points(low), points(high))} {leaning}
      </p>
      <p>{t.spread(points(spread), points(spreadError))}</p>
      <svg class="eye-plot" viewBox="-22 -6 128 126" role="img" aria-label={t.plot}>
        <path class="axis" d="M0 0V100H100" />
        <path class="even" d="M0 100L100 0" />
        {judged.map(({ said, was }, i) => (
          <circle key={i} cx={was} cy={100 - said} r="2" />
        ))}
        <text x="-3" y="4" text-anchor="end">
          100
        </text>
        <text x="-3" y="103" text-anchor="end">
          0
        </text>
        <text x="100" y="109" text-anchor="end">
          {t.was}
        </text>
        <text x="3" y="4">
          {t.said}
        </text>
      </svg>
      <p class="quiet">{t.caution}</p>
    </section>
  );
}
