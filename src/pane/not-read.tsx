import { usePane } from "./context.js";
import { texts } from "./texts.js";
import type { Watched } from "./watched.js";

const t = texts.notRead;

/** That a view is still being read, or why it could not be; what was read before stands under it. */
export function NotRead({ of: { value, why } }: { readonly of: Watched<unknown> }) {
  const { readers } = usePane();
  if (why === null) return value === null ? <p>{texts.waiting}</p> : null;
  return (
    <div class="asked" role="alert">
      <p class="error">{why}</p>
      {value !== null && <p>{t.before}</p>}
      <button type="button" onClick={() => readers.forEach((read) => void read())}>
        {t.again}
      </button>
    </div>
  );
}
