/** A part of the page that F6 leads to. */
export interface Part {
  readonly element: HTMLElement;
  readonly enter: () => void;
}

/** A part that is entered where it was left, or at the first place to begin. */
export function remembering(element: HTMLElement, begin: string): Part {
  let left: HTMLElement | null = null;
  element.addEventListener("focusin", ({ target }) => (left = target as HTMLElement));
  const canTake = (one: HTMLElement) =>
    one.isConnected && one.getClientRects().length > 0 && !one.matches(":disabled");
  const enter = () => {
    const begins = [...element.querySelectorAll<HTMLElement>(begin)].find(canTake);
    (left && canTake(left) ? left : begins)?.focus();
  };
  return { element, enter };
}

/**
 * Goes round the parts of the page by F6, and the other way round by Shift+F6: in the grid, Tab goes
 * from cell to cell.
 *
 * @param outside - the part to which belongs what lies in none, as the grid's menus do
 */
export function goRound(parts: readonly Part[], outside: Part): void {
  const listen = (event: KeyboardEvent) => {
    const { key, shiftKey, ctrlKey, altKey, metaKey } = event;
    if (key !== "F6" || ctrlKey || altKey || metaKey) return;
    if (document.querySelector("dialog[open]")) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    const here = parts.find(({ element }) => element.contains(document.activeElement)) ?? outside;
    const shown = parts.filter(({ element }) => element.getClientRects().length > 0);
    const at = shown.indexOf(here) + (shiftKey ? -1 : 1);
    shown.at(at % shown.length)!.enter();
  };
  // On its way down, before the grid takes the key.
  addEventListener("keydown", listen, { capture: true });
}
