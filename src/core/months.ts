/**
 * The months' names in the languages whose spreadsheets turn `7-8` into `8-Jul`, `8. Juli` or
 * `08-juil.`, without accents. Croatian is left out: its lipanj (June) and srpanj (July) begin like
 * the Polish July and the Czech August.
 */
const NAMES: readonly string[] = [
  "january januar janner janvier enero gennaio janeiro januari styczen leden tammikuu ianuarie ocak январь ιανουαριου",
  "february februar fevrier febrero febbraio fevereiro februari luty unor helmikuu februarie subat февраль φεβρουαριου",
  "march marz marzo mars marco maart marzec brezen maaliskuu martie marcius marts marec mrt mrz март μαρτιου",
  "april avril abril aprile kwiecien duben huhtikuu aprilie aprilis nisan апрель απριλιου",
  "may mai mayo maggio maio mei maj kveten toukokuu mayis majus маи мая μαιου",
  "june juni juin junio giugno junho junij czerwiec cerven cvn kesakuu iunie haziran junius июнь ιουνιου",
  "july juli juillet julio luglio julho julij lipiec cervenec cvc heinakuu iulie temmuz julius июль ιουλιου",
  "august augusti aout agosto augustus avgust sierpien srpen elokuu agustos augusztus август αυγουστου",
  "september septembre septiembre settembre setembro wrzesien zari syyskuu septembrie eylul szeptember сентябрь σεπτεμβριου",
  "october oktober octobre octubre ottobre outubro pazdziernik rijen lokakuu octombrie ekim октябрь οκτωβριου",
  "november novembre noviembre novembro listopad noiembrie kasim ноябрь νοεμβριου",
  "december dezember decembre diciembre dicembre dezembro desember grudzien prosinec joulukuu decembrie aralik декабрь δεκεμβριου",
];
/** Known only whole: the first letters of the Finnish November are those of March. */
const WHOLE: Readonly<Record<string, number>> = { marras: 11, marraskuu: 11 };

const names = NAMES.map((line) => line.split(" "));

/**
 * The month, 1 to 12, of a name or of its first three letters or more, in any of the languages
 * above; null for anything else, and for beginnings that two months share.
 *
 * @example monthOf("juil.") // 7
 */
export function monthOf(word: string): number | null {
  const plain = word
    .normalize("NFD")
    .replace(/\p{M}|\.$/gu, "")
    .replaceAll("ı", "i");
  if (Object.hasOwn(WHOLE, plain)) return WHOLE[plain]!;
  if (plain.length < 3) return null;
  const whole = names.findIndex((list) => list.includes(plain));
  if (whole >= 0) return whole + 1;
  const months = names.flatMap((list, i) =>
    list.some((name) => name.startsWith(plain)) ? [i + 1] : [],
  );
  return months.length === 1 ? months[0]! : null;
}
