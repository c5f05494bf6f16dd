import packageJson from "../../package.json" with { type: "json" };
import { mount } from "../pane/mount.js";
import { Problem } from "../workbook/problem.js";
import { demo } from "./demo.js";
import { describedFunctions } from "./described.js";
import { ask, type Said } from "./dialog.js";
import { download, fileName } from "./download.js";
import type { Readied, WorkbookFile } from "./file.js";
import type { Grid } from "./grid.js";
import type { Session } from "./session.js";
import { goRound, remembering } from "./parts.js";
import { texts } from "./texts.js";
import { Why } from "./why.js";

const byId = <T extends HTMLElement>(id: string) => document.getElementById(id) as T;
const dialog = byId<HTMLDialogElement>("ask");
const openInput = byId<HTMLInputElement>("open");
const buttons = { save: byId<HTMLButtonElement>("save"), demo: byId<HTMLButtonElement>("demo") };
const say = (sentence: string) => (byId("status").textContent = sentence);

const why = new Why();
let grid: Grid;
let session: Session | null = null;
let unmount = () => {};
/** While a step is at work, what it says stays. */
let isBusy = false;

/** What a test, or somebody curious, may look at from the browser's console. */
declare global {
  var combTally: { readonly session: () => Session | null } | undefined;
}
globalThis.combTally = { session: () => session };

void guarded(start);

async function start(): Promise<void> {
  // Let the browser draw the page before the grid's code takes it.
  await new Promise(requestAnimationFrame);
  const [{ startGrid }] = await Promise.all([import("./grid.js"), import("./session.js")]);
  grid = startGrid(byId("grid"), why.called);
  await open(demo);
  openInput.onchange = () => void take(openInput.files?.[0]);
  buttons.demo.onclick = () => void guarded(() => open(demo));
  buttons.save.onclick = () => void guarded(save);
  listenForDrops();
  addEventListener("beforeunload", (event) => {
    if (session?.isChanged()) event.preventDefault();
  });
  sideBySide();
  keys();
}

/** Opens what the user gave. */
async function take(file: File | undefined): Promise<void> {
  openInput.value = "";
  if (!file) return;
  if (isBusy) return void say(texts.busy(file.name));
  if (!/\.xlsx$/i.test(file.name)) return void say(texts.notXlsx(file.name));
  await guarded(async () => {
    const { refuseHuge } = await import("../workbook/unpack.js");
    refuseHuge(file.size, file.name);
    say(texts.reading(file.name));
    const bytes = new Uint8Array(await file.arrayBuffer());
    await open(() => read({ name: file.name, bytes }));
  });
}

async function read(file: WorkbookFile): Promise<Readied> {
  const { readFile } = await import("./file.js");
  return readFile(file);
}

async function mayLeave(): Promise<boolean> {
  if (!session?.isChanged()) return true;
  return ask(dialog, session.file.name, [texts.unsaved], [texts.leave, texts.stay]);
}

/** Shows a file that can be read, once the user has let go of what is open. */
async function open(ready: () => Readied | Promise<Readied>): Promise<void> {
  const readied = await ready();
  const { name } = readied.file;
  if (!(await mayLeave())) return void say(texts.ready);
  const { openSession } = await import("./session.js");
  // Ids of sheets come again in another file.
  why.forget();
  const opened = await openSession(grid, readied);
  session?.close();
  session = opened;
  unmount();
  unmount = mount(byId("pane"), {
    workbook: session.workbook,
    version: packageJson.version,
    functions: Promise.resolve(describedFunctions),
  });
  byId("file").textContent = name;
  session.grid.onSelectionChange(() => {
    if (session && !isBusy) say(why.of(session.grid) ?? texts.ready);
  });
  say(`${texts.opened(name)} ${texts.ready}`);
}

async function save(): Promise<void> {
  const saving = session;
  if (!saving) return;
  say(texts.calculating);
  await new Promise(requestAnimationFrame);
  const { bytes, losses, notCalculated } = await saving.write();
  const moved = saving.movedSheets();
  const notKept = saving.notKept();
  const failed = notCalculated.map((r) => `${r.sheet}!${r.address}: ${r.text}`);
  const said: Said[] = [
    ...(losses.length > 0 ? [{ above: texts.losses, list: losses }] : []),
    ...(moved.length > 0 ? [texts.moved(moved.join(", "))] : []),
    ...(notKept.length > 0 ? [{ above: texts.notKept, list: notKept }] : []),
    ...(failed.length > 0 ? [{ above: texts.notCalculated, list: firstOf(failed) }] : []),
  ];
  const isWanted = await ask(dialog, texts.saveTitle, said.length > 0 ? said : [texts.carried], [
    texts.save,
    texts.cancel,
  ]);
  if (!isWanted) return void say(texts.ready);
  const name = `${fileName(saving.file.name.replace(/\.xlsx$/i, ""))}-calculated.xlsx`;
  download(bytes, name);
  saving.saved();
  say(texts.saved(name));
}

function firstOf(list: readonly string[]): string[] {
  const few = list.slice(0, 12);
  return list.length > few.length ? [...few, texts.more(list.length - few.length)] : few;
}

/** One step at a time: says what it was refused for, and goes on with what is open. */
async function guarded(step: () => Promise<void>): Promise<void> {
  const pressed = document.activeElement;
  isBusy = true;
  enable(false);
  try {
    await step();
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    say(error instanceof Problem ? message : texts.fault(message));
  } finally {
    isBusy = false;
    enable(session !== null);
    if (pressed instanceof HTMLButtonElement) pressed.focus();
  }
}

function enable(isReady: boolean): void {
  openInput.disabled = buttons.save.disabled = buttons.demo.disabled = !isReady;
}

function listenForDrops(): void {
  addEventListener("dragover", (event) => event.preventDefault());
  addEventListener("drop", (event) => {
    event.preventDefault();
    void take(event.dataTransfer?.files[0]);
  });
}

/** F6 goes round bar, grid and pane. */
function keys(): void {
  const bar = remembering(byId("bar"), "input, button");
  const cells = { element: byId("grid"), enter: grid.focus };
  const pane = remembering(byId("pane"), "[role=tab][aria-selected=true]");
  goRound([bar, cells, pane], cells);
  // Behind the pane the grid keeps menus out of sight: Tab begins anew before it comes to them.
  byId("end").onfocus = () => openInput.focus();
}

/** On a narrow screen the sheet and the pane take turns. */
function sideBySide(): void {
  const side = byId<HTMLButtonElement>("side");
  side.onclick = () => {
    const isShown = document.body.classList.toggle("pane-first");
    side.setAttribute("aria-pressed", String(isShown));
    side.textContent = isShown ? texts.showSheet : texts.showPane;
  };
}
