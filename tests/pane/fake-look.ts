import { address } from "../../src/pane/address.js";
import type { Place } from "../../src/pane/port.js";
import { OfficeError } from "./fake-office.js";

/** What was set on something of Excel's, by its path: `A1:H1 format/font/bold`. */
export type Looks = Map<string, unknown>;

const RANGE = `
  format/columnWidth format/rowHeight format/horizontalAlignment format/verticalAlignment
  format/wrapText format/indentLevel format/font/name format/font/size format/font/bold
  format/font/color format/borders/EdgeBottom/style format/borders/EdgeBottom/weight
  format/borders/EdgeBottom/color format/borders/InsideHorizontal/style
  format/borders/InsideHorizontal/weight format/borders/InsideHorizontal/color`;
const PAGE = `
  orientation paperSize zoom centerHorizontally leftMargin rightMargin topMargin bottomMargin
  headerMargin footerMargin setPrintArea setPrintTitleRows
  headersFooters/defaultForAllPages/leftFooter headersFooters/defaultForAllPages/rightFooter`;
const CHART = `
  setPosition title/visible legend/position axes/valueAxis/minimum axes/valueAxis/numberFormat
  axes/valueAxis/title/text setValues setXAxisValues gapWidth chartType markerStyle
  format/fill/setSolidColor format/line/color format/line/weight format/line/lineStyle`;

/** Members that Excel has, of those that the pane sets. */
export const KNOWN = { RANGE: words(RANGE), PAGE: words(PAGE), CHART: words(CHART) };

/** Takes what is set and called on an object of Excel's, and refuses what Excel does not have there. */
export function recorder(
  known: ReadonlySet<string>,
  note: (path: string, value: unknown) => void,
  own: Readonly<Record<string, unknown>> = {},
  path = "",
): object {
  const member = (key: string) => `${path}${key}`;
  const check = (key: string): string => {
    if (!known.has(member(key))) throw new OfficeError("ApiNotFound");
    return member(key);
  };
  return new Proxy(own as Record<string, unknown>, {
    get(target, key: string) {
      if (key in target) return target[key];
      if (key === "getItem") return (item: string) => recorder(known, note, {}, member(`${item}/`));
      if (key.startsWith("set")) {
        return (...args: unknown[]) => note(check(key), args.map(named).join(" "));
      }
      return recorder(known, note, {}, member(`${key}/`));
    },
    set(_, key: string, value) {
      note(check(key), value);
      return true;
    },
  });
}

/** Charts of a sheet, whose looks begin with `chart 0`. */
export function charts(looks: Looks): object {
  let count = 0;
  return {
    add(type: string, source: { readonly place: Place }, by: string) {
      const chart = `chart ${count++}`;
      looks.set(chart, `${type} ${named(source)} ${by}`);
      let all = 1;
      const series = (n: number) =>
        recorder(KNOWN.CHART, (path, value) => looks.set(`${chart} series ${n} ${path}`, value));
      const own = {
        series: {
          getItemAt: (n: number) => series(n),
          add(name: string) {
            looks.set(`${chart} series ${all} name`, name);
            return series(all++);
          },
        },
      };
      return recorder(KNOWN.CHART, (path, value) => looks.set(`${chart} ${path}`, value), own);
    },
  };
}

function named(arg: unknown): string {
  return typeof arg === "object" && arg !== null && "place" in arg
    ? address(arg.place as Place)
    : String(arg);
}

function words(text: string): ReadonlySet<string> {
  return new Set(text.trim().split(/\s+/));
}
