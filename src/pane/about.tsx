import { useEffect, useState } from "preact/hooks";
import { NAMESPACE } from "../functions/namespace.js";
import { usePane, type ListedFunction } from "./context.js";
import { texts } from "./texts.js";

/** What the add-in is: how to begin, cautions, every function with its help, the version. */
export function About() {
  const { version, functions } = usePane();
  const [list, setList] = useState<readonly ListedFunction[] | null | "reading">("reading");
  useEffect(() => void functions.then(setList), [functions]);
  return (
    <>
      <p>{texts.about.how(NAMESPACE)}</p>
      <p>{texts.about.nothingSent}</p>
      <h2>{texts.about.cautions}</h2>
      <ul>
        {texts.about.cautionList.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <h2>{texts.about.functions}</h2>
      {list === "reading" && <p>{texts.about.reading}</p>}
      {list === null && <p>{texts.about.unread}</p>}
      {Array.isArray(list) && (
        <dl>
          {list.map((fn: ListedFunction) => (
            <div key={fn.name}>
              <dt>
                <a href={fn.helpUrl}>{`${NAMESPACE}.${fn.name}`}</a>
              </dt>
              <dd>{fn.description}</dd>
            </div>
          ))}
        </dl>
      )}
      <p class="quiet">
        {texts.about.version(version)} · <a href="help.html">{texts.about.help}</a>
      </p>
    </>
  );
}
