import { texts } from "../texts.js";

const t = texts.eye;

/** What two judges said of a hive, as it is typed. */
type Pair = readonly [string, string];

export const NO_PAIRS: readonly Pair[] = Array.from({ length: 10 }, () => ["", ""]);

interface Props {
  readonly typed: readonly Pair[];
  readonly change: (typed: readonly Pair[]) => void;
}

/** Ten hives to type in, one a row. */
export function Pairs({ typed, change }: Props) {
  return (
    <table class="pairs">
      <thead>
        <tr>
          <th scope="col">{t.hive}</th>
          <th scope="col">{t.judge[0]}</th>
          <th scope="col">{t.judge[1]}</th>
        </tr>
      </thead>
      <tbody>
        {typed.map((pair, hive) => (
          <tr key={hive}>
            <th scope="row">{hive + 1}</th>
            {([0, 1] as const).map((judge) => (
              <td key={judge}>
                <input
                  type="text"
                  size={6}
                  autocomplete="off"
                  aria-label={t.judged(hive + 1, t.judge[judge])}
                  value={pair[judge]}
                  onInput={({ currentTarget: { value } }) =>
                    change(
                      typed.map((old, i) => {
                        if (i !== hive) return old;
                        return judge === 0 ? [value, old[1]] : [old[0], value];
                      }),
                    )
                  }
                />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
