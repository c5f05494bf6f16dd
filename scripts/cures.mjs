/**
 * What each sentence means with which a function refuses, and what to do about it, by what the
 * sentence is about. A sentence stands as the sources have it, with `…` for what is filled in; a
 * test holds this list against them.
 * @type {readonly { readonly id: string, readonly title: string, readonly about: string, readonly cures: Readonly<Record<string, string>> }[]}
 */
export const TOPICS = [
  {
    id: "figures",
    title: "Figures in cells",
    about: "A count, a percent or an amount as it is written.",
    cures: {
      "… is not understood: … was expected":
        "The cell holds something that is no figure of this kind. Write it as the sentence shows, or move a remark into the notes.",
      "… is out of range: 0 to … … were expected":
        "More than can be: often two figures run together, or another unit. Look at the cell again.",
      "… may be … % or … %: write …, or say that percents are written as fractions":
        "0.6 may be sixty percent or a slip. Write 60; or, where the sheet shows 0.6 as 60 %, set the term percents written as to fraction, or written to fractions.",
      "… counts seams, and a seam is no comb: write the combs, or give seams their own columns":
        "The column counts combs. A yard sheet takes seams under Seams above and Seams below, under a contract that counts clusters; SEAMS gives what they were found to make in frames.",
      "… combs in one …: is it …-…?":
        "No box, or no hive, holds so many combs: often a range without its dash. Look at the cell again.",
      "… combs in one …: more than … are taken for a slip":
        "A box of bees holds 8, 10 or 12 combs, and a hive three boxes of 10. Correct the cell; where the hive has more boxes, give each box a column.",
      "… goes down: write the smaller figure first, …-…":
        "A range runs from less to more. Turn it round, after looking whether a digit is missing.",
      '… has a "…", and the decimal sign is "…": set the decimal sign, or write it with "…"':
        'Where you write decimal commas, set the term decimal sign to "," or give written as "decimal comma".',
      "… could be a fraction, … to …, or two boxes: write …-…, a decimal number, or give each box a column":
        "7/8 may be seven eighths, 7 to 8, or 7 in one box and 8 in the other. Write the one that you mean.",
      "… could be a fraction or two boxes: write a decimal number, or give each box a column":
        "8/8 may be a whole one, or 8 in each of two boxes. Write the one that you mean.",
      "the cell holds a date with an hour, …: type the count":
        "A date with an hour stands in a column of counts. Give the right column, or write the count.",
      "the cell holds a date, …, of another year than the inspection: type the count as text":
        "The spreadsheet made a date of what you typed, and its year says that it may not have been a count. Format the cell as text and type the count again.",
      "the cell holds a date, …: type the count as text, for example '7-8":
        "The date can be no count of frames. Format the cell as text and type the count again, or give another column.",
      "the cell holds a date, …: was it …-… or the fraction …/…? Type '…-… as text, or a decimal number, or say that counts are in whole frames":
        "1-2 and 1/2 become the same date. Type it again as text; or set the term whole frames to yes where you never write fractions.",
      "… stands where a figure was expected":
        "The cell holds yes or no, or something else that is no figure. Look whether the columns are given in the right order.",
      "most of this column is dates: give the column of figures, or, where ranges such as 7-8 became dates, type them again as text":
        "The argument points at a column of dates: point it at the counts. Where they are counts that the spreadsheet made dates, format the column as text and type them again; in a yard sheet the pane's Columns puts back what it can.",
      "… stands where yes or no was expected": "Write yes, no, or ? where nobody looked.",
      "… is in …, and the unit given is …":
        "The weight is written in another unit than the argument or the term stores unit says. Correct one of the two.",
      "… has no upper end":
        "12+ says how many at least and not how many at most, so the high end is not known. Ask for the middle or the low end, or write a range.",
    },
  },
  {
    id: "dates",
    title: "Dates",
    about: "",
    cures: {
      "… stands where a date of 2000 to 2099 was expected":
        "The cell holds no date. Type one as your spreadsheet takes it, or as 2026-03-27.",
      "… may be two days: write … or …, or say whether dates are written day first or month first":
        "The date is text, and day and month could be either way round. Set the term dates written, or written, to day first or month first.",
      "… stands where a date or a year was expected":
        "The date column, or inspected, needs a date or a year such as 2026.",
      "seen has … rows: give one date for all hives": "Give one cell with the date.",
    },
  },
  {
    id: "arguments",
    title: "Arguments",
    about: "What stands between the brackets of the formula.",
    cures: {
      "… stands where … was expected":
        "The argument takes one of a few words. Write one of those that the sentence gives, in quotes.",
      "… stands where a number over 0 and up to … was expected":
        "The argument takes a number within those limits, and no text.",
      "… stands where a confidence in percent was expected, from 1 to under 100, such as 95":
        "Write 95 for 95 %, not 0.95.",
      "… stands where … or a number up to 10,000 was expected":
        "Give one of the names, or bees on one deep frame as a number.",
      "… stands where … or a cell's width from 4 to 8 mm was expected":
        "Give one of the names, or the width of a worker cell in millimetres.",
      "… stands where one or more of … were expected":
        "written takes these words only, several with commas between them.",
      "… is no frame that is known: give …, or the comb's size inside the frame with its unit, such as 42 x 27 cm":
        "Give a frame by one of the names, or the length and height of the comb inside its wood with cm, mm or in, not the outside of the frame; for a sheet of foundation write 16.75 x 8.625 in foundation.",
      "… is … by …: give one frame size, or a row of …":
        "box_frames takes one frame for all columns, or a row with one frame for each column.",
      "… has … and … has …: give the same rows of both":
        "The columns do not begin or end in the same row, so that figures of different hives would be put together. Give B2:B61 and C2:C61.",
      "… is … columns wide: give one column": "Several columns are given where one is read.",
      "no column is given": "All columns of the call are left out. Give at least one.",
      "blank, and the function needs it":
        "The argument before the colon may not be left out or point at an empty cell.",
      "… stands where a whole number up to … was expected":
        "Write a whole number of hives or pallets.",
      "… stand two and two: give an even number of columns, not …":
        "Each comb or box has two sides or two looks, and each patch a length and a width.",
      "… has … columns and the brood …: give one, or one a box":
        "The brood's cover is one column for all boxes, or one for each box of brood.",
      "a cluster count is made of seams from above and below, not of covered combs":
        "The comb rule is cluster count. Give seams, or choose a comb rule that counts combs.",
    },
  },
  {
    id: "terms",
    title: "Terms and contract",
    about: "The Terms table, or a published standard in its place: see [the terms](terms.md).",
    cures: {
      'the first cell must be the heading "Term", with the contracts\' names beside it':
        "The range given as terms is not the whole table. Give it from its heading on, or the name Terms.",
      "no contract stands beside the heading Term":
        "The table has no column for a contract, or its heading is blank. Write the contract's name beside Term.",
      "two contracts are named …": "Rename one of the two columns.",
      "several contracts stand here, say which: …":
        "Give the contract's name as the argument contract, or let each hive's row name it in a column Contract.",
      "the hives go by several contracts (…): say which one, or which lot":
        "The hives of one lot name different contracts. Correct them, give the lot, or give the contract's name as the argument contract.",
      "no contract is named …; here are …":
        "The name is spelled otherwise in the heading of the Terms, or is in another table.",
      "… is no term that is known…":
        "Spell it as the list of terms does. A row of your own goes into a column headed Notes.",
      "the term … stands twice": "Two rows say the same term. Delete one of them.",
      "…: … stands where … was expected":
        "The value of that term is of another kind. Write what the sentence gives.",
      'grade … has no name: fill "grade … name"':
        "A grade with frames, brood or a fee needs its name.",
      "minimum frames … is over average frames …":
        "The least a hive must have cannot be more than what the lot must have on average. Correct one of them.",
      "minimum frames … is over the … that the best grade, …, asks":
        "No hive of that grade could ever fail the minimum. Lower minimum frames, or raise the grade.",
      "most frames a hive is …, and the contract asks …":
        "A hive may count less than is asked, so that no lot could be met. Raise most frames, or leave it out.",
      "bonus a frame goes by average frames, which are not given":
        "Fill average frames, or leave the bonus out.",
      "pro rata goes by average frames, which are not given":
        "Fill average frames, or leave pro rata out.",
      "bonus ceiling stands without a bonus a frame":
        "Fill bonus a frame, or leave the ceiling out.",
      'brood comb covered is only read where brood is counted as "combs"':
        "Set brood counted as to combs, or leave brood comb covered out.",
      "base fee and the grades' own fees stand side by side: give one of them":
        "Nobody could tell which is paid. Delete one of them.",
      "inspect from hour … is not before inspect to hour …":
        "Correct the hours between which hives may be opened.",
      "two grades are named …": "Give each grade a name of its own.",
      "grade … is named …, which means none: rename it":
        "The name would be taken for no grade, or for a dead hive.",
      "grade … … does not ask less than grade … …: put the best grade first":
        "Grades stand best first, each asking less than the one before it.",
      "no Terms are given, and … is no published standard: …":
        "Give the Terms table before the contract's name, or one of the standards that the sentence lists.",
      "… gives no number to grade by: …":
        "That standard is words alone. Put your own numbers into a Terms table.",
      "give the Terms table, or a published standard's name as the contract":
        "Neither is given. The table usually has the name Terms.",
      'contract "…" asks nothing of a hive: give it average frames, minimum frames or grades':
        "There is nothing to grade by. Fill one of these terms.",
      'contract "…" asks for …, and that is not judged for this hive':
        "Nobody wrote it down for this hive, which is no mistake. Look, and fill the cell; write none for none.",
      'contract … gives no fee: give "base fee" or the grades\' own ("grade 1 fee") in a Terms table':
        "There is nothing to pay by. Fill base fee, or a fee for each grade.",
      'contract … gives no fee for … and one for … below it: give "grade … fee"':
        "A better grade would be paid nothing. Fill its fee.",
      'contract … does not say of what fee its deposit is a part: give "base fee", or "average frames" that a grade pays for, or leave "deposit" out':
        "The deposit is a part of what a hive at the average would be paid, and no such fee is given.",
      'contract "…" asks no average of a lot':
        "Without average frames there is no chance to reach it. Fill that term, or ask LOT instead.",
    },
  },
  {
    id: "sheet",
    title: "The yard sheet",
    about: "A sheet that is given with its headings: see [the yard sheet](yard-sheet.md).",
    cures: {
      "the first row needs a heading such as …":
        "No column is known by its heading. Give the sheet from its heading row on, and head the column as the sentence says.",
      "the heading … may or may not hold …: rename it, or leave its column out":
        "A word of the heading is not known, and the column decides grades. Rename it, or give the sheet without it.",
      '… makes several rows of a hive, as row … is: write each hive in one row, with a column a box such as "Bees top box" and "Bees bottom box"':
        "Each row would be graded as a hive of its own. Give each box its column, and each hive one row.",
      'contract … asks for brood, and the sheet has it by stage, …: add a column "Brood" of all stages together; a comb that holds two of them is one comb':
        "Frames of open and of capped brood are added where they are full frames. Combs that hold some are not: one may hold both. So the sheet has to say the sum.",
      "the headings stand in two rows, … over …: write them in one row, …":
        "A sheet has one row of headings. Write the box into the heading above it, for each box, and take the second row out.",
      "… stands beside … and names no box: head a box by its place, such as …, a total …, and what is not to be added …":
        "Columns of one kind are added up, and so each must be of its own box. Where it is a box, say which in its heading; where it is the total of the boxes or another look at them, head it as the sentence says, and it is left out.",
      "… is the sum of … in the rows above row …, and not in it: correct the row, or head the column …":
        "The column is a total of the boxes but for that row. Look there for a slip, in the total or in a box.",
      "… beside … is another look at the same hives, and looks are not added up: leave out one, or head it …":
        "Two columns are of the same box, or were written at different times. Head the one that does not count as the sentence says.",
      "… is the sum of … in every row: if it is their total, head it …":
        "Its heading names a box, and its figures are the total of the others. Head it as the total, or look whether its figures are those of the box.",
      "the heading … may or may not tell of …: rename it, or leave its column out":
        "A word of the heading is not known, and the column decides an action. Rename it, or give the sheet without it.",
      'contract … counts seams, and the sheet counts combs, …: a cluster count is made of "Seams above" and "Seams below"':
        "Count seams from above and below and head their columns so; or set another comb rule, where the contract counts combs.",
      "the sheet counts seams, and contract … does not: its comb rule is …":
        "Set the comb rule to cluster count where the contract counts seams; else count combs.",
      "blank or 0, and the look from the other side is not: write none where no bees were seen, or, where nobody looked, the count of the one look in both":
        "The two looks are averaged, and a blank would halve the hive. Write none where no bees were seen from that side; where only one side was looked at, write its count in both.",
      "… has … columns, and contract … counts seams: give one column with each hive's cluster count, as SEAMS makes it of the looks from above and below":
        "Two columns could be two boxes or the two looks. SEAMS(above, below) gives one figure a hive; YARD_COLUMNS and LOT take both looks by their headings, Seams above and Seams below.",
      "seams are counted from above in … and from below in …: give both for each box":
        "Each box needs a column of both looks.",
      "the heading … may be the weight of the whole hive: head it Stores, with what the hive weighs over its tare":
        "Stores are what is over the weight of the empty hive: STORES works them out. Rename the heading, or leave the column out.",
      'the heading … is in …, and the term "stores unit" says …':
        "Read so, stores would be more than doubled or less than halved. Set the term to what the column is in.",
      "… counts and no hive id: give each hive its number, or write Total where it is a sum":
        "Every hive that was opened needs its name or number. A sum or an average under the hives is told by a word such as Total or Average before it.",
      "… no lot: write it in every row":
        "A lot written once for several rows says only of the first that it is in it. Fill the lot down to the last hive of it.",
      "the column … holds several lots (…): say which one, or give that column another heading where all of it is one lot":
        "Each lot is settled by itself. Give the lot's name, or head the column otherwise where the whole sheet is settled as one.",
      "blank, and … is not: write none where there are no bees, dead for a dead-out, or not opened":
        "The hive was opened, or its brood or queen judged, or its note or its own date says that it was looked at, and its bees are blank: fill the bees in, or say what the blank means.",
      "no, and … is not blank: write yes where the hive was opened, and no bees where nobody looked":
        "The row says that the hive was not opened, and has bees all the same. Correct the one or the other.",
      "… of … hives have 0 bees, and their cells may be blank: write none or dead where there are no bees, and not opened where nobody looked":
        "Some Excels hand a blank cell on as 0. Write the word into one cell, and fill it down the others.",
      '… stands where a figure, "light" or "ok" was expected':
        "Stores are judged in frames or by weight; light, low or feed, and ok, good or heavy, say no more than whether to feed.",
      "lot … is asked for, and the sheet has no lot column":
        "Head the column of lots Lot, or leave the lot out to take the whole sheet.",
      "no opened hive stands in the lot …":
        "The lot is spelled otherwise in the sheet, or none of its hives was opened.",
      "hive … stands twice…: give each of its looks its own date, so that the later one counts":
        "Fill the date column for both rows with two different days, or delete the look that does not count. Where dates are text, set the term dates written.",
      "hive … has no pallet, and the contract opens whole pallets":
        "How sure an average is hangs on the pallets. Fill the pallet column, or set opened by to hives.",
      "hive …: … is asked for and is not judged":
        "Nobody wrote it down for this hive, and the lot hangs on it. Fill the cell; write none for none.",
    },
  },
  {
    id: "lots",
    title: "Lots",
    about: "The opened hives of a lot, and how many it has.",
    cures: {
      "no hive is opened: give the yard sheet's rows":
        "The sheet has headings and no hive under them.",
      "a lot of … hives: give a whole number": "Give all hives of the lot, opened or not.",
      "a lot of … cannot have … opened":
        "The size is less than the hives opened. Give all hives of the lot, opened or not.",
      "a lot of … cannot have … in the sheet: give all of its hives, or write gone where one is no longer in it":
        "The size is less than the hives that stand in the sheet for the lot, opened or not.",
      "a confidence of … %: give one over 0 and under 100, such as 95": "Write 95 for 95 %.",
    },
  },
  {
    id: "brood",
    title: "Brood and its clock",
    about: "",
    cures: {
      "… is no stage of a …: its stages are …":
        "Write one of the stages of the sentence, in one cell alone.",
      '… stands where "worker", "drone" or "queen" was expected': "Write the caste so.",
      "brood of … is more than fits in … of comb":
        "There is more brood than comb: often combs with brood are given without their cover, or brood in cells as frames. Give brood_cover, or say the unit.",
    },
  },
  {
    id: "own",
    title: "Of one function",
    about: "",
    cures: {
      "there is capped brood, and the oldest stage is said to be …":
        "The amounts contradict the stage. Correct the one that is wrong.",
      "there is open brood, and the oldest stage is said to be eggs":
        "The amounts contradict the stage. Correct the one that is wrong.",
      "the oldest stage is full: nothing shows how long before":
        "As many days' brood stands in the oldest stage as it can hold, so laying may have begun at any time before. Not a mistake: the latest date stands.",
      "emerging brood does not show how long before it laying began":
        "Emerging brood says only that laying began that long ago or longer. Not a mistake: the latest date stands.",
      'first: "…" has no judged hive; lots with some: …':
        "Give a lot that the sentence lists, spelled so.",
      "row … has a stage and no date": "Fill the date of that row.",
      "cover goes with the counts of boxes, and the columns are …":
        "Percents of combs, cells and areas say their cover themselves. Leave cover out.",
      "… of brood …":
        "Full frames hang on how much of the combs is brood, and nobody wrote it. Fill the cover, or count combs.",
      "… cells are more than one side of the frame (…) holds: …":
        "Cells of one side are read. Give each side by itself, or another frame or caste.",
      "width: left out, and a patch in … needs it": "Give the patch's width beside its length.",
      "width: a grid in … is one figure, how many of them the patch fills":
        "Leave width out, or measure in in or cm.",
      "the width is blank": "Fill the width of that row.",
      "a patch of … cm2 is more than one side of the frame (…) holds: … cm2":
        "Often inches given as centimetres, or another frame. Look at the unit and the frame.",
      "a lot without opened hives": "Every lot that is compared needs hives with figures.",
      "row … has frames and no lot": "Fill the lot of that row.",
      "the next grade asks for brood, and that is not judged for this hive":
        "Frames short are known all the same. Not a mistake: look, and fill the brood.",
      "two lots or more with opened hives are needed to compare": "One lot alone is told by LOT.",
      "… stands where degrees … were expected, as a number":
        "Write the temperature as a number alone.",
      "… … is no temperature of the air: is it in another unit?": "Say the unit, C or F.",
      "… stands where an hour from 0 to 24 or a time was expected": "Write 13 or 13:30.",
      "… may be at night or after noon: write … am, or …":
        "A small hour may be meant after noon. Write it on the clock of 24 hours, or with am.",
      "drop … takes …, which whole pallets of … do not make":
        "Give the drop a size that whole pallets make, or on_pallet as 1 to move single hives.",
      "the drops hold …, and there are …":
        "Sizes of the drops and hives to place must come to the same. Correct one of them.",
      "the drops hold …, and there are …, not all of them full":
        "Pallets that are not full take a drop's place all the same. Give the drops so many pallets.",
      "too many ways to keep the lots apart: give fewer drops at a time":
        "Place part of the drops in one call and the rest in another.",
      "no way of giving these drops to single lots has room for …":
        "With lots kept apart, no drops add up to that lot. Change the drops' sizes, or let lots mix.",
      "lots: no lot is named: name some, or leave it out": "Every cell given as lots is blank.",
      "sizes: no drop is given": "Give the number of hives of each drop.",
      "names: two drops are named …": "Give each drop a name of its own.",
      "… stands where a whole number of hives was expected": "Write a whole number.",
      "… stands where a number over 0 was expected": "Write a number over 0.",
      'the sheet has no pallet column: give one headed "Pallet", or 1 as on_pallet to move single hives':
        "Hives are moved by pallets, and the sheet does not say which stand together.",
      "hive … of row … has no lot": "Fill the lot of that row.",
      "hive … of row … has no pallet": "Fill the pallet of that row, or give on_pallet as 1.",
      "lots: left out, and the sheet has several: say whose the lot_sizes are":
        "Give the lots' names in the order of their sizes.",
      "lot_sizes: one number was expected for the one lot": "Give one size.",
      "no opened hive stands in …, so its average is not known":
        "Open some of its hives, or leave the lot out.",
      "… stands twice in lots": "Give each lot once.",
      "… has … listed, more than its size of …": "Give the lot's hives in all, opened or not.",
      "pallet … holds … hives, and not …":
        "More hives are listed on that pallet than a pallet holds. Correct the pallet column, or on_pallet.",
      "… has no opened hive, so its average is not known":
        "Open some of its hives, or leave the lot out.",
      "give capped brood, open brood or eggs": "Give at least one of the three.",
      "target and bees are both given: give a target, or bees and days":
        "Feed to a target of stores, or for so many days of so many bees, and not for both.",
      "brood: given without bees and days": "Give bees and days too, or leave brood out.",
      "give: … is given in …": "That feed is measured in the units of the sentence.",
      "days: given without bees": "Give the bees too, or leave days out.",
      "days: left out, and bees need it": "Say for how many days the bees are to be fed.",
      "the target is blank: write none for none": "Fill the target of that row.",
      "bees is blank, and the need hangs on them":
        "Fill the bees of that row; write none for none.",
      "a figure has no upper end, so neither has the feed":
        "A figure such as 12+ has no high end. Ask for the middle or the low end, or write a range.",
      "…: the date lies … before the hive was looked at":
        "A forecast goes forward. Give a date after the inspection.",
      "… stands where … or a percent a day from over 0 to 50 was expected":
        "season takes one of the words, or the adults that die in a day, in percent, such as 5.",
      '… stands where "today", "none" or eggs a day up to 5,000 was expected':
        "laying is the eggs that one hive lays a day, or today for what today's eggs show, or none.",
      '… days ahead bees come of eggs that are not laid yet: say by laying that it goes on as "today", or how many eggs a day, or "none"':
        "Worker brood takes 21 days: further ahead the bees hang on how the queens go on laying. Give laying, or a day within 21 days.",
      "the date is blank: …": "Fill the date that the sentence names.",
      "seen is blank, and the forecast begins there": "Give the date of the inspection.",
      "frames: no hive is opened": "Give rows with figures.",
      "on is blank: give a date to forecast": "Give at least one date.",
      "no hive is forecast to reach the minimum":
        "By that day none would count in the average. Not a mistake of the sheet: ask for a day that is nearer.",
      "hive … has no date that can be one day, and the forecast begins there":
        "Fill the date column; where dates are text, set the term dates written.",
      "the date lies … before hive … was looked at":
        "A forecast goes forward. Give a date after the last inspection.",
      'hive …: no brood is judged: add a column "Brood" of all stages together':
        "A lot is forecast from all the brood of its hives, in full frames. Where it stands by stage, add it up.",
      "hive …: brood is not known in full frames: combs need their cover":
        "Fill the brood's cover, or write full frames.",
      "brood is not judged: give it, or write none where there is none":
        "The forecast hangs on the brood. Not a mistake: look, and fill the cell.",
      "… are combs, and their cover …": "Combs with brood need their cover in percent. Fill it.",
      "give the cells of eggs, of open or of capped brood": "Give at least one of the three.",
      "no brood, so it has no drone share": "Not a mistake: without brood there is no share.",
      "worker is blank, and a share needs it: write none for none":
        "Fill the worker brood; write none for none.",
      "no rate is published here for …: give …, or a rate of your own":
        "Give one of the crops of the sentence, or hives_an_area.",
      "… how many hives: give a crop, hives_an_area, or frames_an_area with frames_a_hive":
        "Give one of the three, and one alone.",
      "frames_a_hive: given without frames_an_area": "Give both, or neither.",
      "frames_a_hive: left out, and frames_an_area needs it":
        "Give how many frames of bees a hive has.",
      "the crop is blank, and the rate hangs on it": "Fill the crop of that row.",
      "hives: … is no whole number": "Write a whole number of hives.",
      "…: left out, and … is given: weight needs both": "Give both, or neither.",
      "a pallet of … weighs …, and the payload is …":
        "Not one pallet may be loaded. Look at the units of both weights.",
      "delivered: the contract gives no fee to settle":
        "Without fees nothing is settled. Leave delivered out, or fill the fees.",
      "delivered: give lot_size too, the hives that were agreed":
        "Give the hives agreed as lot_size.",
      "a delivery of … hives: give a whole number": "Give the hives that came.",
      "a delivery of … cannot have … opened":
        "Fewer came than were opened. Correct one of the numbers.",
      "… hives delivered, and … agreed: the contract does not say what more hives are paid":
        "More came than were agreed, and the terms say nothing of that. Agree on it, and give the hives that are paid.",
      "… is no column that can be asked for: …": "Ask for one of the columns of the sentence.",
      '… stands where "solid", "spotty" or the percent of cells filled was expected':
        "Write the brood's pattern so.",
      'part "all" reads one column, and counts has …': "Give one column, or another part.",
      "below has … and above has …: give one a box": "Each box is looked at from both sides.",
      "the tare is blank, and the stores are what is over it": "Fill the weight of the empty hive.",
      "tare: left out, and stores in … are a whole hive's weight less its tare":
        "Give what the hive weighs empty, as tare.",
      "tare: given for frames, which have none":
        "Leave tare out, or say that stores are counted in lb or kg.",
      "… stands where stores were expected": "Write an amount; write none for none.",
      "… is less than the tare of …: stores cannot be negative":
        "The hive weighs less than it does empty. Look at both weights and their unit.",
      "levels of … and … are too close to tell apart":
        "Give a good and a bad level that lie further apart.",
      "the good level … is not over the bad level …": "Give the higher level as good.",
      "pallet … stands in two places: give the hives in the order opened":
        "Hives of a pallet stand together, in the order in which they were opened.",
      "a spread of …: give one over 0": "Give how much hives differ, in frames.",
      "the most to open is …: give a whole number from 2 on": "Give such a number.",
      "pallets: the hive of row … has none": "Fill the pallet of that row.",
      "size: … hives: give a whole number": "Give a whole number.",
      "size: a lot of … cannot have … opened": "The lot's size is less than the hives opened.",
      "… stands where a chance was expected, 0.1 % to under 50 %: 5 or 0.05 for 5 %":
        "Give the chance of a wrong verdict that you accept.",
      "fewer than two … count in the average, and one shows no spread":
        "Open more hives. Not a mistake: of one hive nothing is known of the others.",
      "the observers' error alone is … frames either way at … %: no number of hives brings the margin to …":
        "Opening more hives does not help against how differently people judge. Ask for a wider margin, or let one person judge all.",
      "no spread to go by: give it, the yard sheet, or a contract that asks an average":
        "Give how much hives differ, or a sheet that shows it.",
      "no opened hive counts in the average":
        "Every hive opened is under the minimum. Not a mistake: give a spread of your own.",
      "lot_size: … is no whole number of hives": "Give a whole number.",
      "hives that both judged: …, and two are needed, better twenty":
        "Let both judge the same hives, and fill both columns.",
      "both saw no bees in any hive": "Give hives with bees in them.",
      "bees in one hive alone, and two are needed, better twenty": "Give more hives with bees.",
      "no hive is counted in full": "Fill the full counts of some of the hives.",
      "the quick look saw no bees in the hives that were counted in full":
        "Fill the quick look of those hives.",
      "row … is counted in full and has no quick look: write none where it saw no bees":
        "Fill the quick look of that row.",
      "quick: no hive is looked at": "Give rows with figures.",
      "… … stands twice: give each once": "Delete one of the two from the list.",
      "… …s: give a whole number from 1 on": "Give how many to draw, as a whole number.",
      "a seed is blank: each party gives a word":
        "Both parties give a word, before either is known to the other.",
      "the list has …, fewer than the … asked for":
        "Give the list of the whole lot, or draw fewer.",
      "pallets: hive … of row … has none": "Fill the pallet of that row.",
    },
  },
];

/** Every sentence with its cure. */
export const CURES = new Map(TOPICS.flatMap(({ cures }) => Object.entries(cures)));
