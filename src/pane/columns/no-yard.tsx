import { rangeName } from "../address.js";
import { Choice, type Option } from "../choice.js";
import { regionKey } from "../port.js";
import { texts } from "../texts.js";
import type { Candidate } from "./headings-row.js";

interface Props {
  readonly id: string;
  readonly candidates: readonly Candidate[];
  readonly choose: (key: string) => void;
}

/** What a view shows that has no yard sheet: there is none, or the one that was chosen is gone. */
export function NoYard({ id, candidates, choose }: Props) {
  if (candidates.length === 0) return <p>{texts.columns.none}</p>;
  return (
    <>
      <p class="error">{texts.columns.gone}</p>
      <Choice
        id={id}
        label={texts.columns.sheet}
        value=""
        choose={choose}
        options={[["", texts.columns.choose], ...candidates.map(optionOf)]}
      />
    </>
  );
}

/** A region as one of several to choose, with the part of it that counts. */
export function optionOf({ region, place }: Pick<Candidate, "region" | "place">): Option {
  const kind = texts.columns.kinds[region.kind];
  return [regionKey(region), texts.columns.candidate(region.name, kind, rangeName(place))];
}
