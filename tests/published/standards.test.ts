import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { STANDARDS } from "../../src/core/standards.js";
import { comb, one } from "../functions/sheet.js";

interface Published {
  readonly name: string;
  readonly average?: number;
  readonly minimum: number;
  readonly brood?: number;
  readonly counted?: string;
  readonly queen?: boolean;
  readonly stores?: number;
  readonly remark: RegExp;
}

/** The published figures, a range such as 6 to 8 at its low end; read unless the row says else. */
const PUBLISHED: readonly Published[] = [
  // Almond Board of California, Honey Bee Best Management Practices, p. 7
  { name: "Almond Board of California", average: 8, minimum: 6, remark: /^/ },
  // Univ. of California Extension (Niederholzer): at least 8, brood 1 to 2, laying queen
  {
    name: "California Extension, strong hive",
    minimum: 8,
    brood: 1,
    counted: "combs",
    queen: true,
    remark: /1 to 2/,
  },
  // California Beekeepers Assoc. 1968, in California Agriculture 24(8):5-6, 1970: 4 fully covered
  { name: "California Beekeepers 1968", minimum: 4, queen: true, remark: /fully covered/ },
  // Rutgers, NJ Commercial Vegetable Recommendations 2015: cover 6 to 8, brood 4 to 6
  {
    name: "Rutgers New Jersey",
    minimum: 6,
    brood: 4,
    counted: "combs",
    queen: true,
    remark: /6 to 8.*4 to 6.*10 %/,
  },
  // Penn State (Frazier): cover 8 to 10, brood 4 to 6, two boxes, laying queen
  {
    name: "Penn State",
    minimum: 8,
    brood: 4,
    counted: "combs",
    queen: true,
    remark: /8 to 10.*4 to 6.*two boxes/,
  },
  // Univ. of Georgia: blanket 6 to 8, at least 5 combs with brood
  { name: "University of Georgia", minimum: 6, brood: 5, counted: "combs", remark: /6 to 8/ },
  // CAPA (retold): 8 deep fully covered; 5 to 6 frames holding brood, half covered; two deeps
  {
    name: "CAPA Canada",
    minimum: 8,
    brood: 5,
    counted: "combs",
    remark: /5 to 6.*half covered.*two deeps/,
  },
  // Nova Scotia Beekeepers' pollination standard: 8 and 4 full equivalents, 2 frames honey, queen
  {
    name: "Nova Scotia",
    minimum: 8,
    brood: 4,
    counted: "full frames",
    queen: true,
    stores: 2,
    remark: /honey/,
  },
  // New Brunswick: 25,000 to 30,000 bees; 25,000 / 2,400 a deep = 10.42 (worked)
  {
    name: "New Brunswick",
    minimum: 25000 / 2400,
    brood: 1,
    counted: "combs",
    queen: true,
    remark: /25,000 to 30,000/,
  },
  // New Zealand kiwifruit: 12, about 30,000 bees; 4 full frames, or 7 at 60 % (7,000 cm2)
  {
    name: "New Zealand kiwifruit",
    minimum: 12,
    brood: 4,
    counted: "full frames",
    remark: /7 at 60 % \(7,000 cm2\)/,
  },
];

const rows = new Map(comb("STANDARDS").map(([name, ...cells]) => [name, cells]));
const yes = (asked: boolean | undefined) => (asked ? "yes" : "");

describe.each(PUBLISHED)("the standard of $name", (published) => {
  const { name, average, minimum, brood, counted, queen, stores, remark } = published;
  /** A hive that has just what is asked, and what it makes of one change. */
  const hive = (frames: number, combs = brood, laying = "yes", honey = stores) => [
    one("GRADE", frames, null, name, combs, combs && 100, laying, honey),
    comb("HIVE_CHECK", frames, null, name, combs, combs && 100, laying, honey)[0],
  ];

  it("stands with the published figures", () => {
    const [a, m, b, c, q, s, said] = rows.get(name)!;
    expect([a, m, b, c, q, s]).toEqual([
      average ?? "",
      minimum,
      brood ?? "",
      counted ?? "",
      yes(queen),
      stores ?? "",
    ]);
    expect(said).toMatch(remark);
  });

  it("takes a hive that has just what is asked", () => {
    const [grade, check] = hive(minimum);
    expect(grade).toMatch(/^at (minimum|average)$/);
    expect(check).toEqual([
      "met",
      brood ? "met" : "not asked",
      queen ? "met" : "not asked",
      stores ? "met" : "not asked",
      "",
    ]);
  });

  it("turns down a hive that is half a frame short of anything it asks", () => {
    expect(hive(minimum - 0.5)[0]).toBe("no grade");
    if (brood) expect(hive(minimum, brood - 0.5)[0]).toBe("no grade");
    if (queen) expect(hive(minimum, brood, "no")[0]).toBe("no grade");
    if (stores) expect(hive(minimum, brood, "yes", stores - 0.5)[0]).toBe("no grade");
  });
});

