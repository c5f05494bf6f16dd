/** What the page around grid and pane says. */
export const texts = {
  ready: "Ready. Nothing you type leaves this page.",
  opened: (name: string) => `Opened ${name}.`,
  reading: (name: string) => `Reading ${name}…`,
  busy: (name: string) => `Wait until this is done, then open ${name} again.`,
  calculating: "Calculating…",
  notXlsx: (name: string) =>
    `${name} is no .xlsx file. Save it as an Excel Workbook (.xlsx) first, then open it here.`,
  fault: (message: string) => `Something went wrong here, and nothing was changed: ${message}`,
  unsaved: "What you typed here since it was opened will be lost.",
  leave: "Open anyway",
  stay: "Keep this one",
  saveTitle: "Before it is saved",
  carried: "The saved file holds all that the opened one held, with the cells calculated.",
  losses: "These of the opened file will not be in the saved one:",
  moved: (sheets: string) =>
    `Rows or columns were put in, taken out or moved on ${sheets}. These sheets are written anew: ` +
    `cells, looks, tables, frozen panes, what is hidden, and how a page is laid out are kept; heights ` +
    `of rows, filters outside tables, areas of printing, and what else was fastened to cells are not.`,
  notKept: "Done here, and not in the saved file:",
  notCalculated: "These cells could not be calculated for the file:",
  more: (n: number) => `and ${n} more`,
  save: "Save",
  cancel: "Cancel",
  saved: (name: string) => `${name} is saved where your browser puts downloads.`,
  statement: (name: string) =>
    `The statement is saved as ${name}, where your browser puts downloads.`,
  showPane: "Show the pane",
  showSheet: "Show the sheet",
  why: (address: string, sentence: string) => `${address}: ${sentence}`,
} as const;
