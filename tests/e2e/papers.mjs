// What stands on the record beside the steps: who agreed and who said no, bench checks with their
// curves, parts judged. Names, sums and readings are invented.

/** A signature as a finger draws it: strokes of x and y in thousandths of the pad's width. */
const DRAWN = [
  [80, 210, 110, 90, 150, 60, 160, 120, 140, 220, 200, 150, 240, 90, 260, 160, 300, 200, 340, 140, 380, 190, 420, 150, 470, 180],
  [520, 60, 515, 220, 600, 210, 640, 150, 660, 200, 700, 160, 730, 190, 800, 140, 900, 170],
];

const consent = (more) => ({ step: "b08", by: "M. Lind, owner", how: "here", work: ["Gear set"], declined: [], price: "", limit: "1 300 invented", stops: ["Metal chunks or a broken tooth", "A crack in the case"], excluded: "Cracks found in the case. Hidden corrosion.", initials: "", drawn: [], ...more });

export const PAPERS = [
  { "consent-signed": consent({ drawn: DRAWN }) },
  { "consent-refused-because": { step: "b26", by: "M. Lind, owner", how: "message", work: ["New carrier"], reason: "Sells the boat in spring.", initials: "JK" } },
  { "consent-signed": consent({ step: "b26", how: "phone", work: ["Gear set", "New bearings"], declined: ["New carrier"], price: "1 420 invented", limit: "1 500 invented", initials: "JK" }) },
  { "part-judged": { part: "gears", verdict: "reject", signs: ["chips, cracks or spalls"], reason: "two teeth", photo: "photo-3" } },
  { "part-judged": { part: "taper-bearings", verdict: "watch", signs: ["grey, even dulling"], reason: "owner asked to use them again", photo: "photo-4" } },
  { "bench-checked": { step: "b42", place: "prop shaft", kind: "runout", values: { limit: ["0.13 mm"], readings: ["0.000 mm", "0.021 mm", "0.045 mm", "0.058 mm", "0.049 mm", "0.030 mm", "0.004 mm", "-0.009 mm"] } } },
  { "bench-checked": { step: "b46", place: "", kind: "leak", values: { unit: ["kPa"], degrees: ["°C"], stage: ["working"], limit: ["110 kPa"], pressure: ["84 kPa"], time: ["10 min"], "most-lost": ["7 kPa"], at: ["0 min", "2 min", "4 min", "6 min", "8 min", "10 min"], gauge: ["86.0 kPa", "84.6 kPa", "83.4 kPa", "82.4 kPa", "81.6 kPa", "81.2 kPa"], case: ["24.0 °C", "23.2 °C", "22.5 °C", "22.0 °C", "21.6 °C", "21.4 °C"], barometer: ["101.3 kPa"], turned: ["yes"], moved: ["yes"], soap: ["none"], hose: ["tight"] } } },
  { "bench-checked": { step: "b43", place: "S1, beside the propeller", kind: "seal", values: { found: ["to the oil"], manual: ["to the oil"], fitted: ["to the oil"], spring: ["seen"], depth: ["3.02 mm", "3.00 mm", "3.05 mm", "3.01 mm"], square: ["0.1 mm"], low: ["2.8 mm"], high: ["3.3 mm"], outside: ["40.05 mm"], bore: ["39.98 mm"] } } },
];
