export const HELP = `comb-tally grade FILE [--out FILE] [--contract TERMS] [--for NAME] [--values]
                 [--quiet]

Reads a yard sheet, works out each hive's frames of bees, brood and grade under
its contract, prints them, and writes them into a copy. Your own file is never
written over.

FILE is an Excel workbook (.xlsx) or a CSV file. If the workbook has formulas of
Comb Tally, all its formulas are calculated. If it has none, computed columns
are added beside the yard sheet: a row of headings, with one for the hive and
one for its bees, and a hive a row. Counts may be written as you speak: 7-8,
about 5, half.

The contract is taken from the block of terms in the workbook that is named
Terms, or headed Term with a contract in each column beside it.

  --out FILE       where to write; else FILE with -graded behind its name
  --contract TERMS a workbook that holds the terms, where yours does not,
                   or the name of a published standard
  --for NAME       the contract to grade under, where the terms hold several
  --values         write results instead of formulas, for someone without
                   Comb Tally
  --quiet          print only what went wrong, and where the copy is
  --help           this text
  --version        the version of the program

Examples:

  comb-tally grade spring-yard.xlsx
      grades by the terms in the workbook, into spring-yard-graded.xlsx

  comb-tally grade hives.csv --contract terms.xlsx --for Pear --out pear.xlsx
      grades a CSV file under the contract Pear, into a workbook

comb-tally statement FILE writes a statement on one lot for the grower:
comb-tally statement --help says how.

The exit code is 0 when all went well, 1 when the file was refused, 2 when the
command was wrong, and 3 when the copy was written but some cells could not be
calculated; the text says which, and why.`;
