// A conversion and a file test: `node example.mjs` in the package's folder.
// From elsewhere the first line is `import { convert, fileTest } from "biteband";`.
import { convert, fileTest } from "./node/biteband.js";

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

// Outside the tables there is no number, and the reason is part of the answer.
const soft = convert({ text: "15 HRC", to: ["HV"] });
console.log(soft.refused.message);

if (drawing.results.length !== 2 || soft.refused.code !== "hardness.outside_tables") {
  throw new Error("the example does not answer as it should");
}
