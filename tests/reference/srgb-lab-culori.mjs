// SPDX-License-Identifier: GPL-3.0-or-later
// Makes srgb-lab-culori.csv: node srgb-lab-culori.mjs >srgb-lab-culori.csv
// Ran with Node.js 20.20.2 and the npm package culori 4.0.2.
import { converter, differenceCiede2000 } from "culori";

// "lab" is of the white point D50; the difference is given its numbers as they are.
const lab = converter("lab");
const numbers = (colour) => ({ ...lab(colour), mode: "lab65" });
const de00 = differenceCiede2000();

// A linear congruential generator (Park and Miller 1988), so that the pairs are the same at every run.
let state = 20250314;
const random = () => (state = (state * 48271) % 2147483647) / 2147483647;
const colour = () => "#" + [0, 0, 0].map(() => Math.floor(random() * 256).toString(16).padStart(2, "0")).join("");

const pairs = [
  ["#000000", "#ffffff"],
  ["#17171a", "#17171a"],
  ["#17171a", "#1b2a49"],
  ["#1b2a49", "#16264a"],
  ["#f5f5f3", "#e9e1d0"],
  ["#ff0000", "#00ff00"],
  ["#0000ff", "#ff00ff"],
];
while (pairs.length < 60)
  pairs.push([colour(), colour()]);

console.log("# sRGB colours as CIELAB of the white point D50, and their CIEDE2000: converter (\"lab\") and");
console.log("# differenceCiede2000 () of the npm package culori 4.0.2 on Node.js 20.20.2, by srgb-lab-culori.mjs.");
console.log("srgb1,L1,a1,b1,srgb2,de_00");
for (const [first, second] of pairs) {
  const { l, a, b } = lab(first);
  console.log([first.slice(1), l, a, b, second.slice(1), de00(numbers(first), numbers(second))].join(","));
}
