import type { ComponentChildren } from "preact";
import { useContext } from "preact/hooks";
import { IsWriting } from "./context.js";

interface Props {
  readonly press: () => unknown;
  readonly disabled?: boolean;
  /** The one that a view is for. */
  readonly main?: boolean;
  readonly "aria-label"?: string;
  readonly children: ComponentChildren;
}

/** A button that changes the workbook, which waits while another change is under way. */
export function WriteButton({ press, disabled = false, main = false, ...rest }: Props) {
  const isWriting = useContext(IsWriting);
  return (
    <button
      type="button"
      class={main ? "main" : undefined}
      disabled={disabled || isWriting}
      onClick={() => void press()}
      {...rest}
    />
  );
}
