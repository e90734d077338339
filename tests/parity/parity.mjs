// Asks the npm package the questions that the native program answered, and compares the answers to the last bit:
//
//   cargo run --package biteband-tests --bin parity -- tests/parity/questions.jsonl > native.jsonl
//   node tests/parity/parity.mjs PACKAGE-FOLDER tests/parity/questions.jsonl native.jsonl
//
// Ends with 1 and names the first differences when there are any.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { resolve } from "node:path";

const [folder, questionsPath, nativePath] = process.argv.slice(2);
if (!nativePath) {
  console.error("usage: node parity.mjs PACKAGE-FOLDER QUESTIONS NATIVE-ANSWERS");
  process.exit(2);
}
const biteband = createRequire(import.meta.url)(resolve(folder));
const lines = (path) => readFileSync(path, "utf8").split("\n").filter((line) => line !== "");
const questions = lines(questionsPath);
const answers = lines(nativePath);
const differences = [];
let numbers = 0;

// Object.is tells 0 from -0 and is equal exactly where the doubles are; JSON.parse rounds correctly.
function compare(native, here, path) {
  if (typeof native === "number" && typeof here === "number") numbers += 1;
  const nested = (value) => value !== null && typeof value === "object";
  if (!nested(native) || !nested(here)) {
    if (!Object.is(native, here)) differences.push(`${path}: native ${native}, npm ${here}`);
    return;
  }
  if (Array.isArray(native) !== Array.isArray(here)) {
    differences.push(`${path}: one is a list, the other is not`);
    return;
  }
  const keys = new Set([...Object.keys(native), ...Object.keys(here)]);
  for (const key of keys) compare(native[key], here[key], `${path}.${key}`);
}

if (questions.length !== answers.length) {
  differences.push(`${questions.length} questions, ${answers.length} native answers`);
}
questions.forEach((line, index) => {
  const [[kind, question]] = Object.entries(JSON.parse(line));
  compare(JSON.parse(answers[index] ?? "null"), biteband[kind](question), `line ${index + 1}`);
});

for (const difference of differences.slice(0, 20)) console.error(difference);
if (differences.length > 0) {
  console.error(`${differences.length} differences between the native program and the npm package`);
  process.exit(1);
}
console.log(`${questions.length} questions, ${numbers} numbers: native and npm agree to the last bit`);
