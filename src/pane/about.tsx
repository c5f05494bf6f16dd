import { useEffect, useState } from "preact/hooks";
import { NAMESPACE } from "../functions/namespace.js";
import { sources } from "../functions/tables.js";
import { usePane, type ListedFunction } from "./context.js";
import { evaluate } from "./formula.js";
import { localised } from "./shown.js";
import { texts } from "./texts.js";
import { useSign } from "./watched.js";

const t = texts.about;

/** What the add-in is: how to begin, cautions, functions with their help, sources, the version. */
export function About() {
  const { version, functions } = usePane();
  const [list, setList] = useState<readonly ListedFunction[] | null | "reading">("reading");
  useEffect(() => void functions.then(setList), [functions]);
  return (
    <>
      <p>{t.how(NAMESPACE)}</p>
      <p>{t.nothingSent}</p>
      <h2>{t.cautions}</h2>
      <ul>
        {t.cautionList.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <h2>{t.functions}</h2>
      {list === "reading" && <p>{t.reading}</p>}
      {list === null && <p>{t.unread}</p>}
      {Array.isArray(list) && (
        <dl>
          {list.map((fn: ListedFunction) => (
            <div key={fn.name}>
              <dt>
                <a href={fn.helpUrl} target="_blank" rel="noopener">{`${NAMESPACE}.${fn.name}`}</a>
              </dt>
              <dd>{fn.description}</dd>
            </div>
          ))}
        </dl>
      )}
      <h2>{t.sources}</h2>
      <Sources />
      <p class="quiet">
        {t.version(version)} ·{" "}
        <a href="help.html" target="_blank" rel="noopener">
          {t.help}
        </a>
      </p>
    </>
  );
}

/** The same table that the function SOURCES gives. */
function Sources() {
  const sign = useSign();
  const rows = evaluate(sources, []).slice(1) as [string, number, string, string, string][];
  return (
    <details>
      <summary>{t.sourcesHow(rows.length)}</summary>
      <ul class="sources">
        {rows.map(([name, value, unit, source, known]) => (
          <li key={name}>
            {t.constant(name, localised(value, sign, { maximumFractionDigits: 10 }), unit)}
            <span class="quiet">{t.knownFrom(source, t.known[known] ?? known)}</span>
          </li>
        ))}
      </ul>
    </details>
  );
}
