/** Remarks as one; of what is empty nothing is said. */
export function together(...remarks: readonly string[]): string {
  return remarks.filter((remark) => remark !== "").join("; ");
}
