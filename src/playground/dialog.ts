/** A part of what a dialog says: a paragraph, or a list under one. */
export type Said = string | { readonly above: string; readonly list: readonly string[] };

/** Asks in the page's dialog; settles with whether the first button was pressed. */
export function ask(
  dialog: HTMLDialogElement,
  title: string,
  said: readonly Said[],
  [yes, no]: readonly [yes: string, no: string],
): Promise<boolean> {
  const heading = element("h2", title);
  heading.id = "ask-title";
  const [accept, refuse] = [button(yes), button(no)];
  const buttons = element("p");
  buttons.append(accept, refuse);
  dialog.replaceChildren(heading, ...said.flatMap(drawn), buttons);
  return new Promise((settle) => {
    accept.onclick = () => dialog.close("yes");
    refuse.onclick = () => dialog.close("");
    dialog.onclose = () => settle(dialog.returnValue === "yes");
    dialog.returnValue = "";
    dialog.showModal();
  });
}

function drawn(said: Said): HTMLElement[] {
  if (typeof said === "string") return [element("p", said)];
  const list = element("ul");
  list.append(...said.list.map((text) => element("li", text)));
  return [element("p", said.above), list];
}

function element(name: string, text = ""): HTMLElement {
  const made = document.createElement(name);
  made.textContent = text;
  return made;
}

function button(text: string): HTMLButtonElement {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = text;
  return made;
}
