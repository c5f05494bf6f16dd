import { excelWorkbook } from "../../src/pane/excel.js";
import { address } from "../../src/pane/address.js";
import { FakeExcel } from "./fake-excel.js";
import { MemoryWorkbook } from "./memory.js";
import { contract } from "./port-contract.js";

contract("a workbook in memory", (sheets, named) => {
  const workbook = new MemoryWorkbook(sheets, named);
  return {
    workbook,
    type: (...args) => workbook.type(...args),
    protect: (sheet) => workbook.protect(sheet),
    merge: (place) => workbook.merge(place),
    snapshot: () => workbook.snapshot(),
    choose: (place) => {
      workbook.activePlace = place;
    },
  };
});

contract("a workbook in Excel", (sheets, named) => {
  const excel = new FakeExcel(sheets, named);
  excel.install();
  return {
    workbook: excelWorkbook(),
    type: (...args) => excel.type(...args),
    protect: (sheet) => excel.protect(sheet),
    merge: (place) => excel.merge(place),
    snapshot: () => excel.snapshot(),
    choose: (place) => {
      excel.activeAddress = address(place);
    },
  };
});
