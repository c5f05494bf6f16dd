/** All that the pane says, in one place to be translated. A text with gaps is a function. */
export const texts = {
  title: "Comb Tally",
  views: {
    contract: "Contract",
    whatIf: "What if",
    columns: "Columns",
    convert: "Convert",
    start: "Start",
    about: "About",
  },
  waiting: "Reading the workbook…",
  fault: (message: string) => `A fault in Comb Tally: ${message}`,
  takeBack: "Take back",
  tookBack: "Taken back: the sheet is as it was.",
  host: {
    noExcel:
      "This page is the pane of an Excel add-in, and Excel is not around it. " +
      "In Excel, add Comb Tally from Home > Add-ins, then open it from the Home tab.",
  },
  about: {
    how: (namespace: string) => `Type =${namespace}. in a cell, and the functions are listed.`,
    cautions: "Before you rely on it",
    cautionList: [
      "Strength is judged by eye: two people who open the same hive may differ.",
      "The signed contract and local rules come first.",
    ],
    functions: "Functions",
    reading: "The list is being read…",
    unread:
      "The list could not be read. The functions may work all the same; " +
      "to see them here, close the pane and open it again.",
    nothingSent: "Nothing that you type leaves this machine.",
    version: (version: string) => `Version ${version}`,
    help: "Help",
  },
};