it("lists no standard without a check against its published figures", () => {
  // California Food & Agricultural Code 29190-29195 (read) gives no number.
  const names = [...PUBLISHED.map(({ name }) => name), "California Food & Agricultural Code"];
  expect(STANDARDS.map(({ name }) => name)).toEqual(names);
});

it("says of each standard where it was found, and of CAPA's and New Brunswick's how", () => {
  // CAPA's is retold; New Brunswick's bees are worked into frames; the others were read.
  const known = [...rows.values()].slice(1).map((cells) => cells.slice(-2));
  for (const [source] of known) expect(source).toMatch(/\S/);
  const marks = known.map(([, mark]) => mark);
  expect(marks).toEqual(
    [...rows.keys()].slice(1).map((name) => {
      if (name === "CAPA Canada") return "retold";
      return name === "New Brunswick" ? "worked" : "read";
    }),
  );
});

it("grades no hive by a code that gives no number", () => {
  const grade = one("GRADE", 8, null, "California Food & Agricultural Code");
  expect(grade).toMatch(/^#VALUE! .*gives no number/);
});

it("asks for half of each comb of brood in Canada, and for nothing of the kind in Georgia", () => {
  // CAPA (retold): half covered. University of Georgia (read): combs with brood.
  expect(one("GRADE", 8, null, "CAPA Canada", 5, 50)).toBe("at minimum");
  expect(one("GRADE", 8, null, "CAPA Canada", 5, 49)).toBe("no grade");
  expect(one("GRADE", 8, null, "University of Georgia", 5, 10)).toBe("at minimum");
});

describe("the two measures of brood", () => {
  const grade = (standard: string, combs: number, cover: number) =>
    one("GRADE", 12, null, standard, combs, cover, "yes", 2);

  it("make 4.2 full frames of 7 combs at 60 %, which passes New Zealand's 4", () => {
    // 7 x 0.60 = 4.2; New Zealand kiwifruit pollination standard (read): 4 full frames, or 7 at 60 %.
    expect(one("BROOD_FRAMES", 7, 60)).toBeCloseTo(4.2, 12);
    expect(one("BROOD_FRAMES", 7, 60, "combs")).toBe(7);
    expect(grade("New Zealand kiwifruit", 7, 60)).toBe("at minimum");
    // 6 x 0.60 = 3.6.
    expect(grade("New Zealand kiwifruit", 6, 60)).toBe("no grade");
  });

  it("leave 7 combs at 60 % within 4 % of that standard's 7,000 cm2", () => {
    // 4.2 frames x 2 sides x 865 cm2 (retold) = 7,266 cm2.
    const cm2 = Number(one("BROOD_FRAMES", 7, 60)) * 2 * 865;
    expect(cm2 / 7000 - 1).toBeGreaterThan(0);
    expect(cm2 / 7000 - 1).toBeLessThan(0.04);
  });

  it("let 5 combs half covered pass where combs are counted and fail where full frames are", () => {
    // 5 combs are 5 of Georgia's and CAPA's 5, and 2.5 of Nova Scotia's and New Zealand's 4.
    expect(grade("University of Georgia", 5, 50)).toBe("at minimum");
    expect(grade("CAPA Canada", 5, 50)).toBe("at minimum");
    expect(grade("Nova Scotia", 5, 50)).toBe("no grade");
    expect(grade("New Zealand kiwifruit", 5, 50)).toBe("no grade");
  });
});

it("never presents the repealed Washington rule as a standard", () => {
  // WAC 16-602-030, repealed effective 30 June 2001 (read).
  expect(JSON.stringify(STANDARDS)).not.toMatch(/Washington|WAC/);
  const src = new URL("../../src/", import.meta.url);
  const files = readdirSync(src, { recursive: true, encoding: "utf8" });
  for (const file of files.filter((name) => /\.(ts|html)$/.test(name))) {
    const lines = readFileSync(new URL(file, src), "utf8").split("\n");
    const named = lines.filter((line) => /Washington|16-602/.test(line));
    expect(named.filter((line) => !/repealed/.test(line))).toEqual([]);
  }
});
