import { describe, expect, it } from "vitest";
import { excelFile, formula, OFFICE, relations, sheetData, type FileParts } from "./excel-file.js";
import { folder } from "./folder.js";

const HEADINGS = { A1: "Hive", B1: "Bees", A2: "1", B2: 7 };

async function lost(more: Partial<FileParts>, inside = "", after = ""): Promise<string[]> {
  const yard = sheetData({ ...HEADINGS, D1: formula("COMB.SOURCES()", "constant") });
  const file = excelFile({
    sheets: { Yard: inside + yard + after, Plan: sheetData({ A1: 1 }) },
    ...more,
  });
  const test = await folder({ "yard.xlsx": file });
  const { code, out, err } = await test.run("grade", "yard.xlsx");
  expect([code, err]).toEqual([0, ""]);
  const [, list] = out.split("Not carried over into the copy:\n");
  return (
    list
      ?.split("\n")
      .filter((line) => line.startsWith("  "))
      .map((line) => line.trim()) ?? []
  );
}

describe("what the copy does not hold is named", () => {
  it("is nothing for a plain workbook", async () => {
    expect(await lost({})).toEqual([]);
  });

  it("names the parts that are left behind, with their sheet where it is known", async () => {
    const file: Partial<FileParts> = {
      parts: {
        "customXml/item1.xml": "<x/>",
        "docProps/custom.xml": "<x/>",
        "xl/printerSettings/printerSettings1.bin": "x",
        "xl/webextensions/webextension1.xml": "<x/>",
        "xl/connections.xml": "<x/>",
        "_xmlsignatures/sig1.xml": "<x/>",
      },
      sheetRelations: [
        { id: "rIdP", type: "printerSettings", target: "../printerSettings/printerSettings1.bin" },
      ],
    };
    expect(await lost(file)).toEqual([
      "digital signature",
      "custom XML part",
      "list of custom properties",
      "list of data connections",
      'printer setting on sheet "Yard"',
      "setting of an add-in",
    ]);
  });

  it("names what is left behind of a sheet", async () => {
    const after =
      '<protectedRanges><protectedRange sqref="A1" name="x"/></protectedRanges>' +
      '<scenarios><scenario name="s" count="1"><inputCells r="A1" val="1"/></scenario></scenarios>' +
      '<autoFilter ref="A1:B2"><filterColumn colId="0"><filters><filter val="1"/></filters></filterColumn></autoFilter>';
    expect(await lost({}, "", after)).toEqual([
      'range left open to edit on sheet "Yard"',
      'scenario on sheet "Yard"',
      'filter on sheet "Yard"',
    ]);
  });

  it("says nothing of what came along", async () => {
    const after =
      '<sheetProtection sheet="1" password="ABCD"/><mergeCells count="1"><mergeCell ref="F5:G5"/></mergeCells>' +
      '<conditionalFormatting sqref="B2"><cfRule type="expression" priority="1"><formula>B2&gt;5</formula></cfRule></conditionalFormatting>' +
      '<dataValidations count="1"><dataValidation type="list" sqref="B2:B9"><formula1>"1,2"</formula1></dataValidation></dataValidations>' +
      '<hyperlinks><hyperlink ref="A2" location="Plan!A1" display="x"/></hyperlinks>' +
      '<rowBreaks count="1" manualBreakCount="1"><brk id="1" max="16383" man="1"/></rowBreaks>';
    const names =
      '<definedName name="_xlnm.Print_Area" localSheetId="0">Yard!$A$1:$B$2</definedName>' +
      '<definedName name="First">OFFSET(Yard!$A$1,0,0,2,1)</definedName>';
    expect(await lost({ names }, "", after)).toEqual([]);
  });

  it("keeps the values of a what-if table", async () => {
    const table = '<f t="dataTable" ref="F2:F3" dt2D="0" dtr="0" r1="B2"/><v>5</v>';
    const test = await folder({
      "yard.xlsx": excelFile({
        sheets: {
          Yard: sheetData({ ...HEADINGS, D2: formula("COMB.SOURCES()"), F2: `>${table}`, F3: 6 }),
        },
      }),
    });
    const { out } = await test.run("grade", "yard.xlsx");
    expect(out).toContain('what-if table (its values were kept) on sheet "Yard"');
    const sheet = (await test.open("yard-graded.xlsx")).getWorksheet("Yard")!;
    expect([sheet.getCell("F2").value, sheet.getCell("F3").value]).toEqual([5, 6]);
  });

  it("tells shapes and sparklines from the chart beside them", async () => {
    const file: Partial<FileParts> = {
      parts: {
        "xl/drawings/drawing1.xml": `<xdr:wsDr xmlns:xdr="${DRAWING}/spreadsheetDrawing" xmlns:a="${DRAWING}/main" xmlns:r="${OFFICE}">${anchor(SHAPE)}${anchor(FRAME)}</xdr:wsDr>`,
        "xl/drawings/_rels/drawing1.xml.rels": relations([
          { id: "rId1", type: "chart", target: "../charts/chart1.xml" },
        ]),
        "xl/charts/chart1.xml": CHART,
      },
      types: {
        "/xl/drawings/drawing1.xml": "application/vnd.openxmlformats-officedocument.drawing+xml",
        "/xl/charts/chart1.xml":
          "application/vnd.openxmlformats-officedocument.drawingml.chart+xml",
      },
      sheetRelations: [{ id: "rIdD", type: "drawing", target: "../drawings/drawing1.xml" }],
    };
    expect(await lost(file, "", `<drawing r:id="rIdD"/>${SPARKLINE}`)).toEqual([
      'shape or text box on sheet "Yard"',
      'group of sparklines on sheet "Yard"',
    ]);
  });
});

