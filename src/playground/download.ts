const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** How long a browser may take to fetch what it was told to keep, in milliseconds. */
const KEPT = 60_000;

/** Gives the user a workbook as a file. */
export function download(bytes: Uint8Array, name: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: XLSX }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), KEPT);
}

/** A name for a file out of what a user called something. */
export function fileName(text: string): string {
  return text.replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "") || "workbook";
}
