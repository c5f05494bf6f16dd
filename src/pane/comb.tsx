import { drawComb } from "../core/comb-drawing.js";
import type { CombPicture } from "../core/comb-picture.js";

interface Props {
  readonly picture: CombPicture;
  /** Begins the ids in it: one for each place of the pane. */
  readonly id: string;
  readonly label: string;
}

/** One side of a comb, drawn by the core as text. */
export function Comb({ picture, id, label }: Props) {
  return (
    <div
      class="comb"
      role="img"
      aria-label={label}
      dangerouslySetInnerHTML={{ __html: drawComb(picture, id) }}
    />
  );
}
