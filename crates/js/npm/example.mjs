// A conversion, a file test, a reading on thin stock and a steel: `node example.mjs` in the package's folder.
// From elsewhere the first line is `import { convert, fileTest, indent, steel } from "biteband";`.
import { convert, fileTest, indent, steel } from "./node/biteband.js";

// What does the drawing of the capstan pawl, 50-54 HRC, mean in Brinell and Vickers?
const drawing = convert({ text: "50-54 HRC", to: ["HBW", "HV"] });
if (drawing.refused) throw new Error(drawing.refused.message);
for (const found of drawing.results) {
  console.log(`${drawing.input.understood} = ${found.shown} (${found.table}, ${found.basis})`);
}

// The pawl after its temper: the 50 file skates, the 55 bites.
const pawl = fileTest({
  strokes: [
    { file: 50, outcome: "skates" },
    { file: 55, outcome: "bites" },
  ],
  conditions: { skinGround: true },
  target: "50-54 HRC",
});
if (pawl.refused) throw new Error(pawl.refused.message);
const percent = Math.round(pawl.target.inside * 100);
console.log(`${pawl.verdict}: ${pawl.band.shown} HRC, ${percent} % in the wanted band`);
console.log(pawl.next.say);

// 48 HRC read on a spring of 0.6 mm: is the test valid there, and which one is?
const spring = indent({ kind: "rockwell", scale: "HRC", value: 48, thickness: "0.6mm" });
if (spring.refused) throw new Error(spring.refused.message);
console.log(`${spring.verdict} ${spring.better.map((other) => other.test).join(", ")}`);

// What the bar marked EN24T is, and how hard it was bought.
const bar = steel({ name: "EN24T" });
if (bar.refused) throw new Error(bar.refused.message);
console.log(`${bar.title}. ${bar.verdict.at(-1)}`);

// Outside the tables there is no number, and the reason is part of the answer.
const soft = convert({ text: "15 HRC", to: ["HV"] });
console.log(soft.refused.message);

if (bar.condition?.hbw_low !== 248 || spring.valid || drawing.results.length !== 2 || soft.refused.code !== "hardness.outside_tables") {
  throw new Error("the example does not answer as it should");
}
