import { describe, expect, it } from "vitest";
import { excelFile, formula, sheetData, type FileParts } from "./excel-file.js";
import { folder } from "./folder.js";

const HEADINGS = { A1: "Hive", B1: "Bees", A2: "1", B2: 7 };
const ns = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"';

async function lost(more: Partial<FileParts>, inside = "", after = ""): Promise<string[]> {
  const yard = sheetData({ ...HEADINGS, D1: formula("COMB.SOURCES()", "constant") });
  const file = excelFile({ sheets: { Yard: inside + yard + after, Plan: sheetData({ A1: 1 }) }, ...more });
  const test = await folder({ "yard.xlsx": file });
  const { code, out, err } = await test.run("grade", "yard.xlsx");
  expect([code, err]).toEqual([0, ""]);
  const [, list] = out.split("Not carried over into the copy:\n");
  return list?.split("\n").filter((line) => line.startsWith("  ")).map((line) => line.trim()) ?? [];
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
    const test = await folder({ "yard.xlsx": excelFile({ sheets: { Yard: sheetData({ ...HEADINGS, D2: formula("COMB.SOURCES()"), F2: `>${table}`, F3: 6 }) } }) });
    const { out } = await test.run("grade", "yard.xlsx");
    expect(out).toContain('what-if table (its values were kept) on sheet "Yard"');
    const sheet = (await test.open("yard-graded.xlsx")).getWorksheet("Yard")!;
    expect([sheet.getCell("F2").value, sheet.getCell("F3").value]).toEqual([5, 6]);
  });
  it("x", async () => {
    const C = "http://schemas.openxmlformats.org/drawingml/2006/chart", A="http://schemas.openxmlformats.org/drawingml/2006/main", X="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing", R="http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    const anchor = (x: string) => `<xdr:twoCellAnchor><xdr:from><xdr:col>5</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>5</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from><xdr:to><xdr:col>9</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>9</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:to>${x}<xdr:clientData/></xdr:twoCellAnchor>`;
    const sp = `<xdr:sp macro="" textlink=""><xdr:nvSpPr><xdr:cNvPr id="2" name="Box"/><xdr:cNvSpPr/></xdr:nvSpPr><xdr:spPr><a:prstGeom prst="rect"><a:avLst/></a:prstGeom></xdr:spPr><xdr:txBody><a:bodyPr/><a:p><a:r><a:t>hello</a:t></a:r></a:p></xdr:txBody></xdr:sp>`;
    const pic = `<xdr:pic><xdr:nvPicPr><xdr:cNvPr id="3" name="P"/><xdr:cNvPicPr/></xdr:nvPicPr><xdr:blipFill><a:blip r:embed="rId2"/><a:stretch><a:fillRect/></a:stretch></xdr:blipFill><xdr:spPr><a:prstGeom prst="rect"><a:avLst/></a:prstGeom></xdr:spPr></xdr:pic>`;
    const gf = `<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="4" name="Chart"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr><xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm><a:graphic><a:graphicData uri="${C}"><c:chart xmlns:c="${C}" r:id="rId1"/></a:graphicData></a:graphic></xdr:graphicFrame>`;
    const chart = `<c:chartSpace xmlns:c="${C}" xmlns:a="${A}" xmlns:r="${R}"><c:chart><c:plotArea><c:layout/><c:barChart><c:barDir val="col"/><c:grouping val="clustered"/><c:ser><c:idx val="0"/><c:order val="0"/><c:val><c:numRef><c:f>Yard!$B$2:$B$2</c:f></c:numRef></c:val></c:ser><c:axId val="1"/><c:axId val="2"/></c:barChart><c:catAx><c:axId val="1"/><c:scaling/><c:axPos val="b"/><c:crossAx val="2"/></c:catAx><c:valAx><c:axId val="2"/><c:scaling/><c:axPos val="l"/><c:crossAx val="1"/></c:valAx></c:plotArea></c:chart></c:chartSpace>`;
    const rel=(l: [string,string,string,string?][])=>`<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${l.map(([i,t,g,m])=>`<Relationship Id="${i}" Type="${R}/${t}" Target="${g}"${m?` TargetMode="${m}"`:""}/>`).join("")}</Relationships>`;
    console.log(await lost({
      parts: {
        "xl/drawings/drawing1.xml": `<xdr:wsDr xmlns:xdr="${X}" xmlns:a="${A}" xmlns:r="${R}">${anchor(sp)}${anchor(pic)}${anchor(gf)}</xdr:wsDr>`,
        "xl/drawings/_rels/drawing1.xml.rels": rel([["rId1","chart","../charts/chart1.xml"],["rId2","image","../media/image1.png"]]),
        "xl/charts/chart1.xml": chart, "xl/media/image1.png": "png",
        "xl/comments1.xml": `<comments ${ns}><authors><author>me</author></authors><commentList><comment ref="A2" authorId="0"><text><r><t>hi</t></r></text></comment></commentList></comments>`,
        "xl/drawings/vmlDrawing1.vml": `<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel"><v:shape type="#_x0000_t202"><x:ClientData ObjectType="Note"><x:Anchor>1, 15, 0, 2, 3, 15, 3, 16</x:Anchor><x:Row>1</x:Row><x:Column>0</x:Column></x:ClientData></v:shape></xml>`,
        "xl/externalLinks/externalLink1.xml": `<externalLink ${ns}><externalBook r:id="rId1"><sheetNames><sheetName val="S"/></sheetNames></externalBook></externalLink>`,
        "xl/externalLinks/_rels/externalLink1.xml.rels": rel([["rId1","externalLinkPath","other.xlsx","External"]]),
        "xl/pivotCache/pivotCacheDefinition1.xml": `<pivotCacheDefinition ${ns} r:id="rId1" refreshedBy="x" recordCount="1"><cacheSource type="worksheet"><worksheetSource ref="A1:B2" sheet="Yard"/></cacheSource><cacheFields count="2"><cacheField name="Hive"><sharedItems count="1"><s v="1"/></sharedItems></cacheField><cacheField name="Bees"><sharedItems containsSemiMixedTypes="0" containsString="0" containsNumber="1" minValue="7" maxValue="7"/></cacheField></cacheFields></pivotCacheDefinition>`,
        "xl/pivotCache/_rels/pivotCacheDefinition1.xml.rels": rel([["rId1","pivotCacheRecords","pivotCacheRecords1.xml"]]),
        "xl/pivotCache/pivotCacheRecords1.xml": `<pivotCacheRecords ${ns} count="1"><r><x v="0"/><n v="7"/></r></pivotCacheRecords>`,
        "xl/pivotTables/pivotTable1.xml": `<pivotTableDefinition ${ns} name="P" cacheId="1" dataCaption="x"><location ref="J1:K3" firstHeaderRow="1" firstDataRow="1" firstDataCol="1"/><pivotFields count="2"><pivotField axis="axisRow" showAll="0"><items count="2"><item x="0"/><item t="default"/></items></pivotField><pivotField dataField="1" showAll="0"/></pivotFields><rowFields count="1"><field x="0"/></rowFields><rowItems count="2"><i><x/></i><i t="grand"><x/></i></rowItems><colItems count="1"><i/></colItems><dataFields count="1"><dataField name="Sum" fld="1"/></dataFields></pivotTableDefinition>`,
        "xl/pivotTables/_rels/pivotTable1.xml.rels": rel([["rId1","pivotCacheDefinition","../pivotCache/pivotCacheDefinition1.xml"]]),
      },
      types: { "/xl/drawings/drawing1.xml":"application/vnd.openxmlformats-officedocument.drawing+xml","/xl/charts/chart1.xml":"application/vnd.openxmlformats-officedocument.drawingml.chart+xml","/xl/comments1.xml":"application/vnd.openxmlformats-officedocument.spreadsheetml.comments+xml"},
      sheetRelations: [{id:"rIdD",type:"drawing",target:"../drawings/drawing1.xml"},{id:"rIdC",type:"comments",target:"../comments1.xml"},{id:"rIdV",type:"vmlDrawing",target:"../drawings/vmlDrawing1.vml"},{id:"rIdPv",type:"pivotTable",target:"../pivotTables/pivotTable1.xml"}],
      workbookRelations: [{id:"rIdE",type:"externalLink",target:"externalLinks/externalLink1.xml"},{id:"rIdPc",type:"pivotCacheDefinition",target:"pivotCache/pivotCacheDefinition1.xml"}],
    }, "", `<drawing r:id="rIdD"/><legacyDrawing r:id="rIdV"/><extLst><ext uri="{05C60535-1F16-4fd2-B633-F4F36F0B64E0}" xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main"><x14:sparklineGroups xmlns:xm="http://schemas.microsoft.com/office/excel/2006/main"><x14:sparklineGroup><x14:sparklines><x14:sparkline><xm:f>Yard!B2:B2</xm:f><xm:sqref>H2</xm:sqref></x14:sparkline></x14:sparklines></x14:sparklineGroup></x14:sparklineGroups></ext></extLst>`));
  });
});
