import { useWrite } from "../context.js";
import { texts } from "../texts.js";
import { WriteButton } from "../write-button.js";
import { repairSteps, type Dates } from "./dates.js";
import type { Yard } from "./yard.js";

const t = texts.columns;
/** As many as one looks through; the rest are counted. */
const SHOWN = 12;

/** Counts that became dates: what would be put back, and what is left with its reason. */
export function DateList({ yard, dates }: { yard: Yard; dates: Dates }) {
  const write = useWrite();
  const { repairs, left } = dates;
  if (repairs.length + left.length === 0) return null;
  return (
    <>
      <h2>{t.dates}</h2>
      {repairs.length > 0 && (
        <>
          <p class="quiet">{t.datesHow}</p>
          <table>
            <thead>
              <tr>
                <th scope="col">{t.dateCell}</th>
                <th scope="col">{t.dateHolds}</th>
                <th scope="col">{t.dateBack}</th>
              </tr>
            </thead>
            <tbody>
              {repairs.slice(0, SHOWN).map(({ address, holds, range }) => (
                <tr key={address}>
                  <th scope="row">{address}</th>
                  <td>{holds}</td>
                  <td>{range}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <More of={repairs} />
          <WriteButton press={() => write(repairSteps(yard, repairs), t.repaired(repairs.length))}>
            {t.repair(repairs.length)}
          </WriteButton>
        </>
      )}
      {left.length > 0 && (
        <>
          <p>{t.left}</p>
          <ul>
            {left.slice(0, SHOWN).map(({ address, holds, why }) => (
              <li key={address}>{t.leftCell(address, holds, why)}</li>
            ))}
          </ul>
          <More of={left} />
        </>
      )}
    </>
  );
}

function More({ of }: { of: readonly unknown[] }) {
  return of.length > SHOWN ? <p class="quiet">{t.more(of.length - SHOWN)}</p> : null;
}
