/** A workbook that webpack puts into the page, with what the grid takes of it. */
declare module "*.xlsx" {
  const workbook: {
    readonly name: string;
    readonly base64: string;
    readonly data: import("@univerjs/core").IWorkbookData;
    readonly lockedSheets: readonly string[];
  };
  export default workbook;
}
declare module "*.css";
