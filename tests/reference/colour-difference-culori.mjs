// SPDX-License-Identifier: GPL-3.0-or-later
// Makes colour-difference-culori.csv: node colour-difference-culori.mjs >colour-difference-culori.csv
// Ran with Node.js 20.20.2 and the npm package culori 4.0.2.
import { differenceCiede2000, differenceCmc } from "culori";

const lab = ([l, a, b]) => ({ mode: "lab65", l, a, b });
const de00 = differenceCiede2000();
const cmc = differenceCmc(2, 1);

// A linear congruential generator (Park and Miller 1988), so that the pairs are the same at every run.
let state = 20250314;
const random = () => (state = (state * 48271) % 2147483647) / 2147483647;
const colour = () => [random() * 100, random() * 160 - 80, random() * 160 - 80].map((v) => Math.round(v * 1e4) / 1e4);

const pairs = [
  [[50, 0, 0], [50, 0, 0]],
  [[0, 0, 0], [100, 0, 0]],
  [[15.9999, 10, 5], [20, 12, 3]],
  [[16, 10, 5], [20, 12, 3]],
  [[0, 0, 0], [0, 3, 4]],
  [[0, 3, 4], [5, 0, 0]],
  [[0, 3, 4], [0, 6, 8]],
  [[60, 0, 20], [60, 0, -20]],
];
while (pairs.length < 60) {
  const first = colour();
  // Every other second colour lies close to the first.
  const near = first.map((v) => Math.round((v + random() * 4 - 2) * 1e4) / 1e4);
  const second = pairs.length % 2 ? colour() : [Math.max(near[0], 0), near[1], near[2]];
  pairs.push([first, second]);
}

console.log("# Colour differences of made-up CIELAB pairs: differenceCiede2000 () and differenceCmc (2, 1) of the npm package");
console.log("# culori 4.0.2 on Node.js 20.20.2, by colour-difference-culori.mjs. CMC weighs by the first colour.");
console.log("L1,a1,b1,L2,a2,b2,de_00,de_cmc_2_1");
for (const [first, second] of pairs)
  console.log([...first, ...second, de00(lab(first), lab(second)), cmc(lab(first), lab(second))].join(","));
