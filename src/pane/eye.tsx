import { Judges } from "./eye/judges.js";
import { Train } from "./eye/train.js";
import { texts } from "./texts.js";

/** Combs to train one's eye on, and what two judges of the same hives differ by. */
export function Eye() {
  return (
    <>
      <h2>{texts.eye.train}</h2>
      <Train />
      <h2>{texts.eye.judges}</h2>
      <Judges />
    </>
  );
}
