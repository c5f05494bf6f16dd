export const STATEMENT_HELP = `comb-tally statement FILE --lot NAME --contract NAME [--size N] [--out FILE]

Writes a statement on one lot for the grower, into a workbook of its own: the
verdict by the contract, how sure it is, the pay line by line, places to sign,
the terms, a chart, and the hives opened. It holds values alone, so that it
opens the same for someone without Comb Tally. Your own file is never written
over.

  --lot NAME        the lot, as the yard sheet names it; left out where the sheet
                    holds one lot
  --contract NAME   the contract, as the terms of the workbook name it; or a
                    published standard; or a workbook that holds the terms
  --for NAME        the contract, where --contract is a workbook with several
  --sheet NAME      the sheet, or the cells (A2:F6), where several hold hives; where
                    one of them alone has the lot, it is found without
  --size N          hives in the lot, opened or not; left out where all of
                    them stand in the sheet
  --delivered N     hives that came, where fewer than agreed: --size is then what
                    was agreed
  --grower NAME     who the statement is for; else a line to write on
  --beekeeper NAME  who gives it; else a line to write on
  --seed-one WORD   the words of both parties by which the hives were drawn, as
  --seed-two WORD   given to PICK_HIVES
  --picked TEXT     how the hives were picked, in your words; else a line to
                    write on
  --paper SIZE      letter (also where left out) or a4
  --out FILE        where to write, an .xlsx; else FILE with -statement behind
                    its name

Example:

  comb-tally statement spring-yard.xlsx --lot Shed --contract Cherry --size 160

The exit code is 0 when the statement was written, 1 when it was refused, and 2
when the command was wrong.`;