const DRAWING = "http://schemas.openxmlformats.org/drawingml/2006";
const X14 = "http://schemas.microsoft.com/office/spreadsheetml/2009/9/main";

const corner = (tag: string, place: number): string =>
  `<xdr:${tag}><xdr:col>${place}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${place}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:${tag}>`;
const anchor = (what: string): string =>
  `<xdr:twoCellAnchor>${corner("from", 5)}${corner("to", 9)}${what}<xdr:clientData/></xdr:twoCellAnchor>`;

const SHAPE =
  '<xdr:sp macro="" textlink=""><xdr:nvSpPr><xdr:cNvPr id="2" name="Box"/><xdr:cNvSpPr/></xdr:nvSpPr>' +
  '<xdr:spPr><a:prstGeom prst="rect"><a:avLst/></a:prstGeom></xdr:spPr></xdr:sp>';
const FRAME =
  '<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="4" name="Chart"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr>' +
  '<xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm>' +
  `<a:graphic><a:graphicData uri="${DRAWING}/chart"><c:chart xmlns:c="${DRAWING}/chart" r:id="rId1"/></a:graphicData></a:graphic></xdr:graphicFrame>`;
const CHART =
  `<c:chartSpace xmlns:c="${DRAWING}/chart" xmlns:a="${DRAWING}/main"><c:chart><c:plotArea><c:layout/>` +
  '<c:barChart><c:barDir val="col"/><c:grouping val="clustered"/><c:ser><c:idx val="0"/><c:order val="0"/>' +
  "<c:val><c:numRef><c:f>Yard!$B$2:$B$2</c:f></c:numRef></c:val></c:ser>" +
  '<c:axId val="1"/><c:axId val="2"/></c:barChart>' +
  '<c:catAx><c:axId val="1"/><c:scaling/><c:axPos val="b"/><c:crossAx val="2"/></c:catAx>' +
  '<c:valAx><c:axId val="2"/><c:scaling/><c:axPos val="l"/><c:crossAx val="1"/></c:valAx>' +
  "</c:plotArea></c:chart></c:chartSpace>";
const SPARKLINE =
  `<extLst><ext uri="{05C60535-1F16-4fd2-B633-F4F36F0B64E0}" xmlns:x14="${X14}">` +
  '<x14:sparklineGroups xmlns:xm="http://schemas.microsoft.com/office/excel/2006/main"><x14:sparklineGroup><x14:sparklines>' +
  "<x14:sparkline><xm:f>Yard!B2:B2</xm:f><xm:sqref>H2</xm:sqref></x14:sparkline></x14:sparklines></x14:sparklineGroup></x14:sparklineGroups></ext></extLst>";
